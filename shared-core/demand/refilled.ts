import { assert } from '../support.ts'
import type { RestDemand } from './demand.ts'
import { partBy } from './exposure.ts'
import { equallyLikelyRates } from './rates.ts'
import type { Course } from './run-out.ts'
import type { StockPoint } from './stock-now.ts'

/** Chances below this are left out: of all of them together less than a thousandth of a piece. */
const NEGLIGIBLE = 1e-9

export interface Coming {
  readonly minute: number
  readonly pieces: number
}

/** From one arrival to the next, under one rate: chances of each stock at its start, of those that were never gone. */
interface Stretch {
  readonly fromMinute: number
  readonly fromPart: number
  readonly asked: number
  readonly neverGone: Float64Array
  readonly goneBefore: number
}

interface End {
  readonly left: number
  readonly lost: number
  readonly gone: number
}

/**
 * An item's course when more comes on the way: given its rate, demand is a Poisson process, so stock can be followed from
 * arrival to arrival by the chance of each number of pieces; rates are the equally likely ones of the gamma. A day on
 * which it was gone and came back is followed on for what is left and lost, but "gone by" is the first time.
 * @param rest its profile from now on
 * @param coming in order of time, after now
 */
export function refilledCourse(
  rest: RestDemand,
  stock: readonly StockPoint[],
  coming: readonly Coming[],
  nowMinute: number,
): Course {
  const rates = equallyLikelyRates(rest.dispersion, rest.mean)
  const follows = rates.map((rate) => followed(rest, rate * rest.mean, stock, coming, nowMinute))
  const mean = (of: (end: End) => number) => follows.reduce((sum, { end }) => sum + of(end), 0) / follows.length
  const goneBy = (minute: number) => {
    const part = partBy(rest.profile, minute)
    return follows.reduce((sum, { stretches }) => sum + goneIn(stretches, minute, part), 0) / follows.length
  }
  return {
    goneBy,
    goneAtClose: mean(({ gone }) => gone),
    left: mean(({ left }) => left),
    lost: mean(({ lost }) => lost),
  }
}

function followed(
  rest: RestDemand,
  asked: number,
  stock: readonly StockPoint[],
  coming: readonly Coming[],
  now: number,
) {
  const most = coming.reduce((sum, { pieces }) => sum + pieces, Math.max(...stock.map(({ pieces }) => pieces)))
  let neverGone: Float64Array = new Float64Array(most + 1)
  let again: Float64Array = new Float64Array(most + 1)
  let goneBefore = 0
  for (const { pieces, chance } of stock) {
    if (pieces > 0) neverGone[pieces] = (neverGone[pieces] ?? 0) + chance
    else {
      goneBefore += chance
      again[0] = (again[0] ?? 0) + chance
    }
  }
  const stretches: Stretch[] = []
  let lost = 0
  let from = { minute: now, part: 0 }
  for (const next of [...coming, null]) {
    stretches.push({ fromMinute: from.minute, fromPart: from.part, asked, neverGone, goneBefore })
    const part = next === null ? 1 : partBy(rest.profile, next.minute)
    const chances = poisson(asked * Math.max(0, part - from.part))
    const kept = sold(neverGone, chances)
    const others = sold(again, chances)
    lost += kept.lost + others.lost
    goneBefore += kept.stock[0] ?? 0
    others.stock[0] = (others.stock[0] ?? 0) + (kept.stock[0] ?? 0)
    kept.stock[0] = 0
    neverGone = shifted(kept.stock, next?.pieces ?? 0)
    again = shifted(others.stock, next?.pieces ?? 0)
    if (next !== null) from = { minute: next.minute, part }
  }
  let left = 0
  for (let pieces = 1; pieces <= most; pieces += 1) left += pieces * ((neverGone[pieces] ?? 0) + (again[pieces] ?? 0))
  return { stretches, end: { left, lost, gone: again[0] ?? 0 } }
}

/** Chance that it was gone at some time up to a minute. */
function goneIn(stretches: readonly Stretch[], minute: number, part: number): number {
  let at = stretches[0]
  for (const stretch of stretches) if (stretch.fromMinute <= minute) at = stretch
  assert(at !== undefined, 'a course begins now')
  const { beyond } = poisson(at.asked * Math.max(0, part - at.fromPart))
  let gone = at.goneBefore
  for (let pieces = 1; pieces < at.neverGone.length; pieces += 1) {
    gone += (at.neverGone[pieces] ?? 0) * (beyond[pieces - 1] ?? 0)
  }
  return gone
}

/** Stock after so many were asked for; what was asked for beyond it, expected, is lost. */
function sold(stock: Float64Array, { mean, chances, beyond }: Poisson): { stock: Float64Array; lost: number } {
  const after = new Float64Array(stock.length)
  let lost = 0
  // Expected demand beyond so many pieces: E[(D − s)⁺] = E[(D − (s − 1))⁺] − P(D > s − 1).
  let more = mean
  for (let pieces = 0; pieces < stock.length; pieces += 1) {
    if (pieces > 0) more = Math.max(0, more - (beyond[pieces - 1] ?? 0))
    const chance = stock[pieces] ?? 0
    if (chance < NEGLIGIBLE) continue
    lost += chance * more
    const most = Math.min(pieces, chances.length)
    for (let asked = 0; asked < most; asked += 1) {
      after[pieces - asked] = (after[pieces - asked] ?? 0) + chance * (chances[asked] ?? 0)
    }
    after[0] = (after[0] ?? 0) + chance * (pieces === 0 ? 1 : (beyond[pieces - 1] ?? 0))
  }
  return { stock: after, lost }
}

interface Poisson {
  readonly mean: number
  /** P(n), and P(more than n), from n = 0 as far as they are not negligible. */
  readonly chances: readonly number[]
  readonly beyond: readonly number[]
}

function poisson(mean: number): Poisson {
  const chances: number[] = []
  const beyond: number[] = []
  // From about 745 on exp(−mean) is none of a double's: there the ratios are summed as logarithms, which is slower.
  const isLong = mean > 700
  let log = -mean
  let chance = Math.exp(log)
  let rest = 1
  for (let n = 0; rest > NEGLIGIBLE || n <= mean; n += 1) {
    if (n > 0 && isLong) log += Math.log(mean / n)
    if (n > 0) chance = isLong ? Math.exp(log) : (chance * mean) / n
    rest = Math.max(0, rest - chance)
    chances.push(chance)
    beyond.push(rest)
  }
  return { mean, chances, beyond }
}

function shifted(stock: Float64Array, pieces: number): Float64Array {
  if (pieces === 0) return stock
  const after = new Float64Array(stock.length)
  after.set(stock.subarray(0, stock.length - pieces), pieces)
  return after
}
