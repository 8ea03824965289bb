import { nearestWord } from '../../shared-core/shop/nearest-word.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Typed } from './typed-load.ts'

interface Entity<Id extends string> {
  readonly id: Id
  readonly name: string
  readonly retired: boolean
}

interface Naming {
  readonly typed: Typed<string>
  /** What kind of thing it is, as it is called in a sentence. */
  readonly what: string
  /** Takes what is wrong with it. */
  readonly problems: Problem[]
}

/** A thing of the shop in use by its id or name, capital letters or small; null when there is none. */
export function findNamed<Id extends string, One extends Entity<Id>>(
  table: ReadonlyMap<Id, One>,
  typed: string,
): One | null {
  const inUse = [...table.values()].filter((entity) => !entity.retired)
  const asked = typed.trim().toLowerCase()
  const byId = inUse.find((entity) => entity.id === asked)
  return byId ?? inUse.find((entity) => entity.name.toLowerCase() === asked) ?? null
}

/** A thing of the shop by its id or name, capital letters or small; null when there is none, and then a problem more. */
export function named<Id extends string>(
  table: ReadonlyMap<Id, Entity<Id>>,
  { typed, what, problems }: Naming,
): Id | null {
  const found = findNamed(table, typed.value)
  if (found !== null) return found.id
  const inUse = [...table.values()].filter((entity) => !entity.retired)
  const names = inUse.map((entity) => entity.name)
  const nearest = nearestWord(typed.value.trim(), names)
  const wrong = `${typed.where}The shop has no ${what} "${typed.value}".`
  const right = `One of: ${names.join(', ')}.`
  problems.push({ path: typed.path, wrong, right: nearest === null ? right : `"${nearest}"? ${right}` })
  return null
}
