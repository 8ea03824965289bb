import type { ActType } from '../../shared-core/day/commands.ts'
import type { CareKind } from '../../shared-core/day/said.ts'
import type { Told } from '../../shared-core/day/trace.ts'
import { joined } from './joined.ts'
import type { LineWords, Speech } from './words.ts'

/** What a sentence about a done command can be made of; "" for what the command does not say. */
export interface ToldParts {
  /** "36 Plain", or "36 pieces" where no dough is named. */
  readonly amount: string
  /** "Onion 24, Garlic 24" */
  readonly contents: string
  readonly shelf: string
  readonly count: number
  readonly step: string
  readonly person: string
  readonly care: CareKind | null
  readonly text: string
}

/** One way of telling for each kind of command, and one for a kind that this release does not know. */
export type Tellings = { readonly [type in ActType]: (parts: ToldParts) => string } & {
  readonly otherwise: (parts: ToldParts) => string
}

export function tellWith(tellings: Tellings, told: Told, { names }: Speech, line: LineWords): string {
  const { shelfId, doughId, lines, pieces, type, stepId, personId } = told
  const dough = doughId === undefined ? '' : names.dough(doughId)
  const amount = pieces === undefined ? dough : dough === '' ? line.pieces(pieces) : joined(String(pieces), dough)
  const shelf = shelfId === undefined ? '' : names.shelf(shelfId)
  const tell = isKnown(type, tellings) ? tellings[type] : tellings.otherwise
  return tell({
    amount,
    contents: line.contents(lines ?? []),
    shelf,
    count: pieces ?? 0,
    step: stepId === undefined ? '' : names.step(stepId),
    person: personId === undefined ? '' : names.person(personId),
    care: told.care ?? null,
    text: told.text ?? '',
  })
}

function isKnown(type: string, tellings: Tellings): type is ActType {
  return Object.keys(tellings).includes(type)
}
