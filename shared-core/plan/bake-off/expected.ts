import { partBy } from '../../demand/exposure.ts'
import { equallyLikelyRates } from '../../demand/rates.ts'
import type { BakeLoad, BakeOff, DemandGiven, VarietyGiven } from './bake-off.ts'
import { coolMinOf, dueOf } from './load-parts.ts'

/** What a plan is expected to bring, in the planning problem's own money and pieces. */
export interface Expected {
  readonly profit: number
  /** Walk-ins in vain, pieces missing in orders, pieces left at the close. */
  readonly lost: number
  readonly missing: number
  readonly left: number
  /** Minutes from being ready to being sold, of a piece that is sold. */
  readonly ageMin: number
  readonly varieties: ReadonlyMap<string, ExpectedVariety>
}

export interface ExpectedVariety {
  readonly profit: number
  readonly sold: number
  readonly lost: number
  readonly missing: number
  readonly left: number
  /** Minutes on the shelf, of all pieces that are sold together. */
  readonly stockMin: number
  readonly baked: number
}

/** From two hours before an order is due, pieces are held for it. */
const HELD_BEFORE_DUE_MIN = 120

/**
 * What loads bring beside what is running and pinned; dough that they take is no longer there tomorrow. A day's rate is a gamma: it is cut into equally likely rates, and
 * at each the stock is followed from one event to the next by mean and variance, taken as normal, cut at what is held.
 * Mostly within one percent of the simulated score (tests/core/plan/expected.test.ts); deterministic.
 * @param loads those of a plan; running and pinned ones are in `given`
 */
export function expectedOf(given: BakeOff, loads: readonly BakeLoad[]): Expected {
  const varieties = new Map(given.varieties.map((variety) => [variety.name, expectedVariety(given, variety, loads)]))
  const sum = (of: (one: ExpectedVariety) => number) => [...varieties.values()].reduce((all, one) => all + of(one), 0)
  const sold = sum((one) => one.sold)
  return {
    profit: sum(({ profit }) => profit),
    lost: sum(({ lost }) => lost),
    missing: sum(({ missing }) => missing),
    left: sum(({ left }) => left),
    ageMin: sold < 1e-6 ? 0 : sum(({ stockMin }) => stockMin) / sold,
    varieties,
  }
}

interface Happening {
  readonly at: number
  /** At equal times: ready, then held, then due. */
  readonly rank: number
  readonly ready: number
  readonly held: number
  readonly due: number
}

/** One variety; the others do not touch it. */
export function expectedVariety(given: BakeOff, variety: VarietyGiven, loads: readonly BakeLoad[]): ExpectedVariety {
  const happenings = happeningsOf(given, variety, loads)
  const { mean } = variety.demand
  const rates = ratesOf(variety.demand)
  const baked = [...loads, ...(given.pinned ?? [])].reduce((sum, load) => sum + piecesFor(variety.name, load), 0)
  let [lost, missing, left, stockMin] = [0, 0, 0, 0]
  for (const rate of rates) {
    const day = followed(given, variety, happenings, rate)
    lost += day.lost / rates.length
    missing += day.missing / rates.length
    left += day.left / rates.length
    stockMin += day.stockMin / rates.length
  }
  const from = Math.max(given.open, given.now ?? given.open)
  const walkIns = mean * Math.max(0, 1 - partBy(variety.demand.profile, from))
  const ordered = happenings.reduce((sum, { due }) => sum + due, 0)
  const sold = Math.max(0, walkIns - lost + ordered - missing)
  const { price, cost, salvage, lostSale, stalePerHour } = variety
  const carry = given.doughs[variety.dough]?.carryValue ?? 0
  const profit =
    price * sold -
    (cost + carry) * baked +
    salvage * left -
    lostSale * lost -
    (price + 2 * lostSale) * missing -
    (stalePerHour * stockMin) / 60
  return { profit, sold, lost, missing, left, stockMin, baked }
}

/** Plans of one problem are weighed by the dozen: the rates of a demand are cut once. */
const RATES = new WeakMap<DemandGiven, readonly number[]>()

function ratesOf(demand: DemandGiven): readonly number[] {
  const known = RATES.get(demand)
  if (known !== undefined) return known
  const { mean, dispersion } = demand
  const rates = mean <= 0 ? [0] : equallyLikelyRates(dispersion, mean).map((rate) => rate * mean)
  RATES.set(demand, rates)
  return rates
}

function happeningsOf(given: BakeOff, variety: VarietyGiven, loads: readonly BakeLoad[]): Happening[] {
  const none = { rank: 0, ready: 0, held: 0, due: 0 }
  const cool = coolMinOf(given, variety)
  const found: Happening[] = [{ ...none, at: given.now ?? given.open, ready: variety.onShelf }]
  for (const load of [...(given.running ?? []), ...(given.pinned ?? []), ...loads]) {
    const ready = piecesFor(variety.name, load)
    if (ready > 0) found.push({ ...none, at: load.out + cool, ready })
  }
  // Between two points of the profile customers come evenly, and stock falls in a line.
  for (const [at] of variety.demand.profile) found.push({ ...none, at })
  for (const order of given.orders) {
    const at = dueOf(given, order)
    for (const [name, pieces] of order.lines) {
      if (name !== variety.name) continue
      found.push(
        { ...none, at: at - HELD_BEFORE_DUE_MIN, rank: 1, held: pieces },
        { ...none, at, rank: 2, due: pieces },
      )
    }
  }
  return found.sort((one, other) => one.at - other.at || one.rank - other.rank)
}

function piecesFor(name: string, { lines }: BakeLoad): number {
  return lines.reduce((sum, [variety, pieces]) => (variety === name ? sum + pieces : sum), 0)
}

interface Followed {
  lost: number
  missing: number
  left: number
  stockMin: number
}

/** One day at a rate: so many pieces over the whole day, as the profile spreads them. */
function followed(given: BakeOff, { demand }: VarietyGiven, happenings: readonly Happening[], rate: number): Followed {
  const { open, close, now } = given
  const begin = Math.max(open, now ?? open)
  const day: Followed = { lost: 0, missing: 0, left: 0, stockMin: 0 }
  let [mean, variance, held] = [0, 0, 0]
  let at = Math.min(begin, happenings[0]?.at ?? begin)
  let part = partBy(demand.profile, Math.max(at, begin))
  // Made pieces that are there, by the minute of being ready: what is left at the close is the youngest of them.
  const made: { readonly at: number; readonly pieces: number }[] = []
  const pass = (to: number) => {
    const end = Math.min(to, close)
    const next = partBy(demand.profile, Math.max(begin, end))
    const asked = rate * Math.max(0, next - part)
    // Pieces that are not there cannot be held: nobody can have them, and nobody loses them twice.
    const free = held > 0 ? cutAtNone(mean - held, variance) : { mean, variance }
    // A normal has a tail where there is no piece at all.
    const after = free.mean < 1e-9 ? NONE : cutAtNone(free.mean - asked, free.variance + asked)
    day.lost += Math.max(0, after.mean - (free.mean - asked))
    // Where it runs out in between, stock over time is a triangle as long as it lasted.
    const lasts = asked > free.mean && asked > 0 ? free.mean / asked : 1
    const minutes = Math.max(0, end - at)
    const kept = Math.max(0, mean - free.mean)
    day.stockMin += minutes * (kept + (lasts * (free.mean + after.mean)) / 2)
    mean = after.mean + kept
    variance = after.variance
    part = next
    at = Math.max(at, end)
  }
  for (const { at: when, ready, held: more, due } of happenings) {
    if (when > close) {
      day.left += ready
      continue
    }
    pass(when)
    mean += ready
    if (ready > 0) made.push({ at: when, pieces: ready })
    held += more
    if (due > 0) {
      const filled = Math.min(due, mean)
      day.missing += due - filled
      mean -= filled
      held -= due
    }
  }
  pass(close)
  day.left += mean
  day.stockMin = Math.max(0, day.stockMin - ageOfLeft(made, mean, close))
  return day
}

function ageOfLeft(
  made: readonly { readonly at: number; readonly pieces: number }[],
  left: number,
  close: number,
): number {
  let [rest, age] = [left, 0]
  for (let n = made.length - 1; n >= 0 && rest > 0; n -= 1) {
    const of = Math.min(rest, made[n]?.pieces ?? 0)
    age += of * (close - (made[n]?.at ?? close))
    rest -= of
  }
  return age
}

const NONE = { mean: 0, variance: 0 }

/** Mean and variance of max(0, X), X normal. */
function cutAtNone(mean: number, variance: number): { readonly mean: number; readonly variance: number } {
  if (variance < 1e-9) return { mean: Math.max(0, mean), variance: 0 }
  const deviation = Math.sqrt(variance)
  const z = mean / deviation
  if (z > 6) return { mean, variance }
  if (z < -6) return { mean: 0, variance: 0 }
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
  const above = standardNormal(z)
  const first = mean * above + deviation * density
  const second = (mean * mean + variance) * above + mean * deviation * density
  return { mean: first, variance: Math.max(0, second - first * first) }
}

/** Φ(z), to 7.5e-8. Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.2.17. */
export function standardNormal(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z))
  const sum = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum
  return z >= 0 ? 1 - tail : tail
}
