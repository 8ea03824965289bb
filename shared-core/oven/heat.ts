import type { FirstOrder } from './first-order.ts'
import { temperatureAfter, timeTo } from './first-order.ts'
import { lineThrough } from './line-through.ts'

/** A reading of the oven. Minutes of any origin. */
export interface HeatReading {
  readonly minute: number
  readonly celsius: number
}

/** What is held of an oven before its readings of this heat-up say more. */
export interface HeatPrior {
  /** Median of the time constant in minutes, and the standard deviation of its logarithm. */
  readonly tau: number
  readonly tauSpread: number
  /** What it tends to at its setting, °C, and the standard deviation of that. */
  readonly limit: number
  readonly limitSpread: number
  /** Of one reading, °C. */
  readonly noise: number
}

/**
 * What readings of one heat-up (or cool-down) under one setting say of its course: courses with their weights, which sum
 * to 1. Minutes count from the last reading.
 */
export interface HeatFit {
  readonly lastMinute: number
  readonly courses: readonly { readonly weight: number; readonly course: FirstOrder }[]
  /** The most probable one. */
  readonly likeliest: FirstOrder
  /** Standard deviation of a reading, °C, the readings' own scatter in it. */
  readonly noise: number
}

/** Steps of the grid over ln τ, and how many standard deviations to either side of the likeliest it reaches. */
const TAU_STEPS = 41
const TAU_REACH = 3.5
/** How many readings the noise that is held beforehand counts as. */
const NOISE_COUNTS_AS = 4
/** Limit, start and τ take as many of the readings' freedoms. */
const FITTED = 3

/**
 * Fits a first-order course to the readings of one heat-up.
 *
 * For a given τ the course is a straight line in e^(−t/τ), fitted in closed form with what is held of its limit; ln τ is
 * then weighed on a grid around its likeliest value by the marginal likelihood and what is held of it. A reading that is
 * far off counts less (Huber, twice).
 * @param readings of one setting, in order of time
 * @returns null without readings
 */
export function fitHeat(readings: readonly HeatReading[], prior: HeatPrior): HeatFit | null {
  const last = readings[readings.length - 1]
  if (last === undefined) return null
  let weights: readonly number[] = readings.map(() => 1)
  let noise = prior.noise
  let likeliest = Math.log(prior.tau)
  for (let round = 0; round < 3; round += 1) {
    const at = (logTau: number) => lineThrough(readings, weights, Math.exp(logTau), { ...prior, noise })
    likeliest = highest((logTau) => at(logTau).logEvidence + ofTau(prior, logTau), prior)
    const line = at(likeliest)
    const away = readings.map((one) => one.celsius - temperatureAfter(line.course, one.minute - last.minute))
    const squares = away.reduce((sum, one, n) => sum + (weights[n] ?? 1) * one * one, 0)
    const free = Math.max(0, readings.length - FITTED)
    noise = Math.sqrt((NOISE_COUNTS_AS * prior.noise ** 2 + squares) / (NOISE_COUNTS_AS + free))
    weights = away.map((one) => Math.min(1, (1.345 * Math.max(noise, 1e-9)) / Math.max(1e-9, Math.abs(one))))
  }
  const held = { ...prior, noise }
  const logAt = (logTau: number) =>
    lineThrough(readings, weights, Math.exp(logTau), held).logEvidence + ofTau(prior, logTau)
  const courses = gridAround(likeliest, spreadAt(logAt, likeliest, prior), logAt).flatMap(({ logTau, weight }) =>
    lineThrough(readings, weights, Math.exp(logTau), held).courses.map((one) => ({
      weight: one.weight * weight,
      course: one.course,
    })),
  )
  return {
    lastMinute: last.minute,
    courses,
    likeliest: lineThrough(readings, weights, Math.exp(likeliest), held).course,
    noise,
  }
}

/** When a temperature is reached, in minutes as the readings have them: with 10, 50 and 90 % chance by then; null: not. */
export interface Reached {
  readonly q10: number | null
  readonly q50: number | null
  readonly q90: number | null
  /** Chance that it is reached at all under this setting. */
  readonly chance: number
}

/** @param fromMinute never before it: it was not reached by then */
export function whenReached(fit: HeatFit, celsius: number, fromMinute: number): Reached {
  const times = fit.courses
    .map(({ weight, course }) => ({ weight, minute: fromNow(course, celsius, fit.lastMinute, fromMinute) }))
    .sort((one, other) => one.minute - other.minute)
  const chance = times.reduce((sum, { weight, minute }) => sum + (Number.isFinite(minute) ? weight : 0), 0)
  const by = (part: number) => {
    let sum = 0
    for (const { weight, minute } of times) {
      sum += weight
      if (sum >= part - 1e-12) return Number.isFinite(minute) ? minute : null
    }
    return null
  }
  return { q10: by(0.1), q50: by(0.5), q90: by(0.9), chance: Math.min(1, chance) }
}

/** What a thermometer will probably show: mean and standard deviation, its own noise left out. */
export function temperatureAt(fit: HeatFit, minute: number): { readonly mean: number; readonly spread: number } {
  let [mean, square] = [0, 0]
  for (const { weight, course } of fit.courses) {
    const celsius = temperatureAfter(course, minute - fit.lastMinute)
    mean += weight * celsius
    square += weight * celsius * celsius
  }
  return { mean, spread: Math.sqrt(Math.max(0, square - mean * mean)) }
}

function fromNow(course: FirstOrder, celsius: number, lastMinute: number, fromMinute: number): number {
  const now = temperatureAfter(course, Math.max(0, fromMinute - lastMinute))
  const isThere = course.limit >= course.start ? now >= celsius : now <= celsius
  if (isThere) return fromMinute
  const time = timeTo(course, celsius)
  return time === null ? Number.POSITIVE_INFINITY : Math.max(fromMinute, lastMinute + time)
}

function ofTau({ tau, tauSpread }: HeatPrior, logTau: number): number {
  return -0.5 * ((logTau - Math.log(tau)) / tauSpread) ** 2
}

/** The ln τ of the highest value: a coarse walk over what is thinkable, then golden section around the best of it. */
function highest(of: (logTau: number) => number, { tau, tauSpread }: HeatPrior): number {
  const [middle, step] = [Math.log(tau), tauSpread / 4]
  let best = middle
  let most = Number.NEGATIVE_INFINITY
  for (let n = -20; n <= 20; n += 1) {
    const value = of(middle + n * step)
    if (value > most) [best, most] = [middle + n * step, value]
  }
  let [low, high] = [best - step, best + step]
  const golden = (Math.sqrt(5) - 1) / 2
  for (let round = 0; round < 40; round += 1) {
    const [one, other] = [high - golden * (high - low), low + golden * (high - low)]
    if (of(one) >= of(other)) high = other
    else low = one
  }
  return (low + high) / 2
}

/** Standard deviation of ln τ by the bend at its likeliest value; what was held beforehand where it hardly bends. */
function spreadAt(of: (logTau: number) => number, at: number, { tauSpread }: HeatPrior): number {
  const step = Math.min(0.02, tauSpread / 10)
  const bend = (2 * of(at) - of(at - step) - of(at + step)) / (step * step)
  return bend > 0 ? Math.min(tauSpread, Math.max(1e-6, 1 / Math.sqrt(bend))) : tauSpread
}

function gridAround(at: number, spread: number, of: (logTau: number) => number) {
  const points = Array.from({ length: TAU_STEPS }, (_, n) => {
    const logTau = at + spread * TAU_REACH * ((2 * n) / (TAU_STEPS - 1) - 1)
    return { logTau, log: of(logTau) }
  })
  const most = Math.max(...points.map(({ log }) => log))
  const sum = points.reduce((total, { log }) => total + Math.exp(log - most), 0)
  return points.map(({ logTau, log }) => ({ logTau, weight: Math.exp(log - most) / sum }))
}
