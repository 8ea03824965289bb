import type { Stock } from '../day/state.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { foreseen } from './gamma-poisson.ts'
import type { Leaks } from './leak.ts'
import { PIECES_TOGETHER, usualMs } from './leak.ts'

/** The pace looks back two hours: long enough for a slow variety, short enough to follow the morning into the noon. */
export const PACE_LOOKS_BACK_MS = 2 * 3_600_000
/** A pace is not told from fewer pieces: half a dozen may be one customer. Common practice, no source. */
export const PACE_PIECES_MIN = 6
/** A first sale a minute ago is no pace of sixty an hour: the time counted is at least half an hour. */
export const PACE_COUNTS_MS_MIN = 30 * 60_000

/** Pieces sold in a span that ends now. */
export interface Pace {
  readonly pieces: number
  readonly overMs: number
}

/**
 * How fast a variety has been selling: the pieces of the last two hours over the time since the first of them.
 * It misleads where the variety was gone for part of that time: the true pace is then higher.
 * @returns null when fewer than `PACE_PIECES_MIN` pieces were sold in that time
 * @example 12 pieces since 7:00, now 8:00 // { pieces: 12, overMs: 3_600_000 }
 */
export function paceOf({ pace }: Pick<Stock, 'pace'>, nowMs: EpochMs): Pace | null {
  const recent = pace.filter((quarter) => quarter.fromMs >= nowMs - PACE_LOOKS_BACK_MS && quarter.fromMs <= nowMs)
  const pieces = recent.reduce((sum, quarter) => sum + quarter.pieces, 0)
  const fromMs = recent.find((quarter) => quarter.pieces > 0)?.fromMs
  if (fromMs === undefined || pieces < PACE_PIECES_MIN) return null
  return { pieces, overMs: Math.max(PACE_COUNTS_MS_MIN, nowMs - fromMs) }
}

/**
 * The same with what leaves unseen: pieces on record plus those that the leak takes in the same time. Where nothing is
 * on record, the time is what the shop has been open of the last two hours.
 * @returns null when together they are fewer than `PACE_PIECES_MIN`; `pieces` may have a fraction
 */
export function paceWithLeak(stock: Stock, leaks: Leaks | null, nowMs: EpochMs): Pace | null {
  if (leaks === null) return paceOf(stock, nowMs)
  const startMs = nowMs - PACE_LOOKS_BACK_MS
  const recent = stock.pace.filter(({ fromMs, pieces }) => pieces > 0 && fromMs >= startMs && fromMs <= nowMs)
  const fromMs = recent[0]?.fromMs ?? Math.max(startMs, leaks.hours.openMs)
  const overMs = Math.max(PACE_COUNTS_MS_MIN, nowMs - fromMs)
  const unseen = foreseen(leaks.rateOf(stock.varietyId), usualMs(leaks, nowMs - overMs, nowMs)).mean * PIECES_TOGETHER
  const pieces = recent.reduce((sum, quarter) => sum + quarter.pieces, 0) + unseen
  return pieces < PACE_PIECES_MIN ? null : { pieces, overMs }
}

/** Pieces an hour, rounded down. */
export function piecesPerHour({ pieces, overMs }: Pace): number {
  return Math.floor((pieces * 3_600_000) / overMs)
}

/**
 * When so many pieces are gone at a pace: now + left · overMs / pieces, rounded down to the millisecond.
 * @returns null when nothing is left or no pace is known: there is nothing to estimate
 * @example 6 left at 12 in an hour // in half an hour
 */
export function runOutAt(left: number, pace: Pace | null, nowMs: EpochMs): EpochMs | null {
  if (left <= 0 || pace === null) return null
  return epochMs(nowMs + Math.floor((left * pace.overMs) / pace.pieces))
}
