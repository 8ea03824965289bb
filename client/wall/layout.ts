import type { TextSizes } from '../parts/legibility.ts'

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
const RULER_EMS = { 1: 3.75, 2: 4.95 } as const

export function wallLayout({ widthPx, heightPx, sizes, hasStatus, noteWidthPx }: WallRoom): WallLayout {
  const { minPx, headlinePx } = sizes
  const padPx = Math.round(minPx * 0.6)
  const barHeight = Math.round(headlinePx * 1.55)
  const statusHeight = hasStatus ? Math.round(minPx * 1.5) : 0
  const parts = partsThatFit(heightPx - barHeight - statusHeight - padPx, sizes)
  const clockWidth = Math.round(Math.max(headlinePx * 3.1, noteWidthPx + minPx))
  const width = widthPx - 2 * padPx
  const top = Math.round(padPx * 0.4)
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
    bar: { left: 0, top: heightPx - barHeight, width: widthPx, height: barHeight },
  }
}

interface Parts {
  readonly topHeight: number
  readonly rulerLines: 1 | 2 | null
  readonly rodsHeight: number
  readonly rodsForm: 'drawn' | 'line'
}

/** The richest way to divide a height that leaves the line in the middle what it must have. */
function partsThatFit(heightPx: number, { minPx, actPx, countPx, headlinePx }: TextSizes): Parts {
  const row = rowHeight({ minPx, actPx })
  const middleOf = (rows: number) => Math.round(minPx * HEADING + rows * row + (rows - 1) * rowGap(minPx))
  const ruler = (lines: 1 | 2) => Math.round(minPx * RULER_EMS[lines])
  const clockOnly = Math.round(Math.max(headlinePx * 1.1 + minPx * LINE, headlinePx * LINE))
  // A name in two lines, the count, when it is gone and what comes; and a name in one line.
  const rods = (nameLines: number) => Math.round(countPx * 1.1 + (nameLines + 2) * minPx * LINE + minPx * 0.9)
  const ways: readonly (Parts & { readonly rows: number })[] = [
    { topHeight: ruler(2), rulerLines: 2, rodsHeight: rods(2), rodsForm: 'drawn', rows: 5 },
    { topHeight: ruler(1), rulerLines: 1, rodsHeight: rods(2), rodsForm: 'drawn', rows: 4 },
    { topHeight: ruler(1), rulerLines: 1, rodsHeight: rods(1), rodsForm: 'drawn', rows: 3 },
    { topHeight: ruler(1), rulerLines: 1, rodsHeight: rods(1), rodsForm: 'drawn', rows: 2.4 },
    { topHeight: clockOnly, rulerLines: null, rodsHeight: rods(1), rodsForm: 'drawn', rows: 2 },
    { topHeight: clockOnly, rulerLines: null, rodsHeight: Math.round(minPx * 1.5), rodsForm: 'line', rows: 2 },
  ]
  const least: Parts = { topHeight: clockOnly, rulerLines: null, rodsHeight: 0, rodsForm: 'line' }
  return ways.find((way) => way.topHeight + way.rodsHeight + middleOf(way.rows) <= heightPx) ?? least
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
