/** What `GET /api/v1/trust` answers: how far off the forecasts were, and what that cost. Pieces may have fractions. */
export interface TrustJson {
  /** The days that were judged; null: none. */
  readonly from: string | null
  readonly to: string | null
  readonly days: number
  /** Open days with sales that the board knows of, judged or not. */
  readonly daysKnown: number
  /** How many varieties are forecast from what. */
  readonly basis: { readonly guess: number; readonly few: number; readonly many: number }
  /** Each variety of each day by itself. */
  readonly each: Accuracy
  /** All varieties of a day together. */
  readonly shop: Accuracy
  readonly varieties: readonly AccuracyOf[]
  /** The varieties of a dough together, by dough id. */
  readonly doughs: readonly AccuracyOf[]
  /** Each variety by itself, by ISO weekday "1" to "7". */
  readonly weekdays: readonly AccuracyOf[]
  /** Each variety by itself, what came after a minute, which is its id. */
  readonly rests: readonly AccuracyOf[]
  readonly cost: BakingCostJson
  readonly overrides: OverridesJson
}

export interface Accuracy {
  /** Forecasts judged. */
  readonly rows: number
  /** Of these, sold out: what was asked for is an estimate. */
  readonly estimated: number
  /** Pieces asked for, on the mean. */
  readonly asked: number
  /** How far off, in pieces on the mean, where all three had something to say; null: nowhere. */
  readonly off: Off | null
  /** Of the ones that did not sell out alone. */
  readonly offNotSoldOut: Off | null
  /** Σ|error| / Σ asked; null where nothing was asked for. */
  readonly wape: number | null
  /**
   * Mean error over that of "same weekday last week" in the days before these; of several varieties the mean of theirs.
   * Null where there were no such days.
   */
  readonly mase: number | null
  /** Mean pinball loss of the 50, 80 and 90 % quantiles, in pieces. */
  readonly pinball: number | null
  /** Null for sums of varieties, of which no range is said. */
  readonly held: Held | null
}

export interface Off {
  readonly rows: number
  readonly asked: number
  readonly board: number
  readonly lastWeek: number
  readonly lastFour: number
}

export interface Held {
  /** Inside the range from the 10 to the 90 % quantile. */
  readonly inside: ShareJson
  /** No more was asked for than was said. */
  readonly likely: ShareJson
  readonly careful: ShareJson
  readonly plenty: ShareJson
}

export interface ShareJson {
  readonly hits: number
  readonly of: number
  /** What the board itself expected of them: pieces come whole, so a range of 80 % often holds more. */
  readonly expected: number
  /** The share in the long run, 95 % confidence. */
  readonly low: number
  readonly high: number
}

export interface AccuracyOf extends Accuracy {
  readonly id: string
}

export interface BakingCostJson {
  /** Days that were reckoned, of the last four weeks; 0: none, and the costs are all 0. */
  readonly days: number
  /** As it was baked; null: the board knows of no day that was baked, only of sales. */
  readonly baked: CostJson | null
  /** As the board would have advised it, and as the simple ways would have it, all of it there in time. */
  readonly advised: CostJson
  readonly lastWeek: CostJson
  readonly lastFour: CostJson
}

export interface CostJson {
  readonly leftPieces: number
  readonly lostPieces: number
  /** What left pieces cost less what day-old ones bring, and what lost sales would have earned. */
  readonly leftCents: number
  readonly lostCents: number
}

export interface OverridesJson {
  /** Lines in which something else was typed than was advised. */
  readonly changed: number
  /** Of these, how many were nearer to what was asked for, and how many farther, than the advice. */
  readonly nearer: number
  readonly farther: number
  /** Newest first, limited. */
  readonly lines: readonly OverrideJson[]
}

export interface OverrideJson {
  readonly date: string
  readonly doughId: string
  readonly varietyId: string | null
  readonly advised: number
  readonly typed: number
  readonly asked: number
  readonly isEstimated: boolean
}
