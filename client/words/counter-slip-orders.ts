import type { QuoteCannot } from '../../shared-core/kitchen/quote.ts'
import type { EpochMs } from '../../shared-core/units.ts'

/** What the counter says while things are made to order: the slip, and those who wait for it. */
export interface SlipWords {
  readonly title: string
  readonly touchThings: string
  /** The key of the number that the slip gets. @example "No. 42" */
  number(mark: string): string
  readonly otherNumber: string
  readonly typeNumber: string
  readonly erase: string
  readonly useNumber: string
  readonly nextNumber: string
  /** @example "Start 42" */
  start(mark: string): string
  readonly nothingYet: string
  /** Usual and careful. @example "about 6 min, up to 9 min" */
  wait(medianMs: number, carefulMs: number): string
  /** Why a thing is not taken, or no wait can be told. */
  readonly notMade: { readonly [why in QuoteCannot]: string }
  /** Longer than the shop tells. @example "the shop says 10 min" */
  promised(ms: number): string
  readonly bagel: string
  readonly toasted: string
  readonly fillings: string
  readonly allergy: string
  readonly less: string
  readonly nextLine: string
  readonly another: string
  /** On a filling's key: it is left out, or there is more of it. */
  readonly leftOut: string
  readonly moreOf: string
  /** On a thing's key, how many portions are left for it. @example "6 left" */
  left(portions: number): string
  readonly portions: string
  /** @example "Hand over 41" */
  handOver(mark: string): string
  /** @example "ready since 12:04" */
  readySince(atMs: EpochMs): string
  readonly nobodyWaits: string
  /** For those who listen, over the rod of those who wait. */
  spokenQueue(marks: readonly string[]): string
  /** @example "+3 ready" */
  moreReady(count: number): string
}
