import type { Span } from './sales-day.ts'

/**
 * The day in quarters of an hour of the clock, midnight to noon of the next day. By the clock and not from opening on:
 * lunch stays at noon when a shop opens an hour earlier.
 */
export const BIN_MINUTES = 15
export const BINS = 144

/** The bin of a minute; what lies outside the day's hours goes to their nearest bin. */
export function binOf(minute: number, openMinute: number, closeMinute: number): number {
  const inside = Math.min(Math.max(minute, openMinute), closeMinute - 1e-6)
  return Math.min(BINS - 1, Math.max(0, Math.floor(inside / BIN_MINUTES)))
}

/** Of each bin, the part from 0 to 1 in which the shop was open and the item there. */
export function presence(openMinute: number, closeMinute: number, gone: readonly Span[] = []): Float64Array {
  const there = new Float64Array(BINS)
  addSpan(there, { fromMinute: openMinute, toMinute: closeMinute }, 1)
  for (const { fromMinute, toMinute } of gone) {
    addSpan(there, { fromMinute: Math.max(fromMinute, openMinute), toMinute: Math.min(toMinute, closeMinute) }, -1)
  }
  return there
}

function addSpan(there: Float64Array, { fromMinute, toMinute }: Span, sign: 1 | -1): void {
  const last = Math.min(BINS - 1, Math.ceil(toMinute / BIN_MINUTES) - 1)
  for (let bin = Math.max(0, Math.floor(fromMinute / BIN_MINUTES)); bin <= last; bin += 1) {
    const from = Math.max(fromMinute, bin * BIN_MINUTES)
    const to = Math.min(toMinute, (bin + 1) * BIN_MINUTES)
    if (to > from) there[bin] = Math.max(0, (there[bin] ?? 0) + (sign * (to - from)) / BIN_MINUTES)
  }
}

/**
 * The usual day before there are sales: busiest at opening, falling evenly to a quarter of that at close.
 * Common practice, no source. The cumulated part by u, the part of the opening hours that is over: u · (1.6 − 0.6 u).
 */
export function usualPartBy(u: number): number {
  const inside = Math.min(1, Math.max(0, u))
  return inside * (1.6 - 0.6 * inside)
}

/** Sums over days: pieces by bin, and for each bin what the pieces would be with an intensity of one. */
export class BinSums {
  readonly pieces = new Float64Array(BINS)
  readonly chances = new Float64Array(BINS)

  forget(keep: number): void {
    for (let bin = 0; bin < BINS; bin += 1) {
      this.pieces[bin] = (this.pieces[bin] ?? 0) * keep
      this.chances[bin] = (this.chances[bin] ?? 0) * keep
    }
  }

  add(pieces: Float64Array, there: Float64Array, scale: number): void {
    for (let bin = 0; bin < BINS; bin += 1) {
      this.pieces[bin] = (this.pieces[bin] ?? 0) + (pieces[bin] ?? 0)
      this.chances[bin] = (this.chances[bin] ?? 0) + (there[bin] ?? 0) * scale
    }
  }
}
