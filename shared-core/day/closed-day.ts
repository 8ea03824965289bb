import type { DoughId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { Account, Line } from './state.ts'
import type { Touched } from './trace.ts'

/** The day that was closed last, as far as the running shop still needs it. */
export interface ClosedDay {
  readonly label: string
  readonly openedAtMs: EpochMs
  readonly closedAtMs: EpochMs
  /** The date, YYYY-MM-DD, that it uses up: its own, or the day before when it was over on that already. */
  readonly closedOn: string
  readonly account: readonly { readonly doughId: DoughId; readonly account: Account }[]
  /** Pieces of each variety that were left for sale at close, what was day-old already included. */
  readonly left: readonly Line[]
  readonly crewMinutes: number | null
  /** What the close replaced, so that the day can be reopened; null once the next one has begun. */
  readonly before: BeforeClose | null
}

export interface BeforeClose {
  readonly touched: readonly Touched[]
  readonly account: readonly { readonly doughId: DoughId; readonly before: Account | null }[]
  readonly noonMs: EpochMs | null
  readonly lastSlip?: number
  readonly lastDay: ClosedDay | null
}
