import type { BakingRules } from '../../shared-core/shop/rules.ts'

/** What the set-up says of how loads are planned. */
export interface BakingSetUpWords {
  /** What each rule does, in a sentence. */
  readonly does: { readonly [rule in Exclude<keyof BakingRules, 'turnMs' | 'people' | 'showUntilMinute'>]: string }
  /** Headings of the page's parts. */
  readonly heads: {
    readonly change: string
    readonly fresh: string
    readonly line: string
    readonly hands: string
    readonly people: string
    readonly show: string
    readonly contact: string
  }
  readonly door: { readonly [act in keyof BakingRules['door']]: string }
  readonly people: {
    readonly from: string
    readonly count: string
    readonly add: string
    /** @example "Remove 4:00 am" */
    readonly remove: (clock: string) => string
    readonly none: string
    readonly hint: string
    /** @example "2 people from 4:00 am on" */
    readonly line: (people: number, clock: string) => string
  }
  readonly showHint: string
  readonly avoidsHint: string
  /** It is made with what it should not meet. @example "wheat" */
  avoidsItself(allergens: string): string
  readonly emptyByHint: string
  /** The time said for a shelf is no sooner than the oven's own. */
  readonly emptyByLate: string
  readonly sums: { readonly on: string; readonly off: string }
}
