import type { BakeOff, VarietyGiven } from '../../../shared-core/plan/bake-off/bake-off.ts'

/**
 * The walk-in customers of one variety on simulated days: a gamma rate for the day, then a Poisson process with the
 * profile's shape. Every variety draws from a stream of its own, so that all plans meet the same customers.
 */
export interface Customers {
  /** Minutes since midnight, day after day, ascending within a day. */
  readonly times: Float64Array
  /** Day d has times[first[d]] … times[first[d + 1] - 1]. */
  readonly first: Int32Array
}

export interface Days {
  readonly days: number
  readonly seed: number
}

/** Customers between `open` (with `now`: after it) and `close`; `index` is the variety's place in the instance. */
export function drawCustomers(given: BakeOff, variety: VarietyGiven, index: number, { days, seed }: Days): Customers {
  const { mean, dispersion, profile } = variety.demand
  const random = uniform(seed, index)
  const from = Math.max(given.open, given.now ?? Number.NEGATIVE_INFINITY)
  const begin = given.now === undefined || given.now < given.open ? partBefore(profile, from) : partBy(profile, from)
  const end = partBy(profile, given.close)
  const first = new Int32Array(days + 1)
  let times = new Float64Array(Math.ceil(days * (mean * 1.1 + 4)))
  let count = 0
  for (let day = 0; day < days; day++) {
    const rate = mean > 0 ? (gamma(dispersion, random) * mean) / dispersion : 0
    let part = begin
    let leg = 1
    while (rate > 0) {
      part -= Math.log(1 - random()) / rate
      if (part >= end) break
      while (leg < profile.length - 1 && pointAt(profile, leg)[1] <= part) leg++
      if (count === times.length) times = enlarged(times)
      times[count++] = minuteOf(pointAt(profile, leg - 1), pointAt(profile, leg), part)
    }
    first[day + 1] = count
  }
  return { times, first }
}

type Point = readonly [minute: number, part: number]

/** Part of the day's demand that has come by a minute, a step at that very minute included. */
export function partBy(profile: readonly Point[], minute: number): number {
  return partAt(profile, minute, (at) => at <= minute)
}

function partBefore(profile: readonly Point[], minute: number): number {
  return partAt(profile, minute, (at) => at < minute)
}

function partAt(profile: readonly Point[], minute: number, isPast: (at: number) => boolean): number {
  const next = profile.findIndex(([at]) => !isPast(at))
  if (next === -1) return pointAt(profile, profile.length - 1)[1]
  if (next === 0) return pointAt(profile, 0)[1]
  const [fromMin, fromPart] = pointAt(profile, next - 1)
  const [toMin, toPart] = pointAt(profile, next)
  return fromPart + ((toPart - fromPart) * (minute - fromMin)) / (toMin - fromMin)
}

function pointAt(profile: readonly Point[], index: number): Point {
  const point = profile[index]
  if (point === undefined) throw new Error(`a profile has no point ${index}: it needs two or more`)
  return point
}

function minuteOf([fromMin, fromPart]: Point, [toMin, toPart]: Point, part: number): number {
  return toPart > fromPart ? fromMin + ((toMin - fromMin) * (part - fromPart)) / (toPart - fromPart) : toMin
}

function enlarged(times: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(times.length * 2 + 16)
  larger.set(times)
  return larger
}

/** Gamma with mean `shape` and scale 1. Source: Marsaglia & Tsang 2000, ACM Trans. Math. Softw. 26:363–372. */
function gamma(shape: number, random: () => number): number {
  if (shape < 1) return gamma(shape + 1, random) * (1 - random()) ** (1 / shape)
  const d = shape - 1 / 3
  const c = 1 / Math.sqrt(9 * d)
  for (;;) {
    const x = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
    const v = (1 + c * x) ** 3
    if (v > 0 && Math.log(1 - random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v
  }
}

/** Uniform on [0, 1) in steps of 2⁻³². Source: O'Neill's sfc32 as in PractRand (Doty-Humphrey); from memory. */
function uniform(seed: number, stream: number): () => number {
  let a = seed | 0
  let b = Math.imul(stream + 1, 0x9e3779b9)
  let c = 0x2545f491
  let counter = 1
  const next = (): number => {
    const sum = (a + b + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + sum
    return (sum >>> 0) / 4294967296
  }
  for (let warmUp = 0; warmUp < 16; warmUp++) next()
  return next
}
