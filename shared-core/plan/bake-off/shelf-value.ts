import type { BakeOff, VarietyGiven } from './bake-off.ts'
import { DemandCurve } from './demand-curve.ts'
import type { FixedEvent } from './fixed-events.ts'
import { DUE, fixedEvents, HOLD, READY } from './fixed-events.ts'
import { firstMoment, LOSS_LIMIT_Z, LOSS_STEPS_PER_Z, secondMoment } from './normal-loss.ts'
import { pointsFor, ratePoints } from './rate-points.ts'

const EVENTS_MAX = 2_048

/** What happens on a shelf, in order; shared by all varieties, as only one is looked at at a time. */
const kinds = new Uint8Array(EVENTS_MAX)
const minutes = new Float64Array(EVENTS_MAX)
const amounts = new Float64Array(EVENTS_MAX)
const parts = new Float64Array(EVENTS_MAX)
const areas = new Float64Array(EVENTS_MAX)

/** From each event to the next one: minutes, part of the demand, and area below the demand curve above its start. */
const widths = new Float64Array(EVENTS_MAX)
const partSteps = new Float64Array(EVENTS_MAX)
const areaSteps = new Float64Array(EVENTS_MAX)

/** First and second moment of what was last asked for. */
const moments = new Float64Array(2)

/**
 * What one variety's shelf is expected to earn. At a fixed rate of the day, stock is followed from one arrival of pieces
 * to the next by its mean and variance, taken as normal, less Poisson demand, and cut at 0: what is below it is lost. The
 * rate's own law is a handful of points. It takes some
 * microseconds and is mostly within three thousandths of the simulated value.
 */
export class ShelfValue {
  /** Points that the rate's law stands on. */
  readonly points: number
  /** The most pieces that are held for orders at once. */
  readonly heldMax: number
  /** Pieces in orders, and expected walk-ins that count. */
  readonly ordered: number
  readonly walkIns: number
  readonly curve: DemandCurve
  /** Pieces of a whole day's walk-ins. */
  readonly rateMean: number
  readonly #variety: VarietyGiven
  readonly #rates: Float64Array
  readonly #weights: Float64Array
  readonly #fixed: readonly FixedEvent[]
  readonly #close: number
  /** Of one piece, what its dough would be worth tomorrow in it. */
  readonly #cost: number
  #events = 0

  constructor(given: BakeOff, variety: VarietyGiven, count = pointsFor(variety.demand)) {
    const { mean, dispersion } = variety.demand
    this.#variety = variety
    this.#cost = variety.cost + (given.doughs[variety.dough]?.carryValue ?? 0)
    this.rateMean = mean
    this.curve = new DemandCurve(given, variety.demand)
    const points = ratePoints(mean, dispersion, count)
    if (points.length === 0) points.push({ pieces: 0, weight: 1 })
    this.points = points.length
    this.#rates = Float64Array.from(points, ({ pieces }) => pieces)
    this.#weights = Float64Array.from(points, ({ weight }) => weight)
    this.#fixed = fixedEvents(given, variety)
    this.ordered = this.#fixed.reduce((sum, { kind, pieces }) => sum + (kind === DUE ? pieces : 0), 0)
    let held = 0
    this.heldMax = this.#fixed.reduce((most, { kind, pieces }) => {
      held += kind === HOLD ? pieces : kind === DUE ? -pieces : 0
      return Math.max(most, held)
    }, 0)
    this.walkIns = mean * this.curve.whole
    this.#close = given.close
  }

  /**
   * @param readyAt minute at which the pieces of a load are ready, in any order
   * @param pieces of that load, as many entries
   * @returns money of the day, cost of the loads' pieces taken off
   */
  of(readyAt: Float64Array, pieces: Float64Array, loads: number): number {
    const baked = this.#merge(readyAt, pieces, loads)
    const { price, salvage, lostSale, stalePerHour } = this.#variety
    let left = 0
    let missing = 0
    let lost = 0
    let stockMinutes = 0
    const points = this.#rates.length
    for (let point = 0; point < points; point++) {
      const weight = this.#weights[point] as number
      const rate = this.#rates[point] as number
      this.#run(rate)
      left += weight * (result[LEFT] as number)
      missing += weight * (result[MISSING] as number)
      lost += weight * (result[LOST] as number)
      stockMinutes += weight * (result[MINUTES] as number)
    }
    const filled = this.ordered - missing
    return (
      price * (this.walkIns - lost + filled) +
      salvage * left -
      this.#cost * baked -
      lostSale * lost -
      (price + 2 * lostSale) * missing -
      (stalePerHour * stockMinutes) / 60
    )
  }

  /** Puts loads among the fixed events. @returns pieces of the loads */
  #merge(readyAt: Float64Array, pieces: Float64Array, loads: number): number {
    const fixed = this.#fixed
    let count = 0
    for (; count < fixed.length; count++) {
      const event = fixed[count] as FixedEvent
      kinds[count] = event.kind
      minutes[count] = event.minute
      amounts[count] = event.pieces
      parts[count] = event.part
      areas[count] = event.area
    }
    let baked = 0
    for (let load = 0; load < loads; load++) {
      const minute = readyAt[load] as number
      const amount = pieces[load] as number
      baked += amount
      let at = count++
      while (
        at > 0 &&
        ((minutes[at - 1] as number) > minute || ((minutes[at - 1] as number) === minute && kinds[at - 1] !== READY))
      ) {
        kinds[at] = kinds[at - 1] as number
        minutes[at] = minutes[at - 1] as number
        amounts[at] = amounts[at - 1] as number
        parts[at] = parts[at - 1] as number
        areas[at] = areas[at - 1] as number
        at--
      }
      const corner = this.curve.cornerBy(minute)
      kinds[at] = READY
      minutes[at] = minute
      amounts[at] = amount
      parts[at] = this.curve.partAt(minute, corner)
      areas[at] = this.curve.areaAt(minute, corner)
    }
    this.#events = count
    for (let event = 0; event + 1 < count; event++) {
      const width = (minutes[event + 1] as number) - (minutes[event] as number)
      const part = parts[event] as number
      widths[event] = width
      partSteps[event] = (parts[event + 1] as number) - part
      areaSteps[event] = (areas[event + 1] as number) - (areas[event] as number) - part * width
    }
    return baked
  }

  /**
   * One day at one rate, into `result`. `mean` and `variance` are of the stock that is not held: below zero while pieces
   * for orders are still to come.
   */
  #run(rate: number): void {
    const last = this.#events - 1
    let mean = 0
    let variance = 0
    let lost = 0
    let missing = 0
    let held = 0
    let stockMinutes = 0
    for (let event = 0; event <= last; event++) {
      const amount = amounts[event] as number
      const kind = kinds[event]
      if (kind === READY) mean += amount
      else if (kind === HOLD) {
        mean -= amount
        held += amount
      } else {
        held -= amount
        missing += handOver(mean + held, variance)
        mean = (moments[0] as number) - held
        variance = moments[1] as number
      }
      if (event === last) break
      const width = widths[event] as number
      const wanted = rate * (partSteps[event] as number)
      let free = mean
      let lackingVariance = 0
      if (held > 0) {
        if (mean < LOSS_LIMIT_Z * Math.sqrt(variance) || mean < 0) {
          cutAtZero(mean, variance)
          free = moments[0] as number
          const lack = free - mean
          lackingVariance = Math.max(0, mean * mean + variance - (moments[1] as number) - lack * lack)
        }
        stockMinutes += (held + mean - free) * width
      }
      if (free > 0) {
        const area = rate * (areaSteps[event] as number)
        stockMinutes += free >= wanted ? free * width - area : emptied(free, wanted, width, area)
      }
      if (wanted <= 0) continue
      variance += wanted
      const less = mean - wanted
      const spread = Math.sqrt(variance)
      if (less >= LOSS_LIMIT_Z * spread) {
        mean = less
        continue
      }
      const lacking = free - mean
      cutAtZero(less, variance)
      const kept = Math.min(free, moments[0] as number)
      const keptVariance = Math.max(0, (moments[1] as number) - kept * kept)
      lost += wanted - (free - kept)
      mean = kept - lacking
      variance = keptVariance + lackingVariance + 2 * kept * lacking
    }
    result[LEFT] = Math.max(0, mean)
    result[LOST] = lost
    result[MISSING] = missing
    result[MINUTES] = stockMinutes - this.#leftMinutes(mean)
  }

  /** Piece minutes of the pieces that are left: the last ones made. They are not charged. */
  #leftMinutes(left: number): number {
    let rest = left
    let sum = 0
    for (let event = this.#events - 1; event >= 0 && rest > 0; event--) {
      if (kinds[event] !== READY) continue
      const pieces = Math.min(rest, amounts[event] as number)
      sum += pieces * Math.max(0, this.#close - (minutes[event] as number))
      rest -= pieces
    }
    return sum
  }
}

const LEFT = 0
const LOST = 1
const MISSING = 2
const MINUTES = 3
const result = new Float64Array(4)

/**
 * Piece minutes of a stock that does not last until the next event. As if demand were steady, in such a way that a stock
 * which is just enough gets what the curve gives.
 */
function emptied(stock: number, wanted: number, width: number, area: number): number {
  const share = stock / wanted
  return (wanted * width - area) * share * share
}

/** An order takes its pieces: mean and variance of what is there then, into `moments`. @returns pieces that it lacks */
function handOver(mean: number, variance: number): number {
  cutAtZero(mean, variance)
  const there = moments[0] as number
  moments[1] = Math.max(0, (moments[1] as number) - there * there)
  return Math.max(0, there - mean)
}

/** Moments of a normal cut at 0, into `moments`. */
function cutAtZero(mean: number, variance: number): void {
  const spread = Math.sqrt(variance)
  if (mean >= LOSS_LIMIT_Z * spread) {
    moments[0] = mean
    moments[1] = mean * mean + variance
  } else if (mean <= -LOSS_LIMIT_Z * spread) {
    moments[0] = moments[1] = 0
  } else {
    const place = (mean / spread + LOSS_LIMIT_Z) * LOSS_STEPS_PER_Z
    const entry = Math.floor(place)
    const beyond = place - entry
    const first = firstMoment[entry] as number
    const second = secondMoment[entry] as number
    moments[0] = spread * (first + beyond * ((firstMoment[entry + 1] as number) - first))
    moments[1] = variance * (second + beyond * ((secondMoment[entry + 1] as number) - second))
  }
}
