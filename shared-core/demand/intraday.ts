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

/** Bins of a day: those in which the shop is open at all, and of each the part, 0 to 1, in which something is there. */
export interface OpenBins {
  readonly first: number
  /** One past the last. */
  readonly end: number
  readonly there: Float64Array
}

/** The bins between opening and closing, less what was gone. */
export function openBins(openMinute: number, closeMinute: number, gone: readonly Span[] = []): OpenBins {
  const first = Math.max(0, Math.floor(openMinute / BIN_MINUTES))
  const end = Math.min(BINS, Math.ceil(closeMinute / BIN_MINUTES))
  const there = new Float64Array(BINS)
  addSpan(there, { fromMinute: openMinute, toMinute: closeMinute }, 1)
  for (const { fromMinute, toMinute } of gone) {
    addSpan(there, { fromMinute: Math.max(fromMinute, openMinute), toMinute: Math.min(toMinute, closeMinute) }, -1)
  }
  return { first, end, there }
}

/** What of a day's demand falls into the time in which something is there, in the intensities' unit. */
export function massOf(intensity: Float64Array, { first, end, there }: OpenBins): number {
  let sum = 0
  for (let bin = first; bin < end; bin += 1) sum += (intensity[bin] ?? 0) * (there[bin] ?? 0)
  return sum
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

/** What a layer knows beyond the layers before it: by bin, pieces that came, and pieces that these expected. */
export class Layer {
  readonly #pieces = new Float64Array(BINS)
  readonly #expected = new Float64Array(BINS)
  readonly #nearBins: number

  /** @param nearBins of how many bins each side it is seen together: a finer layer has few pieces in each */
  constructor(nearBins: number) {
    this.#nearBins = nearBins
  }

  forget(keep: number): void {
    for (let bin = 0; bin < BINS; bin += 1) {
      this.#pieces[bin] = (this.#pieces[bin] ?? 0) * keep
      this.#expected[bin] = (this.#expected[bin] ?? 0) * keep
    }
  }

  /** @param came pieces by bin  @param before intensities of the layers before  @param pieces that a mass of 1 asks for */
  add(came: Float64Array, before: Float64Array, { first, end, there }: OpenBins, pieces: number): void {
    for (let bin = first; bin < end; bin += 1) {
      this.#pieces[bin] = (this.#pieces[bin] ?? 0) + (came[bin] ?? 0)
      this.#expected[bin] = (this.#expected[bin] ?? 0) + (before[bin] ?? 0) * (there[bin] ?? 0) * pieces
    }
  }

  /**
   * Intensities with what this layer knows: times (came + worth) / (expected + worth), the mean of a gamma–Poisson
   * posterior around 1, of each bin with its neighbours.
   */
  sharpened(before: Float64Array, { first, end }: OpenBins, worth: number): Float64Array {
    const after = new Float64Array(BINS)
    let came = 0
    let expected = 0
    // A window that slides: `next` is the first bin that is not in it yet.
    let next = Math.max(0, first - this.#nearBins)
    for (let bin = first; bin < end; bin += 1) {
      for (; next < BINS && next <= bin + this.#nearBins; next += 1) {
        came += this.#pieces[next] ?? 0
        expected += this.#expected[next] ?? 0
      }
      after[bin] = ((before[bin] ?? 0) * (came + worth)) / (expected + worth)
      const behind = bin - this.#nearBins
      // What adding and taking away leaves of nothing may be a hair below it.
      if (behind >= 0) came = Math.max(0, came - (this.#pieces[behind] ?? 0))
      if (behind >= 0) expected = Math.max(0, expected - (this.#expected[behind] ?? 0))
    }
    return after
  }
}
