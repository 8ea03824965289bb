import type { EpochMs } from '../../shared-core/units.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { RingState } from '../parts/ring.tsx'
import type { WallWords } from '../words/wall.ts'
import type { Box } from './layout.ts'
import { headingHeight, rowGap, rowHeight } from './layout.ts'
import type { RowText } from './oven-row.ts'
import { contentsText } from './oven-row.ts'
import { fits, widthOf } from './text-lines.ts'

/** Rows with a ring, an act and its time, as the wall paints them: as many as there is room for below a heading. */
export interface SetRows {
  readonly rows: readonly ShelfRow[]
  readonly columns: number
  readonly rowPx: number
  readonly gapPx: number
}

export interface ShelfRow {
  readonly key: string
  readonly state: 'plain' | 'act' | 'late'
  readonly what: string
  readonly when: string
  /** "" where there is no room for it, or nothing to say. */
  readonly contents: string
  readonly ring: { readonly fraction: number; readonly state: RingState }
  readonly ringPx: number
  /** `wide`: act and time in one line; `tall`: the time below the act; `beside`: all in one line. */
  readonly form: 'wide' | 'tall' | 'beside'
}

export interface RowsRoom {
  readonly box: Box
  readonly sizes: TextSizes
  readonly wall: Pick<WallWords, 'more'>
}

/**
 * Sets rows into their place, the soonest where not all fit, each in its own place as long as it can.
 * @param atMs when each is due; null: last of all @param needContents what is in a row tells it from the others
 * @returns what is shown, and the places of the rows that are
 */
export function rowsThatFit(
  texts: readonly RowText[],
  atMs: readonly (EpochMs | null)[],
  of: RowsRoom,
  needContents = false,
): SetRows & { readonly shown: readonly number[] } {
  const ways = waysToSet(texts, of, needContents)
  const way = ways.find(({ room }) => room >= texts.length) ?? mostRoom(ways)
  const shown = soonest(atMs, Math.max(1, way.room))
  return {
    rows: shown.flatMap((index) => texts[index] ?? []).map((text) => setRow(text, way, of)),
    columns: way.columns,
    rowPx: way.rowPx,
    gapPx: rowGap(of.sizes.minPx),
    shown,
  }
}

interface Way {
  readonly form: ShelfRow['form']
  readonly columns: number
  readonly columnPx: number
  readonly rowPx: number
  readonly ringPx: number
  readonly hasContents: boolean
  readonly room: number
}

/**
 * What is in it stands below the act or beside it. Where two lines are all there is, a row that calls for somebody says
 * act and time in one line, with a smaller ring, so that it can say what is in it; the others wait with their time.
 */
function setRow(text: RowText, way: Way, { sizes, wall }: RowsRoom): ShelfRow {
  const { key, state, what, when, ring } = text
  const { minPx, actPx } = sizes
  const row = { key, state, what, when, ring, ringPx: way.ringPx, form: way.form, contents: '' }
  const textPx = (ringPx: number) =>
    way.columnPx - ringPx - actPx * TEXT_GAPS - (state === 'late' ? actPx * STRIPES : 0)
  if (way.hasContents) {
    const besidePx =
      way.form === 'beside' ? rowWidth({ ...text, state: 'plain' }, 'wide', actPx) + minPx * BESIDE_GAP : 0
    const line = { roomPx: textPx(way.ringPx) - besidePx, fontPx: minPx }
    const contents = contentsText(text, line, wall.more)
    return { ...row, contents: way.form === 'beside' && !fits(contents, line) ? '' : contents }
  }
  const isCalling = (state !== 'plain' || text.note !== '') && (text.lines.length > 0 || text.note !== '')
  const ringPx = Math.min(way.ringPx, Math.round(actPx * SMALL_RING))
  const time = [text.when, text.whenShort].find(
    (one) => rowWidth({ ...text, when: one, state: 'plain' }, 'wide', actPx) <= textPx(ringPx),
  )
  const line = { roomPx: textPx(ringPx), fontPx: minPx }
  const contents = contentsText(text, line, wall.more)
  if (!isCalling || time === undefined || way.form !== 'tall') return row
  return { ...row, when: time, ringPx, form: 'wide', contents: fits(contents, line) ? contents : '' }
}

/** In sizes of acts: space left and right of a row's words, its stripe when it is late, the ring of a row that calls. */
export const TEXT_GAPS = 0.72
const STRIPES = 0.9
const SMALL_RING = 1.15
/** Between the time and what is in it, in sizes of small text. */
const BESIDE_GAP = 0.8

/** From the richest to the tightest: with contents below; beside; two and three columns with the time under the act. */
function waysToSet(rows: readonly RowText[], { box, sizes }: RowsRoom, needContents: boolean): readonly Way[] {
  const { minPx, actPx } = sizes
  const gap = rowGap(minPx)
  const heightPx = box.height - headingHeight(minPx)
  const way = (form: Way['form'], columns: number, rowPx: number, hasContents: boolean): Way => {
    const columnPx = Math.floor((box.width - (columns - 1) * gap) / columns)
    const ringPx = Math.round(Math.min(rowPx - actPx * 0.24, actPx * 1.9, columnPx * 0.24))
    const textPx = columnPx - ringPx - actPx * 0.9
    const isWideEnough = rows.every((row) => rowWidth(row, form, actPx) <= textPx)
    const room = isWideEnough ? columns * Math.floor((heightPx + gap) / (rowPx + gap)) : 0
    return { form, columns, columnPx, rowPx, ringPx, hasContents, room }
  }
  const single = Math.round(actPx * 1.36)
  const double = Math.round(actPx * 2.3)
  const rich = way('wide', 1, rowHeight(sizes), true)
  const bare = way('tall', 1, double, false)
  if (needContents) return [rich, way('tall', 1, double + Math.round(minPx * 1.2), true), bare]
  return [rich, way('beside', 1, single, true), way('tall', 2, double, false), way('tall', 3, double, false), bare]
}

export function rowWidth({ what, when, state }: RowText, form: Way['form'], actPx: number): number {
  const whatPx = widthOf(what, actPx, 'strong')
  const whenPx = widthOf(when === '' ? '' : ` ${when}`, actPx)
  const stripes = state === 'late' ? actPx * STRIPES : 0
  return stripes + (form !== 'tall' ? whatPx + whenPx : Math.max(whatPx, whenPx))
}

function mostRoom(ways: readonly Way[]): Way {
  return ways.reduce((most, way) => (way.room > most.room ? way : most))
}

/** The places of those that need somebody first, in their own order. */
function soonest(atMs: readonly (EpochMs | null)[], count: number): readonly number[] {
  return atMs
    .map((at, index) => ({ index, at: at ?? Number.MAX_SAFE_INTEGER }))
    .sort((one, other) => one.at - other.at || one.index - other.index)
    .slice(0, count)
    .map(({ index }) => index)
    .sort((one, other) => one - other)
}
