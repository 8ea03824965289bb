import type { Place, PlaceReadings } from '../dough/mix.ts'
import { assumedAt, readAt } from '../dough/places.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs, spanMs } from '../units.ts'
import { cooledTo, timeToReach } from './cooling.ts'
import { growth } from './growth.ts'

/** How long each step of a course is: at first pieces cool by 2 °C in one at most, later little changes. */
const STEP_MS = spanMs(5, 'min')
const LATER_STEP_MS = spanMs(30, 'min')
const LATER_AFTER_MS = spanMs(6, 'h')

/** What pieces go through in a stage. Temperatures in °C. */
export interface Course {
  readonly sinceMs: EpochMs
  /** Of the air around them, at an instant. */
  readonly airAt: (atMs: number) => number
  /** What they come with; null: they are as warm as the air, and stay so. */
  readonly cooling: { readonly from: number; readonly timeConstantMs: number } | null
  /** How far they had fermented when they came, in ms at the temperature of `provesAt`. */
  readonly fermentedMs: number
  /** The temperature at which a minute counts as a minute. */
  readonly provesAt: number
}

export interface CoursePoint {
  readonly atMs: EpochMs
  readonly celsius: number
  readonly fermentedMs: number
}

/**
 * A course step by step, from its beginning:
 *
 *   fermented(t) = fermented(0) + ∫ γ(T) / γ(T_provesAt) dt         (Simpson's rule in each step)
 *
 * @param toMs the last point stands there @param enoughMs it may end sooner, once so much has fermented
 */
export function courseTo(course: Course, toMs: EpochMs, enoughMs = Number.POSITIVE_INFINITY): readonly CoursePoint[] {
  const { sinceMs, airAt, cooling, provesAt } = course
  // Where nothing would ferment at the temperature of the windows, a minute is a minute.
  const paceThere = growth(provesAt)
  const pace = (celsius: number) => (paceThere > 0 ? growth(celsius) / paceThere : 1)
  const keeps = keptIn(cooling?.timeConstantMs ?? 0)
  const next = (celsius: number, fromMs: number, forMs: number) => {
    if (cooling === null) return airAt(fromMs + forMs)
    const air = airAt(fromMs + forMs / 2)
    return air + (celsius - air) * keeps(forMs)
  }
  let point: CoursePoint = {
    atMs: sinceMs,
    celsius: cooling?.from ?? airAt(sinceMs),
    fermentedMs: course.fermentedMs,
  }
  const points = [point]
  let paceNow = pace(point.celsius)
  while (point.atMs < toMs && point.fermentedMs < enoughMs) {
    const isLater = point.atMs - sinceMs >= LATER_AFTER_MS
    const stepMs = Math.min(isLater ? LATER_STEP_MS : STEP_MS, toMs - point.atMs)
    const middle = next(point.celsius, point.atMs, stepMs / 2)
    const celsius = next(middle, point.atMs + stepMs / 2, stepMs / 2)
    const paceThen = pace(celsius)
    const gainedMs = (stepMs * (paceNow + 4 * pace(middle) + paceThen)) / 6
    paceNow = paceThen
    point = { atMs: epochMs(point.atMs + stepMs), celsius, fermentedMs: point.fermentedMs + gainedMs }
    points.push(point)
  }
  return points
}

/** What part of its distance to the air a piece keeps in so long; steps are of few lengths, and e^x is what they cost. */
function keptIn(timeConstant: number): (forMs: number) => number {
  let last = { forMs: 0, share: 1 }
  return (forMs) => {
    if (forMs !== last.forMs) last = { forMs, share: cooledTo({ from: 1, air: 0, timeConstant }, forMs) }
    return last.share
  }
}

/** How far a course has fermented at its last point, in ms. */
export function fermentedAtEnd(points: readonly CoursePoint[]): number {
  return points[points.length - 1]?.fermentedMs ?? 0
}

/** When a course has fermented so far, between its points on the line from one to the other; null: not as far as it goes. */
export function whenFermented(points: readonly CoursePoint[], wantedMs: number): EpochMs | null {
  const n = points.findIndex(({ fermentedMs }) => fermentedMs >= wantedMs)
  const point = points[n]
  if (point === undefined) return null
  const before = points[n - 1]
  if (before === undefined) return point.atMs
  const share = (wantedMs - before.fermentedMs) / (point.fermentedMs - before.fermentedMs)
  return epochMs(before.atMs + (point.atMs - before.atMs) * share)
}

/** When a course is no warmer than its air by more than so much; null: not as far as it goes. */
export function whenCooled(
  { airAt, cooling }: Course,
  points: readonly CoursePoint[],
  withinCelsius: number,
): EpochMs | null {
  const n = points.findIndex(({ atMs, celsius }) => celsius <= airAt(atMs) + withinCelsius)
  const [before, point] = [points[n - 1], points[n]]
  if (before === undefined || point === undefined || cooling === null) return point?.atMs ?? null
  const air = airAt(point.atMs)
  const { timeConstantMs: timeConstant } = cooling
  const forMs = timeToReach({ from: before.celsius, air, timeConstant }, air + withinCelsius)
  return epochMs(Math.min(point.atMs, before.atMs + (forMs ?? Number.POSITIVE_INFINITY)))
}

/** The temperature of a place in °C at any instant: its readings, else what the set-up assumes, else so much. */
export function airOf(
  shop: Shop,
  place: Place,
  readings: PlaceReadings | undefined,
  elseCelsius: number,
): (atMs: number) => number {
  const assumed = assumedAt(shop, place)
  const elseMilli = assumed ?? elseCelsius * 1_000
  return (atMs) => (readAt(readings, place, atMs) ?? elseMilli) / 1_000
}
