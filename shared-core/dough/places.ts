import type { State } from '../day/state.ts'
import type { Degrees } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'
import { milliCelsius, milliCelsiusOf } from '../shop/temperature.ts'
import type { EpochMs } from '../units.ts'
import { spanMs } from '../units.ts'
import type { Place, PlaceReadings } from './mix.ts'

/** Between readings that are kept, but for the newest: a sensor may post each minute. */
export const POINT_MS_MIN = spanMs(10, 'min')
/** A snapshot carries them all. */
export const POINTS_MAX = 40
/** Longer ago than any dough that still stands was begun: pre-ferment, mix and a two-day chill. */
const KEPT_MS = spanMs(4 * 24, 'h')

/**
 * For how long a reading speaks for its place, forward and back. A room follows the day, flour, tap and cooler hold
 * (common practice, no source).
 */
export const HOLDS_MS: { readonly [place in Place]: number } = {
  room: spanMs(6, 'h'),
  cooler: spanMs(24, 'h'),
  flour: spanMs(24, 'h'),
  tap: spanMs(24, 'h'),
}

/** What a cooler keeps where nobody says: 38 °F, 3.3 °C (common practice, no source). */
const COOLER_MILLI_CELSIUS = 3_333

type Point = PlaceReadings['points'][number]

/**
 * How warm a place is at an instant, in thousandths of a °C: between two readings on the line from one to the other, else
 * the reading that still speaks for it, else what the set-up assumes.
 * @returns null where nothing says so
 */
export function placeNow(state: Pick<State, 'readings'>, shop: Shop, place: Place, atMs: EpochMs): number | null {
  const read = readAt(state.readings.get(place), place, atMs)
  return read === null ? assumedAt(shop, place) : Math.round(read)
}

/** What the set-up says of a place that nobody has read, in thousandths of a °C; null: nothing. */
export function assumedAt({ doughRoom, cooler }: Shop, place: Place): number | null {
  if (place === 'cooler') return cooler?.keepsAt == null ? COOLER_MILLI_CELSIUS : milliCelsius(cooler.keepsAt)
  if (doughRoom === null) return null
  const { roomAt, flourAt, tapAt } = doughRoom
  return milliCelsiusOf({ room: roomAt, flour: flourAt, tap: tapAt }[place])
}

/** What readings say of an instant, in thousandths of a °C; null: none speaks for it. */
export function readAt(readings: PlaceReadings | undefined, place: Place, atMs: number): number | null {
  const points = readings?.points ?? []
  let n = points.length
  while (n > 0 && (points[n - 1]?.atMs ?? 0) > atMs) n -= 1
  const holdsMs = HOLDS_MS[place]
  const before = speaks(points[n - 1], atMs, holdsMs)
  const after = speaks(points[n], atMs, holdsMs)
  if (before === null || after === null) return (before ?? after)?.milliCelsius ?? null
  const share = (atMs - before.atMs) / (after.atMs - before.atMs)
  return before.milliCelsius + (after.milliCelsius - before.milliCelsius) * share
}

function speaks(point: Point | undefined, atMs: number, holdsMs: number): Point | null {
  return point !== undefined && Math.abs(point.atMs - atMs) <= holdsMs ? point : null
}

/**
 * A reading more, at its own time. Readings stay `POINT_MS_MIN` apart but for the newest; when they are too many the one
 * goes that is missed least: that whose triangle with its neighbours is the smallest.
 *
 * Source of the last: Visvalingam & Whyatt, The Cartographic Journal 30 (1993) 46, from memory.
 */
export function withReading(
  before: PlaceReadings | undefined,
  { place, atMs, read }: { readonly place: Place; readonly atMs: EpochMs; readonly read: Degrees },
): PlaceReadings {
  const point = { atMs, milliCelsius: milliCelsiusOf(read) }
  const others = (before?.points ?? []).filter((one) => one.atMs !== atMs)
  const isNewest = others.every((one) => one.atMs < atMs)
  const newestMs = Math.max(atMs, ...others.map((one) => one.atMs))
  const points = [...others, point]
    .filter((one) => newestMs - one.atMs <= KEPT_MS)
    .sort((one, other) => one.atMs - other.atMs)
  return { place, points: thinned(apart(points)), read: isNewest ? read : (before?.read ?? read) }
}

/** Each a while after the one before it, but for the newest. */
function apart(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = []
  points.forEach((point, n) => {
    const last = kept[kept.length - 1]
    const isNewest = n === points.length - 1
    if (last === undefined || isNewest || point.atMs - last.atMs >= POINT_MS_MIN) kept.push(point)
  })
  return kept
}

function thinned(points: readonly Point[]): readonly Point[] {
  let kept = points
  while (kept.length > POINTS_MAX) {
    const areas = kept.map((point, n) => area(kept[n - 1], point, kept[n + 1]))
    const least = areas.indexOf(Math.min(...areas))
    kept = kept.filter((_, n) => n !== least)
  }
  return kept
}

/** Twice the triangle of three readings; endless for the first and the last. */
function area(before: Point | undefined, point: Point, after: Point | undefined): number {
  if (before === undefined || after === undefined) return Number.POSITIVE_INFINITY
  const [x1, y1] = [point.atMs - before.atMs, point.milliCelsius - before.milliCelsius]
  const [x2, y2] = [after.atMs - before.atMs, after.milliCelsius - before.milliCelsius]
  return Math.abs(x1 * y2 - x2 * y1)
}
