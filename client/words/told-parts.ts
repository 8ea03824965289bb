import type { ActType } from '../../shared-core/day/commands.ts'
import type { CareKind } from '../../shared-core/day/said.ts'
import type { Told } from '../../shared-core/day/trace.ts'
import type { MixStage } from '../../shared-core/dough/mix.ts'
import { joined } from './joined.ts'
import type { Names } from './names.ts'
import type { LineWords, Speech, TimeWords } from './words.ts'

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
  /** What an order is called across the room. */
  readonly mark: string
  /** The name of a formula, preparation, ingredient, portion or thing on the menu: what was mixed, made, counted. */
  readonly what: string
  readonly mixStage: MixStage | null
  /** "Tue, Nov 24" */
  readonly date: string
}

/** One way of telling for each kind of command, and one for a kind that this release does not know. */
export type Tellings = { readonly [type in ActType]: (parts: ToldParts) => string } & {
  readonly otherwise: (parts: ToldParts) => string
}

export interface TellingParts {
  readonly line: LineWords
  readonly times: TimeWords
}

export function tellWith(tellings: Tellings, told: Told, { names }: Speech, { line, times }: TellingParts): string {
  const { shelfId, doughId, lines, pieces, type, stepId, personId, date } = told
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
    mark: told.mark ?? '',
    what: whatOf(told, names),
    mixStage: told.mixStage ?? null,
    date: date === undefined ? '' : times.date(date),
  })
}

function whatOf({ formulaId, preparationId, ingredientId, menuItemId, portionId }: Told, names: Names): string {
  if (formulaId !== undefined) return names.formula(formulaId)
  if (preparationId !== undefined) return names.preparation(preparationId)
  if (menuItemId !== undefined) return names.menuItem(menuItemId)
  if (portionId !== undefined) return names.portion(portionId)
  return ingredientId === undefined ? '' : names.ingredient(ingredientId)
}

function isKnown(type: string, tellings: Tellings): type is ActType {
  return Object.keys(tellings).includes(type)
}
