/**
 * What demand is known by, in the words that the planner's problem uses: a day's total is negative binomial with a mean
 * and a dispersion k (variance = mean + mean² / k), spread over the day by a profile. Equivalently a gamma rate of shape
 * k, then a Poisson process of the profile's shape. What customers buy together (a dozen) is in k.
 */
export interface Demand {
  /** Pieces, not negative; may have a fraction. */
  readonly mean: number
  /** k; the larger, the nearer to a Poisson. */
  readonly dispersion: number
  readonly profile: Profile
}

/**
 * The part of a day's demand that has come by a minute: `[minute, part]`, from `[open, 0]` to `[close, 1]`, never falling,
 * linear in between.
 */
export type Profile = readonly (readonly [minute: number, part: number])[]

/** Of one item, for a day to come. */
export interface DayDemand extends Demand {
  /**
   * How sure: from typed guesses alone, from few days, or from many. Nothing: neither it nor any like it has sold or was
   * guessed; the mean is then a place to begin at, for learning, and no advice.
   */
  readonly basis: 'nothing' | 'guess' | 'few' | 'many'
  /** What the mean is made of, multiplied: the item's level in pieces, then factors around 1. For "why". */
  readonly parts: { readonly level: number; readonly weekday: number; readonly special: number }
}

/** Of one item, for what is left of a day: `mean` and `dispersion` of the rest alone, `profile` from now (0) to close (1). */
export interface RestDemand extends Demand {
  /** What has gone so far, and what was expected to by then: together they moved the mean. */
  readonly soFar: number
  readonly expected: number
}

/** A guess typed before there are sales. */
export interface ItemGuess {
  readonly id: string
  /** Items of a group are alike (varieties of a dough): a new one borrows from them. Null: of none. */
  readonly group: string | null
  /** Pieces on a usual day; null: nobody has said. */
  readonly usual: number | null
}

/** When a variety will be gone. Minutes as in `SalesDay`; null: not before close. */
export interface RunOut {
  /** Gone by then with 10, 50 and 90 % chance. */
  readonly t10: number | null
  readonly t50: number | null
  readonly t90: number | null
  /** Chance to be gone before more comes (null: nothing is on the way), and before close even so. */
  readonly beforeMore: number | null
  readonly beforeClose: number
  /** Pieces left at close and pieces of demand lost, expected. */
  readonly left: number
  readonly lost: number
}
