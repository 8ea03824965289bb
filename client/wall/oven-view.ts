import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { fitList } from '../parts/fit.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { RingState } from '../parts/ring.tsx'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { Box } from './layout.ts'
import { headingHeight, rowGap, rowHeight } from './layout.ts'
import { widthOf } from './text-lines.ts'

/** The oven as the wall paints it: as many shelves as there is room for, those that need somebody first. */
export interface OvenView {
  readonly rows: readonly ShelfRow[]
  readonly columns: number
  readonly rowPx: number
  readonly gapPx: number
  readonly ringPx: number
  /** `wide`: act and time in one line; `tall`: the time below the act. */
  readonly form: 'wide' | 'tall'
  /** Shelves that there is no room for, in words; "" when all are shown. */
  readonly others: string
  /** The acts on show, by the keys of the core's acts; loads that nobody calls for have none. */
  readonly onShow: readonly string[]
}

export interface ShelfRow {
  readonly key: string
  readonly state: 'plain' | 'act' | 'late'
  readonly what: string
  readonly when: string
  /** "" where there is no room for it, or nothing to say. */
  readonly contents: string
  readonly ring: { readonly fraction: number; readonly state: RingState }
}

export interface OvenInput {
  readonly keys: readonly ShelfKey[]
  readonly nowMs: EpochMs
  readonly words: Words
  readonly wall: WallWords
  readonly box: Box
  readonly sizes: TextSizes
}

/** What is due within so long turns paper-white: time to dry the hands and get there. */
export const SOON_MS = 60_000

export function ovenView(input: OvenInput): OvenView {
  const { keys, sizes } = input
  const rows = keys.map((key) => shelfRow(key, input))
  // A hearth's loads lie on one floor and are told apart by what is in them only.
  const needContents = new Set(keys.map((key) => key.shelfId)).size < keys.length
  const ways = waysToSet(rows, input, needContents)
  const way = ways.find(({ room }) => room >= rows.length) ?? mostRoom(ways)
  const shown = soonest(keys, Math.max(1, way.room))
  const contentsPx = way.columnPx - way.ringPx - sizes.actPx * 1.1
  const rowsShown = shown.map((index) => rows[index]).filter((row) => row !== undefined)
  return {
    rows: rowsShown.map(({ key, state, what, when, ring, lines }) => {
      const contents = way.hasContents
        ? fitList(lines, { roomPx: contentsPx, fontPx: sizes.minPx }, input.wall.more)
        : ''
      return { key, state, what, when, ring, contents }
    }),
    columns: way.columns,
    rowPx: way.rowPx,
    gapPx: rowGap(sizes.minPx),
    ringPx: way.ringPx,
    form: way.form,
    others: othersText(keys, shown, input),
    onShow: shown.flatMap((index) => actKeyOf(keys[index])),
  }
}

type RowWithLines = Omit<ShelfRow, 'contents'> & { readonly lines: readonly string[] }

function shelfRow(key: ShelfKey, { nowMs, words, wall }: OvenInput): RowWithLines {
  const { act, atMs, startedAtMs, status, shelfId, shelfName, loadId, plannedId } = key
  const id = loadId ?? `${shelfId} ${plannedId ?? 'free'}`
  const contents = key.lines.map(({ varietyId, pieces }) => `${words.names.variety(varietyId)} ${pieces}`)
  if (act === 'load' && (atMs === null || status === 'coming')) {
    const isFree = atMs === null && contents.length > 0
    const lines = isFree ? [wall.nextOn(contents[0] ?? ''), ...contents.slice(1)] : contents
    const when = atMs === null ? '' : words.times.when({ atMs, status }, nowMs)
    const what = atMs === null ? wall.shelfFree(shelfName) : words.acts.name({ act, shelfId })
    return {
      key: id,
      state: isSoon(key, nowMs) ? 'act' : 'plain',
      what,
      when,
      ring: { fraction: 0, state: 'idle' },
      lines,
    }
  }
  const topped = key.toppingAfterFlip.map((varietyId) => words.names.variety(varietyId))
  const lines = act === 'flip' && topped.length > 0 ? [...contents, wall.topAfter(words.line.list(topped))] : contents
  const when = atMs === null ? '' : words.times.when({ atMs, status }, nowMs)
  const state = status === 'late' ? 'late' : isSoon(key, nowMs) ? 'act' : 'plain'
  const left = atMs === null || startedAtMs === null ? 0 : (atMs - nowMs) / Math.max(1, atMs - startedAtMs)
  const ringState: RingState = state === 'plain' ? (atMs === null ? 'idle' : 'running') : state
  const ring = { fraction: Math.max(0, left), state: ringState }
  const what = words.acts.name({ act, shelfId })
  return { key: id, state, what: status === 'late' ? `${what},` : what, when, ring, lines }
}

function isSoon({ atMs, latestAtMs, status }: ShelfKey, nowMs: EpochMs): boolean {
  if (atMs === null) return false
  return status === 'due' || (latestAtMs !== null && nowMs > latestAtMs) || atMs - nowMs <= SOON_MS
}

interface Way {
  readonly form: 'wide' | 'tall'
  readonly columns: number
  readonly columnPx: number
  readonly rowPx: number
  readonly ringPx: number
  readonly hasContents: boolean
  readonly room: number
}

/** From the richest to the tightest: with contents; without; two and three columns with the time under the act. */
function waysToSet(rows: readonly RowWithLines[], { box, sizes }: OvenInput, needContents: boolean): readonly Way[] {
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
  const single = Math.round(actPx * 1.5)
  const double = Math.round(actPx * 2.3)
  const rich = way('wide', 1, rowHeight(sizes), true)
  const bare = way('tall', 1, double, false)
  if (needContents) return [rich, way('tall', 1, double + Math.round(minPx * 1.2), true), bare]
  return [
    rich,
    way('wide', 1, single, false),
    way('wide', 2, single, false),
    way('tall', 2, double, false),
    way('tall', 3, double, false),
    bare,
  ]
}

function rowWidth({ what, when, state }: RowWithLines, form: Way['form'], actPx: number): number {
  const whatPx = widthOf(what, actPx, 'strong')
  const whenPx = widthOf(when === '' ? '' : ` ${when}`, actPx)
  const stripes = state === 'late' ? actPx * 0.9 : 0
  return stripes + (form === 'wide' ? whatPx + whenPx : Math.max(whatPx, whenPx))
}

function mostRoom(ways: readonly Way[]): Way {
  return ways.reduce((most, way) => (way.room > most.room ? way : most))
}

/** The places of the keys that need somebody first, in the oven's own order: a shelf keeps its place as long as it can. */
function soonest(keys: readonly ShelfKey[], count: number): readonly number[] {
  const urgency = (key: ShelfKey) => (key.atMs === null ? Number.MAX_SAFE_INTEGER : key.atMs)
  return keys
    .map((key, index) => ({ index, at: urgency(key) }))
    .sort((one, other) => one.at - other.at || one.index - other.index)
    .slice(0, count)
    .map(({ index }) => index)
    .sort((one, other) => one - other)
}

function othersText(keys: readonly ShelfKey[], shown: readonly number[], { words, wall, nowMs }: OvenInput) {
  const hidden = keys.filter((_, index) => !shown.includes(index))
  if (hidden.length === 0) return ''
  const times = hidden.flatMap(({ atMs }) => atMs ?? [])
  const first = times.reduce<EpochMs | null>((least, atMs) => (least === null || atMs < least ? atMs : least), null)
  const when = first === null ? '' : words.times.when({ atMs: first, status: first > nowMs ? 'coming' : 'due' }, nowMs)
  return wall.otherShelves(hidden.length, when)
}

/** The act that the core calls by this key; see `nextActs`. */
function actKeyOf(key: ShelfKey | undefined): readonly string[] {
  if (key === undefined) return []
  if (key.act !== 'load') return key.loadId === null ? [] : [`${key.act}:${key.loadId}`]
  return key.plannedId === null || key.atMs === null ? [] : [`load:${key.plannedId}`]
}
