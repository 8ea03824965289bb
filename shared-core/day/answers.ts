/**
 * What the shop answers to a command: taken, asked back, or refused. Codes only: the sentences are in `client/words`,
 * one for each code in each language (a test holds the two together).
 */
export type Answer =
  | { readonly kind: 'taken'; readonly seq: number }
  | { readonly kind: 'ask'; readonly asks: readonly Ask[] }
  | { readonly kind: 'refused'; readonly refusal: Refusal }

export type AskCode = (typeof ASK_CODES)[number]
export const ASK_CODES = [
  /** Tapped more than 36 hours ago on a screen that had no contact. */
  'old-tap',
  /** A count that is more than two dozen away from what is known. */
  'far-count',
  /** Closing with pieces in the kettle, on boards or in the oven. */
  'line-not-empty',
  /** Closing with orders of the day that nobody has handed over. */
  'orders-open',
  /** A set-up that retires something of which there are pieces. */
  'retires-in-use',
  /** A change of the set-up after which planned ones would no longer fit. */
  'loses-planned',
] as const
export interface Ask {
  readonly code: AskCode
  readonly params: Params
}

export type RefusalCode = (typeof REFUSAL_CODES)[number]
export const REFUSAL_CODES = [
  'no-set-up',
  'unknown-dough',
  'unknown-variety',
  'unknown-shelf',
  'unknown-batch',
  'unknown-load',
  'unknown-keep',
  'unknown-planned',
  'unknown-unsure',
  'unknown-step',
  'unknown-person',
  'unknown-note',
  'unknown-set-up',
  'unknown-formula',
  'unknown-mix',
  'unknown-ingredient',
  'unknown-preparation',
  'unknown-build',
  'unknown-order',
  'unknown-standing',
  'unknown-run',
  'unknown-menu-item',
  'unknown-portion',
  /** An order of nothing. */
  'order-empty',
  /** Nothing is left of a mixed line once what it must not have is taken out. */
  'order-nothing-left',
  /** Only who waits at the counter needs no time. */
  'order-when',
  /** A till sent it before. */
  'order-known',
  'which-bagel',
  /** A mix of another formula than the dough's. */
  'other-formula',
  /** A line that the mix sheet does not have. */
  'unknown-line',
  /** A mix that has begun is not dropped, and one that has not is not ended. */
  'mix-begun',
  'mix-not-begun',
  'mix-ended',
  /** A stage that mixes of this formula do not go through. */
  'not-of-formula',
  'date-over',
  'date-too-far',
  'no-piece-weight',
  'retired',
  /** Somebody else's tap did the same: a kind word, no fault. */
  'already-loaded',
  'already-flipped',
  'already-out',
  'already-moved',
  'already-confirmed',
  'already-open',
  'nothing-to-flip',
  'too-few',
  'not-on-route',
  'same-place',
  'day-not-open',
  'cannot-reopen',
  'no-changeover',
  'nothing-due',
  'too-many',
  'take-back-unknown',
  'take-back-changed-since',
  'take-back-never',
  'set-up-mismatch',
  /** Names and notes could not be written beside the journal. */
  'details-not-written',
  'not-your-role',
  'bad-command',
  'internal',
] as const
export interface Refusal {
  readonly code: RefusalCode
  readonly params: Params
}

/** Ids, counts and instants that a sentence is built from. */
export type Params = { readonly [name: string]: string | number | null }

/** Limits that people may exceed; it is recorded and shown, never blocked. */
export type OverLimit = 'shelf' | 'kettle' | 'boards' | 'too-early' | 'too-late'
