import type { DurationMs } from '../units.ts'

/** What a shop has decided, beside what it has: by what the counter counts, demand is weighed and loads are planned. */

/**
 * How the counter's numbers are kept. `salesFrom`: the one source of sales that changes what is left, so that no piece is
 * counted off twice; `sweeps`: nobody taps sales, counts alone keep the numbers.
 */
export interface CounterRules {
  readonly salesFrom: 'taps' | 'till' | 'sweeps'
  /** From one sweep to the next. */
  readonly sweepEveryMs: DurationMs
  /** Price of a day-old piece in hundredths of the fresh one's. */
  readonly dayOldPercent: number
}

/** What is needed to say how many pieces are worth making. */
export interface DemandRules {
  /** Whose public holidays count: a country, or a part of one, as ISO 3166 writes it ("US", "US-IL"); null: nobody has said. */
  readonly region: string | null
  /** What it costs beside the sale when somebody asks for a piece and there is none. */
  readonly disappointCents: number
  /** How many of these take a piece of another variety instead. */
  readonly takeAnotherPercent: number
  /** Day-old pieces that a day sells, all varieties together; more are worth nothing. */
  readonly dayOldSells: number
}

/** How loads are planned (`plan/bake-off`). */
export interface BakingRules {
  /** Loads are advised; false: people set them, the board adds none. */
  readonly advice: boolean
  /** The next load is another one only where that gains so much: nobody is jerked about for cents. */
  readonly changeGainCents: number
  /** What a piece loses in an hour between being ready and being sold, in hundredths of its price. */
  readonly stalePercentPerHour: number
  /** A chilled piece that is left is worth so much of its cost tomorrow, in hundredths. */
  readonly carryPercent: number
  /** Longest that the first pieces of a load stand on boards before it goes in. */
  readonly boardWaitMs: DurationMs
  /** Pieces are boarded and loaded by so many: a half-dozen, or one. */
  readonly unitPieces: number
  /** Baked varieties of one load may differ by so much. */
  readonly toleranceMs: DurationMs
  /** What one pair of hands needs at the oven's one door; all 0: hands are no limit. */
  readonly door: { readonly loadMs: DurationMs; readonly flipMs: DurationMs; readonly outMs: DurationMs }
  /** A rotating oven: from one shelf at the door to the next. */
  readonly turnMs: DurationMs
  /** Who is there from a minute on, in order; empty: nobody has said, and people are no limit. */
  readonly people: readonly { readonly fromMinute: number; readonly people: number }[]
  /** Until then each variety's `showLeast` should be on show; null: only at the opening. */
  readonly showUntilMinute: number | null
  /** Pieces boiled after an allergen that they should not meet are put before it unless that costs more than this, each. */
  readonly contactCents: number
}

/** How orders are taken, promised, kept and forgotten. */
export interface OrderRules {
  /** Pieces of a dozen: 12, or 13 where the shop gives a baker's dozen. */
  readonly dozenPieces: number
  /** Orders for the next day are taken until then, in minutes after local midnight; null: until the shop opens. */
  readonly cutOffMinute: number | null
  /** What walk-ins are still expected to ask for is left to them in so many hundredths before an order is promised. */
  readonly walkInPercent: number
  /** Pieces of a variety that stay out for walk-ins whatever is expected. */
  readonly walkInLeast: number
  /** Pieces are kept for orders as they come out of the oven, the oldest due first. */
  readonly keepsAsTheyCome: boolean
  /** So long after it was due an order that nobody fetched is ended and its pieces go back for sale; null: at the close. */
  readonly noShowMs: DurationMs | null
  /** Names, phone numbers and notes are deleted so many days after the order's day. */
  readonly forgetDays: number
  /** What the counter tells those who wait: an order made to order is ready in so long. */
  readonly madeInMs: DurationMs
  /** Pieces must have cooled so long since the oven before they are sliced or put into closed bags. */
  readonly sliceCoolMs: DurationMs
  /** What slicing, bagging and boxing takes, for a dozen. */
  readonly packMs: DurationMs
  /** Pieces of one box. */
  readonly boxPieces: number
}
