import type { Purchase, Span } from './sales-day.ts'

/**
 * One business day as the shop's own journal knows it, as plain values that go through JSON. Minutes are after local
 * midnight of its date, to a hundredth; past midnight they go on.
 */
export interface JournalDay {
  /** Local date of its opening, YYYY-MM-DD; a shop that closes twice a day has two days of one date. */
  readonly date: string
  /** When customers could buy, by the set-up of that day. */
  readonly openMinute: number
  readonly closeMinute: number
  /** False while it is open. */
  readonly isClosed: boolean
  /** Varieties of which there was something, was to be something or was sold something; in order of id. */
  readonly items: readonly JournalItem[]
  /** What was wanted of this date as the day opened. */
  readonly wanted: readonly WantedThen[]
}

export interface JournalItem {
  /** A variety of the shop. */
  readonly id: string
  /** Sold to whoever came in, by variety; neither orders that were placed ahead nor day-old pieces are in it. In order of time. */
  readonly sold: readonly Purchase[]
  /** Sold too, but nobody said the variety: its share of these, as the board spread them then. */
  readonly allotted: readonly Purchase[]
  /** Used by the kitchen. */
  readonly kitchen: readonly Purchase[]
  /** What counts and the close found beside all that, signed: positive is gone without anybody saying so. */
  readonly unseen: number
  /** While customers could buy there was none for sale: before the first load as well. In order, without overlap. */
  readonly gone: readonly Span[]
  /** Out of the oven. */
  readonly baked: number
  /** Whole pieces at the close. */
  readonly left: number
  readonly wasted: number
  readonly given: number
  /** Gone with orders that were placed ahead, besides what is sold; null: with none. */
  readonly ordered: number | null
}

/** A line of what was wanted, with the advice that stood beside it. */
export interface WantedThen {
  readonly doughId: string
  /** Null: of the dough, whatever it becomes. */
  readonly varietyId: string | null
  readonly pieces: number
  readonly ordered: number
  readonly advised: number | null
}
