import type { Lot, Stock } from '../day/state.ts'
import { piecesOf } from '../line/lines.ts'
import type { CounterRules } from '../shop/rules.ts'
import type { EpochMs } from '../units.ts'
import { PACE_BUCKET_MS } from './apply-stock.ts'
import { foreseen } from './gamma-poisson.ts'
import type { Leaks } from './leak.ts'
import { PIECES_TOGETHER, usualMs } from './leak.ts'
import { meanAboveNone } from './unit-loss.ts'

/** How many pieces of a variety are there now, as far as anybody can tell. */
export interface Estimate {
  /** Whole pieces, from none to what is on the books. */
  readonly likely: number
  /** ± whole pieces, right about four times in five. */
  readonly within: number
  /** The same before rounding: mean, and standard deviation. */
  readonly mean: number
  readonly doubt: number
  /** The doubt without what nobody has ever checked. */
  readonly knownDoubt: number
}

/** What the estimate is made from. */
export interface Books {
  readonly stock: Stock
  /** The lots that are there: ready ones. */
  readonly lots: readonly Lot[]
  readonly nowMs: EpochMs
  readonly salesFrom: CounterRules['salesFrom']
}

/** Four times in five a normal number lies within 1.28 deviations of its mean. */
const FOUR_IN_FIVE = 1.2816
/**
 * What may have left unseen, as a share of the rod, in the time below, where no count has ever been compared with the
 * books: doubt only, it moves no number. Common practice, no source.
 */
const UNCHECKED_SHARE = { taps: 0.25, till: 0.25, sweeps: 0.5 } as const
const UNCHECKED_OVER_MS = 2 * 3_600_000
/** How far off the shares are by which sales without a name are spread, as a share of the pieces spread. */
const SHARE_ERROR = 0.25

/**
 * What is left of a variety:
 *
 *   likely = E[max(0, books − unseen)],  unseen ~ mean and variance of `unseenSince`, taken for normal
 *
 * On the books is what came out less what is on record as sold, used and kept. Unseen is what left without anybody
 * saying so since the rod was last known. Never more than on the books, never less than none.
 * It misleads where pieces came out that nobody tapped, and on the first day of a shop that taps nothing, before a
 * count has shown what leaves: then the books stand, with a doubt that says so.
 * @param leaks null before the day is open: the books stand
 * @example 30 on the books, 3 an hour unseen, counted two hours ago // { likely: 24, within: 6 }
 */
export function estimateOf(leaks: Leaks | null, books: Books): Estimate {
  const pieces = piecesOf(books.lots)
  if (leaks === null || pieces === 0) return { likely: pieces, within: 0, mean: pieces, doubt: 0, knownDoubt: 0 }
  const unseen = unseenSince(leaks, books)
  const knownDoubt = Math.sqrt(unseen.variance + allottedVariance(books.stock) + countVariance(books.stock))
  const unchecked = uncheckedPieces(leaks, books, pieces)
  const doubt = Math.sqrt(knownDoubt * knownDoubt + leaks.ignorance * unchecked * unchecked)
  const mean = Math.min(pieces, meanAboveNone(pieces - unseen.mean, knownDoubt))
  const likely = Math.round(mean)
  const reach = (to: number) => Math.abs(Math.min(pieces, Math.max(0, to)) - likely)
  const middle = pieces - unseen.mean
  const furthest = Math.max(reach(middle - FOUR_IN_FIVE * doubt), reach(middle + FOUR_IN_FIVE * doubt))
  // A whole number that is off by less than a half is right.
  return { likely, within: Math.max(0, Math.ceil(furthest - 0.5)), mean, doubt, knownDoubt }
}

export interface Unseen {
  /** Pieces, with their variance. */
  readonly mean: number
  readonly variance: number
  /** Of the mean, had the rod never been empty in between: what the same time would have taken. */
  readonly unlimited: number
  /** Time while open since the rod was last known, hours by their weight; and how busy it was against the usual, 1. */
  readonly usualMs: number
  readonly traffic: number
  readonly fromMs: number
}

/**
 * What left unseen since a rod was last known. The time is gone through from load to load: what has run out leaks no
 * more until the next pieces come.
 */
export function unseenSince(leaks: Leaks, { stock, lots, nowMs }: Books): Unseen {
  const { seen } = stock
  const fromMs = Math.max(seen?.atMs ?? 0, leaks.hours.openMs)
  const usual = usualMs(leaks, fromMs, nowMs)
  const sold = Math.max(0, leaks.shopSold - (seen?.shopSold ?? 0))
  const busy = trafficOf(leaks, sold, usual)
  const rate = leaks.rateOf(stock.varietyId)
  const varianceOf = (mean: number) =>
    leaks.wider * (PIECES_TOGETHER * mean + mean * mean * (1 / rate.shape + 1 / busy.shape))
  const over = (startMs: number, endMs: number) =>
    foreseen(rate, usualMs(leaks, startMs, endMs) * busy.times).mean * PIECES_TOGETHER
  let mean = 0
  let lastMs = fromMs
  let before = piecesOf(lots.filter((lot) => lot.readyAtMs <= fromMs))
  for (const lot of lots) {
    if (lot.readyAtMs <= fromMs) continue
    const comesMs = Math.min(lot.readyAtMs, nowMs)
    mean += over(lastMs, comesMs)
    mean = Math.min(mean, before + soldSince(stock, lot.readyAtMs))
    before += lot.pieces
    lastMs = comesMs
  }
  mean += over(lastMs, nowMs)
  return {
    mean,
    variance: varianceOf(mean),
    unlimited: over(fromMs, nowMs),
    usualMs: usual,
    traffic: busy.times,
    fromMs,
  }
}

/** The pieces of a purchase, all varieties together. The mean of squares over the mean, as above. */
const PIECES_A_PURCHASE = 5
/**
 * How busy a span was against the usual is known before from its hours alone, badly: a gamma of shape 4, half as busy
 * again or half as busy one time in three. Common practice, no source.
 */
const TRAFFIC_SHAPE = 4
/** Over a span that matters ups and downs even out: of what is expected, a fifth or so. Common practice, no source. */
const TRAFFIC_EVENS_OUT = 20

/** How busy the shop has been against the usual, by what is on record as sold since: gamma–Poisson again. */
function trafficOf({ soldPerMs }: Leaks, sold: number, usual: number): { times: number; shape: number } {
  const expected = (soldPerMs * usual) / PIECES_A_PURCHASE
  // Where no pace is known yet, what was sold is neither much nor little.
  if (expected === 0) return { times: 1, shape: TRAFFIC_EVENS_OUT }
  const shape = TRAFFIC_SHAPE + sold / PIECES_A_PURCHASE
  return { times: shape / (TRAFFIC_SHAPE + expected), shape: Math.max(TRAFFIC_EVENS_OUT, shape) }
}

/** Sold on record since an instant, as far as the quarters of the last two hours tell. */
function soldSince({ pace }: Stock, sinceMs: number): number {
  return piecesOf(pace.filter(({ fromMs }) => fromMs + PACE_BUCKET_MS > sinceMs))
}

function allottedVariance({ unnamedSince }: Stock): number {
  const shares = SHARE_ERROR * unnamedSince
  return PIECES_TOGETHER * unnamedSince + shares * shares
}

/** What a count left open: within 3 pieces is a spread of a little under 2. */
function countVariance({ seen, counted }: Stock): number {
  if (seen === null || counted === null || counted.atMs !== seen.atMs) return 0
  return (counted.within * counted.within) / 4
}

function uncheckedPieces(leaks: Leaks, { stock, nowMs, salesFrom }: Books, pieces: number): number {
  const overMs = usualMs(leaks, stock.seen?.atMs ?? 0, nowMs)
  return UNCHECKED_SHARE[salesFrom] * pieces * Math.min(1, overMs / UNCHECKED_OVER_MS)
}
