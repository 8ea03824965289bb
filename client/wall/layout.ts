import type { TextSizes } from '../parts/legibility.ts'
import { rulerSize } from '../parts/ruler-size.ts'

/** A place on the wall in CSS pixels from its top left corner. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/**
 * Where everything stands on the wall, from the screen's pixels and the text sizes that its diagonal and distance ask
 * for. Text is never made smaller to fit: from farther away there is room for less, and what matters least goes first –
 * the second line of labels, the rods' drawing, the ruler, the rods. The act bar, the clock, the kettle and the oven stay.
 */
export interface WallLayout {
  readonly padPx: number
  readonly clock: Box
  /** Null: no room for the day. */
  readonly ruler: Box | null
  readonly rulerLines: 1 | 2
  /** One line across for what is wrong; null while all is well. */
  readonly status: Box | null
  readonly kettle: Box
  readonly oven: Box
  /** Kettle and oven together: for what stands while the line is quiet. */
  readonly middle: Box
  readonly rods: Box | null
  /** `drawn`: rods with their rings; `line`: one line of words. */
  readonly rodsForm: 'drawn' | 'line'
  /** Lines of words beside a rod, besides its count. */
  readonly rodLines: number
  readonly bar: Box
}

export interface WallRoom {
  readonly widthPx: number
  readonly heightPx: number
  readonly sizes: TextSizes
  readonly hasStatus: boolean
  /** Of the words below the clock. */
  readonly noteWidthPx: number
}

/** Line heights and such, in parts of a font size. */
const LINE = 1.2
const HEADING = 1.3
const TOP = 0.25
const STATUS = 1.4

export function wallLayout({ widthPx, heightPx, sizes, hasStatus, noteWidthPx }: WallRoom): WallLayout {
  const { minPx, headlinePx } = sizes
  const padPx = Math.round(minPx * 0.6)
  const barHeight = barHeightOf(sizes)
  const statusHeight = hasStatus ? Math.round(minPx * STATUS) : 0
  const top = Math.round(minPx * TOP)
  const parts = partsThatFit(heightPx - barHeight - statusHeight - top, sizes)
  const clockWidth = Math.round(Math.max(headlinePx * 3.1, noteWidthPx + minPx))
  const width = widthPx - 2 * padPx
  const statusTop = top + parts.topHeight
  const middleTop = statusTop + statusHeight
  const rodsTop = heightPx - barHeight - parts.rodsHeight
  const middle = { left: padPx, top: middleTop, width, height: rodsTop - middleTop }
  const kettleWidth = Math.round(width * 0.4)
  const gap = padPx
  return {
    padPx,
    clock: { left: padPx, top, width: clockWidth, height: parts.topHeight },
    ruler:
      parts.rulerLines === null
        ? null
        : { left: padPx + clockWidth, top, width: width - clockWidth, height: parts.topHeight },
    rulerLines: parts.rulerLines ?? 1,
    status: hasStatus ? { left: 0, top: statusTop, width: widthPx, height: statusHeight } : null,
    kettle: { ...middle, width: kettleWidth },
    oven: { ...middle, left: padPx + kettleWidth + gap, width: width - kettleWidth - gap },
    middle,
    rods: parts.rodsHeight === 0 ? null : { left: padPx, top: rodsTop, width, height: parts.rodsHeight },
    rodsForm: parts.rodsForm,
    rodLines: parts.rodLines,
    bar: { left: 0, top: heightPx - barHeight, width: widthPx, height: barHeight },
  }
}

interface Parts {
  readonly topHeight: number
  readonly rulerLines: 1 | 2 | null
  readonly rodsHeight: number
  readonly rodsForm: 'drawn' | 'line'
  readonly rodLines: number
}

/** The richest way to divide a height that leaves the line in the middle the rows that it must have. */
function partsThatFit(heightPx: number, { minPx, actPx, countPx, headlinePx }: TextSizes): Parts {
  const row = rowHeight({ minPx, actPx })
  const middleOf = (rows: number) => headingHeight(minPx) + rows * row + (rows - 1) * rowGap(minPx)
  const day = (lines: 1 | 2) => ({ topHeight: rulerSize(minPx, lines).height, rulerLines: lines })
  const clockOnly = { topHeight: Math.round(headlinePx * 1.1 + minPx * LINE), rulerLines: null }
  const drawn = (lines: number) => {
    const rodsHeight = Math.round(countPx * 1.1 + (lines * LINE + 0.6) * minPx)
    return { rodsHeight, rodsForm: 'drawn', rodLines: lines } as const
  }
  const inWords = { rodsHeight: Math.round(minPx * 1.5), rodsForm: 'line', rodLines: 0 } as const
  const ways: readonly (Parts & { readonly rows: number })[] = [
    { ...day(2), ...drawn(4), rows: 5 },
    { ...day(1), ...drawn(4), rows: 4 },
    { ...day(1), ...drawn(3), rows: 3 },
    { ...day(1), ...drawn(2), rows: 3 },
    { ...day(1), ...drawn(2), rows: 2 },
    { ...clockOnly, ...drawn(2), rows: 2 },
    { ...clockOnly, ...inWords, rows: 2 },
  ]
  const least: Parts = { ...clockOnly, rodsHeight: 0, rodsForm: 'line', rodLines: 0 }
  return ways.find((way) => way.topHeight + way.rodsHeight + middleOf(way.rows) <= heightPx) ?? least
}

/** A headline with air around it, or two lines at the size of acts. */
function barHeightOf({ headlinePx, actPx }: TextSizes): number {
  return Math.ceil(Math.max(headlinePx * 1.55, actPx * 2.32))
}

/** A shelf's row: the act, and what is in it. */
export function rowHeight({ minPx, actPx }: Pick<TextSizes, 'minPx' | 'actPx'>): number {
  return Math.round(1.36 * actPx + 1.2 * minPx)
}

export function rowGap(minPx: number): number {
  return Math.round(minPx * 0.3)
}

export function headingHeight(minPx: number): number {
  return Math.round(minPx * HEADING)
}

/**
 * Text sizes for a distance, larger where the screen has room to spare: as long as the day, the rods and so many shelves
 * with what is in them still fit, text for a greater distance is easier to read for everybody.
 */
export function roomySizes(
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
  shelves: number,
  sizesAt: (scale: number) => TextSizes,
): TextSizes {
  for (const scale of SCALES) {
    const sizes = sizesAt(scale)
    const { minPx, countPx } = sizes
    const rows = Math.max(ROWS_ROOMY, shelves)
    const neededPx =
      minPx * TOP +
      rulerSize(minPx, 1).height +
      headingHeight(minPx) +
      rows * rowHeight(sizes) +
      (rows - 1) * rowGap(minPx) +
      countPx * 1.1 +
      (3 * LINE + 0.6) * minPx +
      barHeightOf(sizes)
    if (neededPx <= heightPx && widthPx >= minPx * WIDTH_EMS_ROOMY) return sizes
  }
  return sizesAt(1)
}

const SCALES = [2, 1.8, 1.6, 1.5, 1.4, 1.3, 1.2, 1.1] as const
/** What the wall shows of a small shop at the distance that it is drawn for, 43 inches at 3 m. */
const ROWS_ROOMY = 3
const WIDTH_EMS_ROOMY = 44
