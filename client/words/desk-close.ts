import type { BatchStage } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { enClose } from './en-desk-close.ts'
import { esClose } from './es-desk-close.ts'
import type { Words } from './words.ts'

/** What the desk says where a day is closed. */
export interface CloseWords {
  readonly lead: string
  /** The day is of an earlier date. */
  late(label: string): string
  readonly lateHint: string
  readonly neverOne: string
  readonly steps: { readonly [step in CloseStep]: string }
  readonly orders: OpenOrdersWords
  readonly count: CountWords
  readonly fates: FatesWords
  readonly account: { readonly explained: string; readonly gaps: string; readonly unexplained: string }
  readonly crew: CrewWords
  readonly notes: { readonly hint: string; readonly none: string }
  readonly close: LastWords
  readonly closed: ClosedWords
  readonly pieces: { less(name: string, step: number): string; more(name: string, step: number): string }
}
export type CloseStep = 'orders' | 'count' | 'fates' | 'account' | 'figures' | 'crew' | 'notes' | 'close'

/** Orders of the day that are still to be handed over. */
export interface OpenOrdersWords {
  readonly none: string
  readonly hint: string
  /** @example "due 9:30" */
  due(clock: string): string
  readonly handedOver: string
  readonly nobodyCame: string
  /** An act with the order that it is of, for those who listen. */
  actOf(act: string, mark: string): string
}

export interface CountWords {
  readonly hint: string
  readonly allKnown: string
  /** @example "the board thinks 12" */
  thinks(pieces: number): string
  field(name: string): string
  counted(pieces: number): string
  readonly say: string
  readonly noneLeft: string
}

export interface FatesWords {
  readonly hint: string
  readonly nothing: string
  readonly columns: { readonly [column in 'variety' | 'left' | 'given' | 'wasted' | 'dayOld']: string }
  given(name: string): string
  wasted(name: string): string
  readonly allGiven: string
  readonly allWasted: string
  readonly allStay: string
  /** @example "Book: 12 given away, 6 wasted" */
  book(given: number, wasted: number): string
  readonly nothingToBook: string
  /** A row of pieces of an earlier day. @example "Sesame, day-old" */
  earlier(name: string): string
}

export interface CrewWords {
  readonly field: string
  readonly hint: string
  hours(text: string): string
  readonly wrong: string
}

export interface LastWords {
  kept(pieces: number): string
  onTheLine(pieces: number): string
  standing(pieces: number): string
  openSteps(steps: number): string
  uncounted(names: readonly string[]): string
  stage(stage: BatchStage): string
  stays(pieces: number): string
  readonly closeIt: string
  readonly allDone: string
}

export interface ClosedWords {
  title(label: string): string
  at(atMs: EpochMs): string
  readonly reopen: string
  readonly reopenHint: string
  readonly noReopen: string
  readonly openNext: string
  readonly replay: string
}

export function closeWords(words: Words): CloseWords {
  return words.language === 'en' ? enClose(words) : esClose(words)
}
