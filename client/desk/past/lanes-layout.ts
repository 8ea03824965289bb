import type { Ruler } from '../../../shared-core/day/ruler.ts'
import type { ShelfId, VarietyId } from '../../../shared-core/ids.ts'
import type { PlayedDay } from './day-record.ts'
import type { LaneLoad, RodGap } from './day-tracks.ts'

/** The drawing of a day: hours across, a lane for each shelf and for each rod that ran out, from top to bottom. */
export interface LanesLayout {
  readonly heightPx: number
  readonly hours: readonly { readonly atMs: number; readonly x: number; readonly hasText: boolean }[]
  readonly open: { readonly x: number; readonly width: number }
  readonly lanes: readonly Lane[]
}

export interface Lane {
  readonly key: string
  readonly y: number
  readonly height: number
  readonly of:
    | { readonly kind: 'shelf'; readonly shelfId: ShelfId }
    | { readonly kind: 'rod'; readonly varietyId: VarietyId }
  readonly bars: readonly LaneBar[]
}

export interface LaneBar {
  readonly key: string
  readonly x: number
  readonly width: number
  /** Where it was flipped; null where it was not. */
  readonly flipX: number | null
  readonly load: LaneLoad | null
  readonly gap: RodGap | null
}

export const HOURS_PX = 22
const SHELF_PX = 26
const ROD_PX = 18
const BETWEEN_PX = 5
const HOUR_MS = 3_600_000
/** An hour's number needs about this much room. */
const HOUR_TEXT_PX = 34

type Day = Pick<PlayedDay, 'fromMs' | 'toMs' | 'open' | 'loads' | 'gaps'>

/**
 * @param offsetMs the shop's offset from UTC: hours begin by the clock on the wall
 * @param shelfIds in the set-up's order
 */
export function lanesLayout(day: Day, shelfIds: readonly ShelfId[], widthPx: number, offsetMs: number): LanesLayout {
  const xOf = (atMs: number) => xAt(day, widthPx, atMs)
  const shelves = shelfIds.map(
    (shelfId): Omit<Lane, 'y'> => ({
      key: shelfId,
      height: SHELF_PX,
      of: { kind: 'shelf', shelfId },
      bars: day.loads.filter((load) => load.shelfId === shelfId).map((load) => barOf(load, day.toMs, xOf)),
    }),
  )
  const gone = [...new Set(day.gaps.map(({ varietyId }) => varietyId))]
  const rods = gone.map(
    (varietyId): Omit<Lane, 'y'> => ({
      key: `rod ${varietyId}`,
      height: ROD_PX,
      of: { kind: 'rod', varietyId },
      bars: day.gaps
        .filter((gap) => gap.varietyId === varietyId)
        .map((gap) => {
          const x = xOf(gap.fromMs)
          return { key: String(gap.fromMs), x, width: Math.max(2, xOf(gap.toMs) - x), flipX: null, load: null, gap }
        }),
    }),
  )
  let y = HOURS_PX
  const lanes = [...shelves, ...rods].map((lane) => {
    const placed = { ...lane, y }
    y += lane.height + BETWEEN_PX
    return placed
  })
  const openX = xOf(day.open.fromMs)
  return {
    heightPx: y,
    hours: hoursOf(day, widthPx, offsetMs),
    open: { x: openX, width: Math.max(0, xOf(day.open.toMs) - openX) },
    lanes,
  }
}

/** Pixels from the left at an instant, kept within the drawing. */
export function xAt({ fromMs, toMs }: Pick<Ruler, 'fromMs' | 'toMs'>, widthPx: number, atMs: number): number {
  return Math.min(1, Math.max(0, (atMs - fromMs) / (toMs - fromMs))) * widthPx
}

function barOf(load: LaneLoad, endMs: number, xOf: (atMs: number) => number): LaneBar {
  const x = xOf(load.fromMs)
  const width = Math.max(3, xOf(load.toMs ?? endMs) - x - 1)
  const flipX = load.flippedAtMs === null ? null : xOf(load.flippedAtMs)
  return { key: load.loadId, x, width, flipX, load, gap: null }
}

function hoursOf(day: Day, widthPx: number, offsetMs: number): LanesLayout['hours'] {
  const first = Math.ceil((day.fromMs + offsetMs) / HOUR_MS) * HOUR_MS - offsetMs
  const count = Math.max(0, Math.floor((day.toMs - first) / HOUR_MS) + 1)
  const every = Math.max(1, Math.ceil(HOUR_TEXT_PX / ((widthPx * HOUR_MS) / (day.toMs - day.fromMs))))
  return Array.from({ length: count }, (_, n) => {
    const atMs = first + n * HOUR_MS
    const x = xAt(day, widthPx, atMs)
    return { atMs, x, hasText: n % every === 0 && x > HOUR_TEXT_PX / 2 && x < widthPx - HOUR_TEXT_PX / 2 }
  })
}
