import type { Demand } from '../demand/demand.ts'
import type { VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { LineToday } from './line-today.ts'

/** What a plan is made of. */
export interface PlanAsked {
  readonly shop: Shop
  readonly line: LineToday
  /**
   * By variety, what is asked for on a whole day, or, of an open day, what is still asked for: then the mean is of the
   * rest and the profile goes from now (0) to the close (1). Varieties of which nothing is known are left out.
   */
  readonly demand: ReadonlyMap<string, Demand>
  /** Of a variety's demand, what the kitchen uses: 0 to 1. */
  readonly kitchen: ReadonlyMap<VarietyId, number>
  readonly date: string
  /** The shop's noon of `date`. */
  readonly noonMs: EpochMs
  /** Times the usual work of planning; left out: 1. */
  readonly effort?: number
}

const MINUTE_MS = 60_000

/** Minutes after local midnight, counted from the day's noon, as the planner counts. @example noon // 720 */
export function minuteOf({ noonMs }: Pick<PlanAsked, 'noonMs'>, atMs: number): number {
  return 720 + (atMs - noonMs) / MINUTE_MS
}

/** The instant of such a minute; what lies before 1970 is taken as then. */
export function instantOf({ noonMs }: Pick<PlanAsked, 'noonMs'>, minute: number): EpochMs {
  return epochMs(Math.max(0, noonMs + (minute - 720) * MINUTE_MS))
}
