import { assert } from '../support.ts'

/**
 * How far forecasts were from what came. What has no meaning for the days at hand (nothing came, nothing varied) is null,
 * never 0 or infinite.
 */

/**
 * Weighted absolute percentage error, as a part of 1: Σ |y − f| / Σ |y|.
 * @param came pieces, by day @param forecasts as many
 * @returns null where nothing came
 * @throws AssertionError where there are not as many forecasts
 * @example wape([112, 95], [105, 100]) // 0.058
 */
export function wape(came: readonly number[], forecasts: readonly number[]): number | null {
  const all = came.reduce((sum, value) => sum + Math.abs(value), 0)
  return all === 0 ? null : errorsOf(came, forecasts).reduce((sum, error) => sum + error, 0) / all
}

/**
 * Mean absolute scaled error: the mean |y − f| over the mean |y_t − y_(t−m)| of days before, what repeating the day m ago
 * would have been off by.
 * @param before days in order @param season m: 1 the day before, 7 the same weekday
 * @returns null where there are no two days m apart, or all such are alike
 * Source: Hyndman & Koehler, International Journal of Forecasting 22 (2006) 679–688.
 * @example mase([112], [105], [100, 110, 96], 1) // 0.583
 */
export function mase(
  came: readonly number[],
  forecasts: readonly number[],
  before: readonly number[],
  season: number,
): number | null {
  const scale = mean(before.slice(season).map((value, at) => Math.abs(value - (before[at] ?? 0))))
  const off = mean(errorsOf(came, forecasts))
  return scale === null || scale === 0 || off === null ? null : off / scale
}

/**
 * Pinball loss of a quantile: what too little costs against too much, where the quantile's level is the critical ratio.
 *
 *   level · (y − q) where y ≥ q,   (1 − level) · (q − y) where y < q
 *
 * @example pinball(118, 112, 0.75) // 4.5
 */
export function pinball(came: number, quantile: number, level: number): number {
  return came >= quantile ? level * (came - quantile) : (1 - level) * (quantile - came)
}

function errorsOf(came: readonly number[], forecasts: readonly number[]): number[] {
  assert(came.length === forecasts.length, `${came.length} days and ${forecasts.length} forecasts`)
  return came.map((value, at) => Math.abs(value - (forecasts[at] ?? 0)))
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length
}
