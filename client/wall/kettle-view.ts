import type { Line } from '../../shared-core/day/state.ts'
import type { DoughId, VarietyId } from '../../shared-core/ids.ts'
import { dueStatus } from '../../shared-core/line/act-due.ts'
import type { InKettle, KettleNow } from '../../shared-core/line/kettle.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import type { Standing } from '../../shared-core/line/quiet.ts'
import type { DurationMs, EpochMs } from '../../shared-core/units.ts'
import { later } from '../../shared-core/units.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { RingState } from '../parts/ring.tsx'
import { stuffOf } from '../words/names.ts'
import type { WallWords } from '../words/wall.ts'
import type { Words } from '../words/words.ts'
import type { BarText } from './bar-view.ts'
import type { BelowLine } from './below-lines.ts'
import { belowLines } from './below-lines.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { nameLines, widthOf, wrapText } from './text-lines.ts'
import { whenText } from './when-text.ts'

/** The kettle as the wall paints it: every text is set, every length is in CSS pixels. */
export interface KettleView {
  readonly ring: RingView
  /** `act`: it is to be lifted within seconds or now; `late`: later than that. The whole kettle is turned inside out. */
  readonly state: 'plain' | 'act' | 'late'
  /** Small, above what goes in next; "" while something boils. */
  readonly lead: string
  /** The act when it is due or nearly so, in one line or with its time below; empty before. */
  readonly calls: readonly BarText[]
  readonly title: TitleView
  /** When it goes in; "" while something boils. */
  readonly when: string
  /** What its pieces become. */
  readonly becomes: readonly string[]
  /** Below, across the whole width: what else is next, and what the rack says. */
  readonly below: readonly BelowLine[]
}

export interface RingView {
  readonly fraction: number
  readonly state: RingState
  readonly label: string | null
  readonly px: number
}

/** "Plain 36" in one line; a long name stands above its count. */
export interface TitleView {
  readonly nameLines: readonly string[]
  readonly count: string
  readonly isOneLine: boolean
}

export interface KettleInput {
  readonly now: KettleNow
  readonly rack: readonly Standing[]
  readonly nowMs: EpochMs
  readonly cycleMs: DurationMs
  /** When the water boils again after cold water went in, and how long that takes; left out or null: it boils. */
  readonly recovery?: { readonly atMs: EpochMs | null; readonly wholeMs: DurationMs } | undefined
  /** Why the next dip's load is called for, from all of it to the shortest; left out: nothing is known. */
  readonly reason?: readonly string[] | undefined
  readonly words: Words
  readonly wall: WallWords
  readonly box: Box
  readonly sizes: TextSizes
}

/** Height of a line of text in parts of its size, and the most of the width that the ring takes. */
const LINE = 1.2
const RING_SHARE = 0.44
/** The kettle turns paper-white so long before its lift: a boil takes a minute, so a shelf's lead would be all of it. */
const SOON_MS = 10_000

export function kettleView(input: KettleInput): KettleView {
  const { now, nowMs, words, wall, box, sizes } = input
  const below = belowLines(input)
  // Room is kept for what the pieces become, which moves below the ring when it does not fit beside it.
  const belowPx = (Math.max(below.length, BELOW_MAX) * LINE + 0.4) * sizes.minPx
  const ringPx = Math.floor(Math.min(box.height - headingHeight(sizes.minPx) - belowPx, box.width * RING_SHARE))
  const sparePx = Math.floor((BELOW_MAX - below.length) * LINE * sizes.minPx)
  const room = { widthPx: box.width - ringPx - Math.round(sizes.minPx * 0.7), heightPx: ringPx + sparePx }
  const [boiling] = now.in
  if (boiling !== undefined) {
    const lift = liftOf(boiling, input)
    const beside = { ...room, widthPx: room.widthPx - (lift.status === 'late' ? STRIPE * sizes.actPx : 0) }
    const calls = callLines(lift, input, beside.widthPx)
    const ring = { ...boilingRing(boiling, input), px: ringPx }
    const stuff = stuffText(boiling, input, beside, calls.length * CALL_LINES)
    const lines = withBecomes(below, boiling, stuff, input)
    return { ring, state: liftState(lift, nowMs), lead: '', calls, ...stuff, when: '', below: lines }
  }
  const idle = { ring: { ...recoveringRing(input), px: ringPx }, state: 'plain', calls: [] } as const
  if (now.next === null) {
    const lines = wrapText(wall.noDips, { roomPx: room.widthPx, fontPx: sizes.labelPx })
    return { ...idle, lead: '', title: { nameLines: lines, count: '', isOneLine: false }, when: '', becomes: [], below }
  }
  const stuff = stuffText(now.next, input, room, 1 + CALL_LINES)
  const when = whenText(now.next.atMs, nowMs, words)
  return { ...idle, lead: wall.next, ...stuff, when, below: withBecomes(below, now.next, stuff, input) }
}

/** A line at the size of acts takes the room of so many small ones. */
const CALL_LINES = 1.4
/** Right of a late kettle stands a stripe, as right of a late shelf. In parts of the size of acts. */
const STRIPE = 0.85

type Lift = ReturnType<typeof liftOf>

function liftState({ status, atMs }: Lift, nowMs: EpochMs): KettleView['state'] {
  if (status === 'late') return 'late'
  return status === 'due' || atMs - nowMs <= SOON_MS ? 'act' : 'plain'
}

/** The act when it is due or nearly so: in one line, else its time below, else alone; the ring says the time too. */
function callLines(lift: Lift, { nowMs, words, sizes }: KettleInput, roomPx: number): readonly BarText[] {
  if (liftState(lift, nowMs) === 'plain') return []
  const strong = lift.status === 'late' ? `${words.acts.name(lift)},` : words.acts.name(lift)
  const rest = words.times.when(lift, nowMs)
  const restPx = widthOf(rest, sizes.actPx)
  if (widthOf(`${strong} `, sizes.actPx, 'strong') + restPx <= roomPx) return [{ strong, rest }]
  const alone = { strong: words.acts.name(lift), rest: '' }
  return restPx <= roomPx ? [alone, { strong: '', rest }] : [alone]
}

/** What the pieces become, in place of the lines below where there was no room for it beside the ring. */
function withBecomes(
  below: readonly BelowLine[],
  { becomes }: Stuff,
  beside: { readonly becomes: readonly string[] },
  input: KettleInput,
): readonly BelowLine[] {
  if (beside.becomes.length > 0) return below
  const lines = becomesLines(becomes, input, { widthPx: input.box.width, lines: BELOW_MAX })
  const told = lines.map((text) => ({ lead: '', strong: '', rest: text, isTrouble: false }))
  return [...told, ...below].slice(0, BELOW_MAX)
}

const BELOW_MAX = 2

function liftOf(boiling: InKettle, { nowMs, cycleMs }: KettleInput) {
  const atMs = boiling.until?.targetAtMs ?? later(boiling.sinceMs, cycleMs)
  return { act: 'lift', atMs, status: dueStatus(atMs, boiling.until?.latestAtMs ?? null, nowMs) } as const
}

/** Counts down to the water boiling again; idle while it boils. */
function recoveringRing({ recovery, nowMs, words }: KettleInput): Omit<RingView, 'px'> {
  const atMs = recovery?.atMs ?? null
  if (recovery === undefined || atMs === null) return { fraction: 0, state: 'idle', label: null }
  const leftMs = atMs - nowMs
  return { fraction: leftMs / Math.max(1, recovery.wholeMs), state: 'running', label: words.times.left(leftMs) }
}

function boilingRing(boiling: InKettle, input: KettleInput): Omit<RingView, 'px'> {
  const { nowMs, words } = input
  const { atMs, status } = liftOf(boiling, input)
  if (status === 'late') return { fraction: 0, state: 'late', label: words.times.span(nowMs - atMs) }
  if (status === 'due') return { fraction: 0, state: 'act', label: words.times.when({ atMs, status }, nowMs) }
  const fraction = (atMs - nowMs) / Math.max(1, atMs - boiling.sinceMs)
  const state = atMs - nowMs <= SOON_MS ? 'act' : 'running'
  return { fraction, state, label: words.times.left(atMs - nowMs) }
}

export interface Stuff {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly becomes: readonly Line[]
}

interface Room {
  readonly widthPx: number
  readonly heightPx: number
}

/** Name, count and what the pieces become, as far as they fit beside the ring. */
function stuffText(stuff: Stuff, input: KettleInput, room: Room, linesTaken: number) {
  const { words, sizes } = input
  const title = titleOf(stuff, words, sizes, room.widthPx)
  const namePx = title.isOneLine ? 0 : title.nameLines.length * sizes.labelPx
  const left = room.heightPx - (namePx + sizes.actPx) * LINE
  const lines = Math.floor(left / (sizes.minPx * LINE)) - linesTaken
  return { title, becomes: becomesLines(stuff.becomes, input, { widthPx: room.widthPx, lines }) }
}

export function titleOf(stuff: Omit<Stuff, 'becomes'>, words: Words, sizes: TextSizes, widthPx: number): TitleView {
  const name = stuffOf(stuff, words.names)
  const count = String(stuff.pieces)
  const isOneLine = widthOf(`${name} ${count}`, sizes.actPx, 'strong') <= widthPx
  const room = { roomPx: widthPx, fontPx: sizes.labelPx, weight: 'strong' } as const
  return { nameLines: isOneLine ? [name] : nameLines(name, room, 2), count, isOneLine }
}

/** "becomes 24 Sesame / and 12 Poppy"; what has no room becomes "2 more". */
function becomesLines(
  becomes: readonly Line[],
  { words, wall, sizes }: KettleInput,
  { widthPx, lines }: { readonly widthPx: number; readonly lines: number },
): readonly string[] {
  const all = becomes.map((line) => wall.become(line))
  const pieces = piecesOf(becomes)
  for (let shown = all.length; shown > 0; shown--) {
    const items = shown === all.length ? all : [...all.slice(0, shown), wall.more(all.length - shown)]
    const text = wall.becomes(pieces, words.line.list(items))
    const set = wrapText(text, { roomPx: widthPx, fontPx: sizes.minPx })
    if (set.length <= lines) return set
  }
  return []
}
