import type { Habit, HabitHour } from '../day/habit.ts'
import type { Books, Unseen } from './estimate.ts'
import { unseenSince } from './estimate.ts'
import { foreseen } from './gamma-poisson.ts'
import type { Leaks } from './leak.ts'
import { PIECES_TOGETHER } from './leak.ts'
import { openParts } from './open-hours.ts'

/** What a count found: of so many on the books so many are there. */
export interface Found {
  readonly known: number
  readonly left: number
  readonly within: number
  /** The last one has just gone: the time until then is the time that it took. */
  readonly isJustGone: boolean
}

/** From less time than this nothing is learnt. */
const LEAST_MS = 60_000
/** A gap this many deviations and pieces from what was expected is taken for no more than that: one slip teaches little. */
const SLIP_DEVIATIONS = 4
const SLIP_PIECES = 6
const SQUARES_MAX = 9

/**
 * What a count teaches of how a variety leaks: pieces missing over the time in which they went, in whole numbers, added
 * to what was known. Of a rod that is found empty nobody knows since when: it teaches over the time that the pieces
 * would have taken, so that a sold-out variety does not look slow.
 * @returns null when it teaches nothing: nothing was on the books, the shop was shut, or the rod was known a moment ago
 */
export function habitAfter(before: Habit | null, leaks: Leaks, books: Books, found: Found): Habit | null {
  const unseen = unseenSince(leaks, books)
  const { stock, nowMs } = books
  if (found.known === 0 || unseen.usualMs < LEAST_MS) return null
  const gap = found.known - found.left
  const isKnownRate = Number.isFinite(leaks.rateOf(stock.varietyId).exposure)
  const missing = isKnownRate ? Math.round(askedFor(withoutSlip(gap, unseen), unseen, found)) : gap
  const share = shareOfTime(unseen, missing, found)
  const so = before ?? { ...NO_HABIT, varietyId: stock.varietyId }
  const shopSold = Math.max(0, leaks.shopSold - (stock.seen?.shopSold ?? 0))
  const sold = Math.max(0, stock.soldToday - (stock.seen?.sold ?? 0))
  const after = {
    ...so,
    missing: so.missing + missing,
    sold: so.sold + sold,
    shopSold: so.shopSold + Math.round(shopSold * share),
    usualMs: so.usualMs + Math.round(unseen.usualMs * share),
    busyMs: so.busyMs + Math.round(unseen.usualMs * unseen.traffic * share),
    checks: so.checks + 1,
    squares: so.squares + (isKnownRate && share > 0.9 ? squareOf(gap, unseen, leaks, found) : 100),
  }
  return { ...after, hours: hoursAfter(so.hours, missing, { leaks, unseen, share, rate: rateOf(leaks, books), nowMs }) }
}

/** Older days weigh less; a variety that nobody learns of any more is forgotten. */
export function halved(habit: Habit): Habit | null {
  // Half of −1 is −0, which JSON does not know: a screen that folded it and one that read it back would differ.
  const half = (sum: number) => Math.trunc(sum / 2) + 0
  const { varietyId, missing, sold, shopSold, usualMs, busyMs, checks, squares } = habit
  if (half(usualMs) < LEAST_MS) return null
  return {
    varietyId,
    missing: half(missing),
    sold: half(sold),
    shopSold: half(shopSold),
    usualMs: half(usualMs),
    busyMs: half(busyMs),
    checks: half(checks),
    squares: half(squares),
    hours: habit.hours
      .map((one) => ({ hour: one.hour, missing: half(one.missing), usual: half(one.usual) }))
      .filter((one) => one.missing !== 0 || one.usual !== 0),
  }
}

export const NO_HABIT: Omit<Habit, 'varietyId'> = {
  missing: 0,
  sold: 0,
  shopSold: 0,
  usualMs: 0,
  busyMs: 0,
  checks: 0,
  squares: 0,
  hours: [],
}

function withoutSlip(gap: number, { mean, variance }: Unseen): number {
  const most = SLIP_DEVIATIONS * Math.sqrt(variance) + SLIP_PIECES
  return Math.min(mean + most, Math.max(mean - most, gap))
}

/**
 * A rod that is found empty was asked for at least what it held. Where that is more than was expected, what would have
 * gone besides is the mean excess of a normal number over a bound: at the mean 0.8 deviations, one above it 0.53, two
 * 0.4 (σ·L(z) / (1 − Φ(z)), here as 0.8 / (1 + z / 2)).
 */
function askedFor(missing: number, { mean, variance }: Unseen, { left, isJustGone }: Found): number {
  if (left > 0 || isJustGone || missing < mean || variance === 0) return missing
  const deviation = Math.sqrt(variance)
  return missing + (0.8 * deviation) / (1 + (missing - mean) / deviation / 2)
}

/** How much of the time the rod had pieces in it, as far as can be told. */
function shareOfTime({ mean, unlimited }: Unseen, missing: number, { left, isJustGone }: Found): number {
  if (unlimited <= 0) return 1
  const stocked = Math.min(1, mean / unlimited)
  const isSoldOut = left === 0 && !isJustGone && missing >= 0 && missing < mean
  return isSoldOut ? stocked * (missing / mean) : stocked
}

/** (Gap / doubt)² in hundredths, against the doubt as it is reckoned before any widening. */
function squareOf(gap: number, { mean, variance }: Unseen, { wider }: Leaks, { within }: Found): number {
  const reckoned = variance / wider + (within * within) / 4 + 1
  const square = ((gap - mean) * (gap - mean)) / reckoned
  return Math.round(100 * Math.min(SQUARES_MAX, square))
}

/** Pieces in a millisecond of usual time. */
function rateOf(leaks: Leaks, { stock }: Books): number {
  return foreseen(leaks.rateOf(stock.varietyId), 1).mean * PIECES_TOGETHER
}

interface Span {
  readonly leaks: Leaks
  readonly unseen: Unseen
  readonly share: number
  readonly rate: number
  readonly nowMs: number
}

/** A longer span says nothing of which hour it was. */
const HOURS_TOLD_APART = 4

/** The missing pieces laid on the hours of the span by how busy those are; beside them what like hours would have had. */
function hoursAfter(before: readonly HabitHour[], missing: number, span: Span): readonly HabitHour[] {
  const { leaks, unseen, share, rate, nowMs } = span
  const parts = openParts(leaks.hours, unseen.fromMs, nowMs)
  if (rate === 0 || parts.length > HOURS_TOLD_APART) return before
  const after = new Map(before.map((one) => [one.hour, one]))
  for (const { hour, ms } of parts) {
    const so = after.get(hour) ?? { hour, missing: 0, usual: 0 }
    const part = (ms * (leaks.weights.get(hour) ?? 1)) / unseen.usualMs
    after.set(hour, {
      hour,
      missing: so.missing + Math.round(100 * missing * part),
      usual: so.usual + Math.round(100 * rate * ms * unseen.traffic * share),
    })
  }
  return [...after.values()].sort((one, other) => one.hour - other.hour)
}
