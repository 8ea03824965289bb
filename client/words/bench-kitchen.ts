import type { EpochMs } from '../../shared-core/units.ts'
import type { BenchWords } from './bench.ts'
import { enBenchKitchen } from './en-bench-kitchen.ts'
import { esBenchKitchen } from './es-bench-kitchen.ts'
import type { KitchenActWords } from './kitchen-acts.ts'
import { kitchenActWords } from './kitchen-acts.ts'
import type { OrderWords } from './orders.ts'
import { orderWords } from './orders.ts'

/** The words of the kitchen on the tablet; they are fetched with it. */
export interface KitchenRoomWords extends BenchWords {
  readonly kitchen: KitchenSentences
  readonly made: KitchenActWords
  readonly orders: OrderWords
}

export interface KitchenSentences {
  /** Where the way back of a page leads. */
  readonly back: string
  readonly nothingNext: string
  readonly nothingHere: string
  /** The set-up has nothing that is made to order. */
  readonly noKitchen: string
  /** For those who listen: the rods. */
  readonly rods: string
  readonly oven: string
  readonly now: string
  /** Beside a ring whose part before is not made. @example "still at Sandwiches" */
  stillAt(station: string): string
  /** @example "waits 4 min" */
  waits(ms: number): string
  /** It has waited longer than the shop says. @example "waits 11 min, 3 min over" */
  waitsOver(ms: number, overMs: number): string
  /** @example "begun, 40 s left" */
  begun(leftMs: number): string
  /** It takes longer than it should. */
  overdue(ms: number): string
  /** On the key of a shelf for what was chosen. @example "3 places free" */
  placesFree(places: number): string
  readonly noPlace: string
  /** What is chosen goes in there. @example "2 into Shelf 2" */
  into(count: number, shelf: string): string
  readonly chosenHint: string
  readonly letGo: string
  /** How many are on the rod. @example "3 Garlic flatbread" */
  total(count: number, what: string): string
  /** @example "+3" */
  others(count: number): string
  /** Rods that do not stand here. @example "2 other kinds" */
  otherKinds(count: number): string
  readonly look: string
  readonly lookHint: string
  readonly ready: string
  readonly nothingReady: string
  readonly handOverHint: string
  /** @example "ready since 12:04" */
  readySince(atMs: EpochMs): string
  readonly portions: string
  readonly noPortions: string
  readonly notCounted: string
  /** @example "12 left, counted 10:40" */
  left(portions: number, countedAtMs: EpochMs): string
  /** @example "4 spoken for" */
  spokenFor(portions: number): string
  readonly portion: { readonly one: string; readonly many: string }
  readonly count: string
  readonly item: ItemPageWords
  readonly stations: StationChoiceWords
}

export interface ItemPageWords {
  /** @example "Order 41" */
  order(mark: string): string
  /** @example "due 12:10" */
  due(atMs: EpochMs): string
  readonly begin: string
  readonly made: string
  readonly turned: string
  /** Back to waiting, as if nobody had begun. */
  readonly again: string
  /** @example "Part 2 of 2, Oven" */
  part(n: number, of: number, station: string): string
  readonly waiting: string
  readonly begun: string
  readonly isMade: string
  readonly note: string
  readonly gone: string
}

export interface StationChoiceWords {
  readonly title: string
  readonly none: string
  readonly hint: string
}

export function kitchenRoomWords(words: BenchWords): KitchenRoomWords {
  const kitchen = words.language === 'en' ? enBenchKitchen(words) : esBenchKitchen(words)
  return { ...words, kitchen, made: kitchenActWords(words), orders: orderWords(words) }
}
