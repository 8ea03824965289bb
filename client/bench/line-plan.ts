import { textWidthPx } from '../parts/text-width.ts'
import type { BenchSizes } from './glass.ts'
import type { BenchLayout } from './layout.ts'
import type { BoardsView, LineView, StandingView } from './line-view.ts'

/**
 * How the line's stations share their room left of the oven. Beside one column of shelves rack and kettle stand side by
 * side, as in the room; beside more they stand below each other. Keys come first; what stands on the rack is shown as
 * far as there is room, the nearest to the kettle first.
 */
export interface LinePlan {
  /** Rack and kettle stand side by side; else all is below each other. */
  readonly isSideBySide: boolean
  /** Pull and board share a row, without a "differs" of their own. */
  readonly isPaired: boolean
  /** Of each station: room for its words and keys. */
  readonly columnPx: number
  /** A station's key beside its "differs". */
  readonly stationKeyPx: number
  readonly stationHeightPx: number
  /** The kettle's own key, which has none beside it. */
  readonly kettleKeyPx: number
  readonly kettleHeightPx: number
  readonly kettleRingPx: number
  /** Doughs that the rack has room for. */
  readonly standingShown: number
  readonly boards: BoardsPlan
}

export interface BoardsPlan {
  readonly perRow: number
  readonly boardPx: number
  /** Of the words for them, those that fit in a row; too many out is said before all else. */
  readonly hasTitle: boolean
  readonly hasDetail: boolean
  /** Null where there are more boards than can be drawn; their number is always said. */
  readonly stripPx: number | null
}

type PlanSizes = Pick<BenchSizes, 'minPx' | 'labelPx'>

/** Line height of text and headings, and space around them, in font sizes: `bench.css` has the same. */
export const TEXT_EM = 1.2
export const HEADING_EM = 1.35

export function linePlan(line: LineView, layout: BenchLayout, sizes: PlanSizes): LinePlan {
  const side = layout.form === 'wide' ? sideBySide(line, layout, sizes) : null
  return side ?? belowEachOther(line, layout, sizes)
}

/** The middle of the kettle from the top of the line, where the way to the oven begins; of a narrow line, its middle. */
export function kettleMiddlePx(
  { isSideBySide, kettleHeightPx, kettleRingPx }: LinePlan,
  { lineHeightPx }: BenchLayout,
  { minPx, kettleIsKey }: Pick<BenchSizes, 'minPx'> & { readonly kettleIsKey: boolean },
): number {
  if (!isSideBySide) return lineHeightPx / 2
  return minPx * HEADING_EM + (kettleIsKey ? kettleHeightPx : kettleRingPx) / 2
}

const KETTLE_RING_KEYS = { most: 1.35, least: 0.75 } as const
/** Under the kettle's ring: the act and what is in it. */
const KETTLE_TEXT_ROWS = 3
const STATION_HEIGHT_KEYS = [1.28, 1] as const
/** The strip of boards has a little space above and below, in font sizes. */
const STRIP_SPACE_EM = 0.3

/** Rack and cooler left, kettle and boards right; null where the kettle would not have room to be seen. */
function sideBySide(line: LineView, layout: BenchLayout, sizes: PlanSizes): LinePlan | null {
  const { gapPx, keyPx, lineHeightPx } = layout
  const columnPx = Math.floor((layout.lineWidthPx - gapPx) / 2)
  const headingPx = sizes.minPx * HEADING_EM
  const rowsPx = KETTLE_TEXT_ROWS * sizes.minPx * TEXT_EM
  const drawn = boardsPlan(line.boards, columnPx, sizes)
  for (const boards of [drawn, { ...drawn, stripPx: null }]) {
    for (const keys of STATION_HEIGHT_KEYS) {
      const stationHeightPx = Math.round(keyPx * keys)
      const boardsPx =
        boardsHeight(boards, sizes) + headingPx + (line.boardKey === null ? 0 : stationHeightPx + gapPx / 2)
      const kettleHeightPx = Math.floor(lineHeightPx - headingPx - boardsPx - gapPx)
      const ringPx = Math.floor(Math.min(keyPx * KETTLE_RING_KEYS.most, kettleHeightPx - rowsPx))
      if (ringPx < keyPx * KETTLE_RING_KEYS.least || columnPx < 2 * keyPx + gapPx) continue
      const pullPx = line.pull === null ? 0 : stationHeightPx + gapPx
      const room = { widthPx: columnPx, heightPx: lineHeightPx - headingPx - pullPx, ...sizes }
      return {
        isSideBySide: true,
        isPaired: false,
        columnPx,
        stationKeyPx: columnPx - gapPx - keyPx,
        stationHeightPx,
        kettleKeyPx: columnPx,
        kettleHeightPx: Math.min(kettleHeightPx, Math.ceil(ringPx + rowsPx)),
        kettleRingPx: ringPx,
        standingShown: countShown(line.standing, room),
        boards,
      }
    }
  }
  return null
}

function boardsHeight({ stripPx }: BoardsPlan, { minPx }: PlanSizes): number {
  return minPx * TEXT_EM + (stripPx === null ? 0 : stripPx + STRIP_SPACE_EM * minPx)
}

/**
 * All below each other: rack, pull, kettle, boards. Where three keys do not fit, pull and board share a row, without a
 * "differs" beside them. A page that scrolls has room for all of it.
 */
function belowEachOther(line: LineView, layout: BenchLayout, sizes: PlanSizes): LinePlan {
  const { gapPx, keyPx, lineWidthPx, lineHeightPx, form } = layout
  const textPx = sizes.minPx * TEXT_EM
  const drawn = boardsPlan(line.boards, lineWidthPx, sizes)
  const kettlePx = (line.kettleKey === null ? keyPx * 0.8 : keyPx) + gapPx
  const leftAfter = (rows: number) => lineHeightPx - rows * (keyPx + gapPx) - kettlePx - textPx
  const rows = (line.pull === null ? 0 : 1) + (line.boardKey === null ? 0 : 1)
  const isPaired = form !== 'stacked' && rows === 2 && leftAfter(rows) < textPx
  const leftPx = leftAfter(isPaired ? 1 : rows)
  // Boards are drawn once the nearest dough has its room.
  const hasStrip = form === 'stacked' || leftPx - boardsHeight(drawn, sizes) > 3 * textPx
  const boards = hasStrip ? drawn : { ...drawn, stripPx: null }
  const standingPx = leftPx - (boards.stripPx === null ? 0 : boardsHeight(boards, sizes) - textPx)
  const room = { widthPx: lineWidthPx, heightPx: standingPx, ...sizes }
  return {
    isSideBySide: false,
    isPaired,
    columnPx: lineWidthPx,
    stationKeyPx: isPaired ? Math.floor((lineWidthPx - gapPx) / 2) : lineWidthPx - gapPx - keyPx,
    stationHeightPx: keyPx,
    kettleKeyPx: lineWidthPx,
    kettleHeightPx: keyPx,
    kettleRingPx: Math.round(keyPx * 0.8),
    standingShown: form === 'stacked' ? line.standing.length : countShown(line.standing, room),
    boards,
  }
}

interface TextRoom extends PlanSizes {
  readonly widthPx: number
  readonly heightPx: number
}

/** How many fit, with a line kept for how many more there are. */
function countShown(standing: readonly StandingView[], room: TextRoom): number {
  const linePx = room.minPx * TEXT_EM
  const heights = standing.map((one) => standingLines(one, room) * linePx)
  const fits = (count: number) => {
    const more = count < standing.length ? linePx : 0
    return heights.slice(0, count).reduce((sum, px) => sum + px, more) <= room.heightPx
  }
  let shown = standing.length
  while (shown > 0 && !fits(shown)) shown -= 1
  return shown
}

/** Lines of an entry: name and window in one where they fit, else broken at words. */
export function standingLines(
  { title, detail }: StandingView,
  { widthPx, minPx }: Pick<TextRoom, 'widthPx' | 'minPx'>,
): number {
  const titlePx = textWidthPx(title, minPx, 'strong')
  const detailPx = textWidthPx(detail, minPx)
  if (titlePx + textWidthPx(' ', minPx) + detailPx <= widthPx) return 1
  return Math.ceil(titlePx / (widthPx * WRAP_FILL)) + Math.ceil(detailPx / (widthPx * WRAP_FILL))
}

/** Lines broken at words are seldom full: on the safe side. */
const WRAP_FILL = 0.85

/** A drawn board's width and height with the space around it, in board heights. */
const BOARD_STEP = { x: 1.67, y: 1.32 } as const
const BOARD_PX = { least: 8, most: 16 } as const
const BOARD_ROWS_MAX = 3

/** The board before the words for those that get wet, in font sizes: its height, and its width with the space after it. */
export const LEGEND_EM = { height: 0.62, width: 1.2 } as const

/** The words for the boards say what a half-filled one is, by a board drawn before them. */
export function isBoardsLegend({ drying, over }: Pick<BoardsView, 'drying' | 'over'>): boolean {
  return drying > 0 && over === 0
}

function boardsPlan(boards: BoardsView, widthPx: number, { minPx }: PlanSizes): BoardsPlan {
  const { count, title, detail, over } = boards
  const legendPx = isBoardsLegend(boards) ? minPx * LEGEND_EM.width : 0
  const detailPx = legendPx + textWidthPx(`  ${detail}`, minPx, 'strong')
  const isBoth = textWidthPx(title, minPx, 'strong') + detailPx <= widthPx
  const said = { hasTitle: isBoth || over === 0, hasDetail: detail !== '' && (isBoth || over > 0) }
  for (let rows = 1; rows <= BOARD_ROWS_MAX; rows++) {
    const perRow = Math.max(1, Math.ceil(count / rows))
    const boardPx = Math.min(BOARD_PX.most, Math.floor(widthPx / perRow / BOARD_STEP.x))
    const isRoomy = boardPx >= BOARD_PX.most || rows === BOARD_ROWS_MAX || perRow <= 12
    if (isRoomy && boardPx >= BOARD_PX.least)
      return { ...said, perRow, boardPx, stripPx: rows * boardPx * BOARD_STEP.y }
  }
  return { ...said, perRow: 1, boardPx: BOARD_PX.least, stripPx: null }
}
