import type { QuietStage, Standing } from '../../shared-core/line/quiet.ts'
import type { TextSizes } from '../parts/legibility.ts'
import type { StandingWords, WallWords } from '../words/wall.ts'
import type { Box } from './layout.ts'
import { headingHeight } from './layout.ts'
import { shortened, widthOf } from './text-lines.ts'

/** What proofs, is chilled, stands on the rack and cools: the wall while the line is quiet. */
export interface StandingView {
  /** One column or two, in the order of the line. */
  readonly columns: readonly (readonly StandingBlock[])[]
  readonly columnPx: number
  readonly namePx: number
  readonly itemPx: number
}

export interface StandingBlock {
  readonly stage: QuietStage
  readonly title: string
  readonly items: readonly StandingItem[]
  /** "3 more"; "" when all are shown. */
  readonly rest: string
}

export interface StandingItem {
  readonly key: string
  readonly name: string
  readonly count: string
  readonly detail: string
  readonly isTrouble: boolean
  /** Drawn one by one, as far as there is room; null where nothing stands on trays. */
  readonly trays: { readonly all: number; readonly ready: number; readonly roomPx: number } | null
}

export interface StandingInput {
  readonly standing: readonly Standing[]
  readonly wall: WallWords
  readonly box: Box
  readonly sizes: TextSizes
}

const STAGES: readonly QuietStage[] = ['proof', 'chill', 'rack', 'cool']
const LINE = 1.22
/** Between two blocks of a column, and between parts of a line, in parts of the small size. */
const BLOCK_GAP = 0.4
const PART_GAP = 0.6

/** All of it in the largest text in which it fits; at the smallest, as many doughs of each stage as fit. */
export function standingView(input: StandingInput): StandingView {
  const { standing, box, sizes } = input
  const groups = STAGES.map((stage) => ({ stage, all: standing.filter((one) => one.stage === stage).sort(byUrgency) }))
  const stages = groups.filter(({ all }) => all.length > 0)
  const columnPx = stages.length < 2 ? box.width : Math.floor((box.width - sizes.minPx * 1.5) / 2)
  for (const namePx of [sizes.actPx, sizes.labelPx, sizes.minPx]) {
    for (let most = MOST; most > 0; most--) {
      const isLast = namePx === sizes.minPx
      if (!isLast && most < MOST) break
      const split = splitColumns(
        stages.map(({ all }) => linesOf(all.length, most)),
        { namePx, minPx: sizes.minPx },
      )
      if (split.heightPx > box.height && !(isLast && most === 1)) continue
      const room = { columnPx, namePx, minPx: sizes.minPx }
      if (!isLast && standing.some((one) => !fitsOneLine(one, input.wall.standing, room))) break
      const blocks = stages.map(({ stage, all }) => blockOf(stage, all, most, input.wall, room))
      const columns = [blocks.slice(0, split.first), blocks.slice(split.first)].filter((column) => column.length > 0)
      return { columns, columnPx, namePx, itemPx: Math.round(namePx * LINE) }
    }
  }
  return { columns: [], columnPx, namePx: sizes.minPx, itemPx: Math.round(sizes.minPx * LINE) }
}

/** Doughs of one stage; a shop has at most sixteen. */
const MOST = 16

/** Lines that a stage takes: when not all are shown, the last one tells how many more there are. */
function linesOf(count: number, most: number): number {
  return Math.min(count, most)
}

/** Divides blocks of lines into two columns, in order, as even as can be. */
function splitColumns(lines: readonly number[], { namePx, minPx }: { namePx: number; minPx: number }) {
  const heightOf = (some: readonly number[]) =>
    some.reduce((sum, one) => sum + headingHeight(minPx) + one * Math.round(namePx * LINE) + BLOCK_GAP * minPx, 0)
  let best = { first: lines.length, heightPx: heightOf(lines) }
  for (let first = 1; first < lines.length; first++) {
    const heightPx = Math.max(heightOf(lines.slice(0, first)), heightOf(lines.slice(first)))
    if (heightPx < best.heightPx) best = { first, heightPx }
  }
  return best
}

interface ItemRoom {
  readonly columnPx: number
  readonly namePx: number
  readonly minPx: number
}

function blockOf(
  stage: QuietStage,
  all: readonly Standing[],
  most: number,
  wall: WallWords,
  room: ItemRoom,
): StandingBlock {
  const shown = all.length > most ? all.slice(0, most - 1) : all
  const items = shown.map((one) => itemOf(one, wall.standing, room))
  const hidden = all.length - shown.length
  return { stage, title: wall.standing.titles[stage], items, rest: hidden === 0 ? '' : wall.more(hidden) }
}

function fitsOneLine(one: Standing, words: StandingWords, { columnPx, namePx, minPx }: ItemRoom): boolean {
  const [shortest = ''] = detailsOf(one, words).slice(-1)
  const needed =
    widthOf(`${one.doughName} ${one.pieces}`, namePx, 'strong') + widthOf(shortest, minPx) + PART_GAP * minPx
  return needed <= columnPx
}

function itemOf(one: Standing, words: StandingWords, { columnPx, namePx, minPx }: ItemRoom): StandingItem {
  const count = String(one.pieces)
  const name = shortened(one.doughName, {
    roomPx: columnPx - widthOf(` ${count}`, namePx, 'strong'),
    fontPx: namePx,
    weight: 'strong',
  })
  const leftPx = columnPx - widthOf(`${name} ${count}`, namePx, 'strong') - PART_GAP * minPx
  const detail = detailsOf(one, words).find((text) => widthOf(text, minPx) <= leftPx) ?? ''
  const roomPx = Math.floor(leftPx - widthOf(detail, minPx) - 2 * PART_GAP * minPx)
  const ready = Math.floor((one.readyPieces / one.pieces) * (one.trays ?? 0))
  const trays = one.trays === null || roomPx < minPx * 2 ? null : { all: one.trays, ready, roomPx }
  return { key: `${one.stage} ${one.doughId}`, name, count, detail, isTrouble: one.status === 'over', trays }
}

/** The richest first; what is too wide for its place gives way to the next. */
function detailsOf({ stage, status, pieces, readyPieces, opensAtMs, closesAtMs }: Standing, words: StandingWords) {
  if (status === 'over' && closesAtMs !== null) return [words.over(closesAtMs)]
  if (status === 'waiting') return opensAtMs === null ? [] : [words.readyAt(opensAtMs)]
  const state = readyPieces < pieces ? words.readyPart(readyPieces) : words.ready
  if (closesAtMs === null || stage === 'chill') return [state]
  return [`${state}, ${words.goodTo(closesAtMs)}`, words.goodTo(closesAtMs), state]
}

/** Over first, then ready, then waiting: what somebody could act on. */
function byUrgency(one: Standing, other: Standing): number {
  const rank = { over: 0, ready: 1, waiting: 2 }
  return rank[one.status] - rank[other.status]
}
