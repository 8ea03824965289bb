import canonicalize from 'canonicalize'
import type { SetUpChange } from './set-up-change.ts'
import { standing } from './set-up-diff.ts'
import type { Shop } from './shop.ts'

/** One change of a set-up in a form that words of any language can be made of. */
export interface ChangeTold {
  readonly entity: SetUpChange['entity']
  /** Null for a part of which there is one. */
  readonly id: string | null
  /** As it is called after the change; null for what has no name. */
  readonly name: string | null
  /** `moved`: only its place in the list is another. `retired`, of a part of which there is one: the shop has none now. */
  readonly what: 'added' | 'changed' | 'moved' | 'retired' | 'back'
  /** Fields of the running shop's form that changed, e.g. `priceCents`; none where it was added. */
  readonly fields: readonly string[]
}

/**
 * What changes do to a shop; what is as it was already is left out.
 * @param before null before the first set-up
 */
export function changesTold(before: Shop | null, changes: readonly SetUpChange[]): ChangeTold[] {
  return changes.flatMap((change) => {
    const was = before === null ? undefined : standing(before, change)
    const fields = changedFields(was, change.value)
    const isNothing = change.value === null && (was ?? null) === null
    if (isNothing || (was !== undefined && fields.length === 0)) return []
    const what = whatOf(was, change.value, fields)
    return [{ entity: change.entity, ...namesOf(change), what, fields: what === 'added' ? [] : fields }]
  })
}

function namesOf({ value }: SetUpChange): Pick<ChangeTold, 'id' | 'name'> {
  const { id, name } = fieldsOf(value)
  return { id: typeof id === 'string' ? id : null, name: typeof name === 'string' ? name : null }
}

function whatOf(was: unknown, value: unknown, fields: readonly string[]): ChangeTold['what'] {
  if (was === undefined || was === null) return 'added'
  if (value === null) return 'retired'
  const [before, after] = [fieldsOf(was).retired === true, fieldsOf(value).retired === true]
  if (before !== after) return after ? 'retired' : 'back'
  return fields.length === 1 && fields[0] === 'order' ? 'moved' : 'changed'
}

function changedFields(was: unknown, value: unknown): string[] {
  const [before, after] = [fieldsOf(was), fieldsOf(value)]
  const all = new Set([...Object.keys(before), ...Object.keys(after)])
  return [...all].filter((field) => canonicalize(before[field] ?? null) !== canonicalize(after[field] ?? null)).sort()
}

function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? { ...value } : {}
}
