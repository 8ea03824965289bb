import type { Line } from '../../../shared-core/day/state.ts'
import type { ShelfId, VarietyId } from '../../../shared-core/ids.ts'
import { textWidthPx } from '../../parts/text-width.ts'
import type { ShownLoad } from './wishes.ts'

/** What is drawn of the line over a day; times in ms, sizes in CSS pixels. */
export interface PictureGiven {
  readonly fromMs: number
  readonly toMs: number
  readonly widthPx: number
  readonly fontPx: number
  readonly shelfIds: readonly ShelfId[]
  /** Loads of the plan, and those that are in the oven already. */
  readonly loads: readonly ShownLoad[]
  readonly cycleMs: number
  readonly boards: { readonly count: number; readonly pieces: number }
  readonly isOnBoards: (varietyId: VarietyId) => boolean
  readonly nameOf: (varietyId: VarietyId) => string
}

export interface Lane {
  readonly top: number
  readonly height: number
}

export interface DrawnLoad extends ShownLoad {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  /** So wide is what a finger touches: its text too, where that runs on over the shelf. */
  readonly touchPx: number
  /** Where its first side ends; null: nothing is flipped. */
  readonly flipX: number | null
  /** Where it is cool enough to be sold. */
  readonly readyX: number
  /** What is in it, as far as there is room. */
  readonly rows: readonly string[]
  /** From kettle to shelf, as an SVG path; null: nothing is boiled. */
  readonly way: string | null
  /** Middles of its dips in the kettle's lane. */
  readonly dips: readonly number[]
}

export interface PictureView {
  readonly heightPx: number
  readonly kettle: Lane
  readonly boards: Lane & {
    /** Boards in use as a closed SVG path over the lane's floor. */
    readonly area: string
    readonly limitY: number
    readonly most: number
  }
  readonly shelves: readonly (Lane & { readonly shelfId: ShelfId })[]
  readonly loads: readonly DrawnLoad[]
  readonly dipPx: number
}

const ROWS = 3
const GAP_PX = 10

/** Sizes of the lanes, by the size of the text in them. */
export function laneSizes(fontPx: number) {
  return { row: fontPx * 1.25, kettle: fontPx * 2.2, boards: fontPx * 3.4, shelf: fontPx * 1.25 * ROWS + 12 }
}

export function xOf({ fromMs, toMs, widthPx }: Pick<PictureGiven, 'fromMs' | 'toMs' | 'widthPx'>) {
  return (ms: number) => Math.round(((ms - fromMs) / (toMs - fromMs)) * widthPx * 2) / 2
}

/** Lays the line's lanes under each other: kettle, boards, one for each shelf; and the loads in them. */
export function pictureView(given: PictureGiven): PictureView {
  const { fontPx, shelfIds, cycleMs } = given
  const size = laneSizes(fontPx)
  const kettle = { top: 0, height: size.kettle }
  const boards = { top: kettle.height + GAP_PX, height: size.boards }
  const first = boards.top + boards.height + GAP_PX * 2
  const shelves = shelfIds.map((shelfId, n) => ({
    shelfId,
    top: first + n * (size.shelf + GAP_PX),
    height: size.shelf,
  }))
  const x = xOf(given)
  return {
    heightPx: first + shelves.length * (size.shelf + GAP_PX),
    kettle,
    boards: { ...boards, ...boardsArea(given, boards) },
    shelves,
    loads: given.loads.flatMap((shown) => drawnLoad(shown, given, { kettle, shelves })),
    dipPx: x(given.fromMs + cycleMs),
  }
}

interface Lanes {
  readonly kettle: Lane
  readonly shelves: readonly (Lane & { readonly shelfId: ShelfId })[]
}

function drawnLoad(shown: ShownLoad, given: PictureGiven, { kettle, shelves }: Lanes): DrawnLoad[] {
  const { load, key } = shown
  const lane = shelves.find(({ shelfId }) => shelfId === load.shelfId)
  if (lane === undefined) return []
  const x = xOf(given)
  const [left, right, readyX] = [x(load.inAtMs), x(load.outAtMs), x(load.readyAtMs)]
  const { kettleAtMs, dips } = load
  const middles = kettleAtMs === null ? [] : Array.from({ length: dips }, (_, n) => dipMiddle(kettleAtMs, n, given))
  const last = middles[middles.length - 1]
  const roomPx = roomFor(shown, given)
  const rows = rowsOf(load.lines, roomPx, given)
  const textPx = Math.max(0, ...rows.map((text) => textWidthPx(text, given.fontPx)))
  return [
    {
      key,
      load,
      touchPx: Math.max(4, right - left, textPx + given.fontPx / 2),
      x: left,
      y: lane.top,
      width: Math.max(4, right - left),
      height: lane.height,
      flipX: load.flipAtMs === null ? null : x(load.flipAtMs),
      readyX,
      rows,
      dips: middles,
      way:
        last === undefined ? null : wayOf([last, kettle.top + kettle.height / 2], [left, lane.top + lane.height / 2]),
    },
  ]
}

function dipMiddle(kettleAtMs: number, n: number, given: PictureGiven): number {
  return xOf(given)(kettleAtMs + (n + 0.5) * given.cycleMs)
}

/** As the line is drawn at the bench: out of the kettle sideways, into the shelf sideways. */
function wayOf([fromX, fromY]: readonly [number, number], [toX, toY]: readonly [number, number]): string {
  const bend = Math.max(8, (toX - fromX) / 2)
  return `M${fromX} ${fromY}C${fromX + bend} ${fromY} ${toX - bend} ${toY} ${toX} ${toY}`
}

/** Its text may run on until the shelf's next load begins. */
function roomFor({ load }: ShownLoad, given: PictureGiven): number {
  const after = given.loads
    .filter((other) => other.load !== load && other.load.shelfId === load.shelfId && other.load.inAtMs > load.inAtMs)
    .map((other) => other.load.inAtMs)
  const x = xOf(given)
  return x(Math.min(given.toMs, ...after)) - x(load.inAtMs) - given.fontPx * 0.9
}

/** Pieces first, so that a name that is cut short leaves the number. */
function rowsOf(lines: readonly Line[], roomPx: number, { fontPx, nameOf }: PictureGiven): readonly string[] {
  const texts = lines.map(({ varietyId, pieces }) => `${pieces} ${nameOf(varietyId)}`)
  const shown = texts.length <= ROWS ? texts : [...texts.slice(0, ROWS - 1), `+${texts.length - ROWS + 1}`]
  return shown.map((text) => clipped(text, roomPx, fontPx))
}

/** @example clipped('36 Everything', 60, 12) // '36 Eve…' */
export function clipped(text: string, roomPx: number, fontPx: number): string {
  if (textWidthPx(text, fontPx) <= roomPx) return text
  let end = text.length - 1
  while (end > 0 && textWidthPx(`${text.slice(0, end)}…`, fontPx) > roomPx) end -= 1
  const least = text.indexOf(' ')
  return end <= least + 1 ? text.slice(0, Math.max(0, least)) : `${text.slice(0, end)}…`
}

export interface Step {
  readonly atMs: number
  readonly inUse: number
}

/** Boards in use after each change: a load's are taken at the end of its first dip and free at its flip. */
export function boardsInUse(given: Pick<PictureGiven, 'loads' | 'cycleMs' | 'boards' | 'isOnBoards'>): readonly Step[] {
  const { loads, cycleMs, boards, isOnBoards } = given
  const changes = loads.flatMap(({ load }) => {
    const boarded = load.lines.filter(({ varietyId }) => isOnBoards(varietyId))
    const taken = boarded.reduce((sum, { pieces }) => sum + Math.ceil(pieces / boards.pieces), 0)
    if (taken === 0 || load.flipAtMs === null) return []
    const fromMs = load.kettleAtMs === null ? load.inAtMs : load.kettleAtMs + cycleMs
    return [
      { atMs: fromMs, by: taken },
      { atMs: load.flipAtMs, by: -taken },
    ]
  })
  // What is freed at an instant can be used in it.
  changes.sort((one, other) => one.atMs - other.atMs || one.by - other.by)
  let inUse = 0
  return changes.map(({ atMs, by }) => {
    inUse += by
    return { atMs, inUse }
  })
}

function boardsArea(given: PictureGiven, lane: Lane) {
  const steps = boardsInUse(given)
  const most = steps.reduce((so, { inUse }) => Math.max(so, inUse), 0)
  const floor = lane.top + lane.height
  const high = Math.max(most, given.boards.count, 1)
  const y = (inUse: number) => Math.round((floor - (inUse / high) * (lane.height - 2)) * 2) / 2
  const x = xOf(given)
  let path = `M${x(given.fromMs)} ${floor}`
  for (const { atMs, inUse } of steps) path += `H${x(atMs)}V${y(inUse)}`
  return { area: `${path}V${floor}Z`, limitY: y(given.boards.count), most }
}
