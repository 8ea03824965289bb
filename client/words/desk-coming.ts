import type { DayDemand } from '../../shared-core/demand/demand.ts'
import type { Why } from '../../shared-core/plan/why.ts'
import type { Language } from '../../shared-core/shop/shop.ts'
import { enComing } from './en-desk-coming.ts'
import { esComing } from './es-desk-coming.ts'
import type { Words } from './words.ts'

/** What the desk says of the days to come. */
export interface ComingWords {
  readonly waiting: string
  readonly notYet: string
  readonly noContact: string
  readonly datesName: string
  readonly today: string
  readonly unknown: string
  closed(date: string): string
  readonly noDoughs: string
  /** Nothing but guesses is known. */
  readonly onlyGuesses: string
  /** Of these neither sales nor a guess is known; what to do about it. */
  unknownOf(doughs: readonly string[]): string
  /** Leads to where guesses are typed. */
  readonly toUsual: string
  decideBy(names: readonly string[], day: string, clock: string): string
  readonly decideLate: string
  readonly dough: {
    title(date: string): string
    readonly hint: string
  }
  readonly bake: {
    title(date: string): string
    readonly hint: string
    expects(left: number, lost: number): string
  }
  readonly columns: { readonly [column in ComingColumn]: string }
  /** Of the orders in a row, what was typed besides those of the board. @example "36 on the board, 12 besides" */
  ordered(board: number, typed: number): string
  /** Leads to the orders of that day. */
  readonly toOrders: string
  /** What the three numbers are. */
  readonly legend: string
  readonly basis: { readonly [basis in DayDemand['basis']]: string }
  readonly why: string
  readonly hideWhy: string
  whyOf(name: string): string
  /** One reason without its number. */
  reason(why: Why, of: ReasonOf): string
  /** The number that reasons come to. @example "= 168 to make" */
  sum(pieces: number, what: 'toMake' | 'bake'): string
  /** @example "+38", "−31" */
  signed(pieces: number): string
  readonly yoursOf: (dough: string) => string
  readonly unreadable: string
  take(date: string): string
  readonly takeAndPlan: string
  readonly toMixes: string
  readonly asAdvised: string
  /** Numbers that are not the advised ones. */
  differs(count: number): string
  readonly stands: string
  readonly notTaken: string
  /** Leads to what was changed and what was asked for then. */
  readonly changedBefore: string
}

export type ComingColumn =
  | 'dough'
  | 'variety'
  | 'likely'
  | 'careful'
  | 'plenty'
  | 'advised'
  | 'yours'
  | 'orders'
  | 'there'
  | 'toMake'
  | 'bake'

export interface ReasonOf {
  /** ISO, 1 to 7. */
  readonly weekday: number
  /** What is special about the day. */
  readonly named: readonly string[]
  readonly unit: 'tray' | 'board'
}

export function comingWords(words: Words): ComingWords {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => ComingWords } = { en: enComing, es: esComing }
