import { KEY_GAP_MM_MIN, KEY_MM_MIN } from '../parts/legibility.ts'

/**
 * Where things stand on the bench's glass, from its size alone, so that it is decided without a browser and tested for
 * every number of shelves. Keys are at least 20 mm both ways: on a ten-inch tablet that is a seventh of its height, so
 * an oven of twelve shelves needs three columns, and what does not fit beside them moves to a place of its own.
 */
export interface BenchLayout {
  /** `wide`: the line is drawn beside one column of shelves. `tight`: its stations stand in one column. `stacked`: all below each other, the page is longer than the glass. */
  readonly form: 'wide' | 'tight' | 'stacked'
  readonly columns: number
  readonly rows: number
  /** Least edge of a key and space between two keys, in CSS pixels. */
  readonly keyPx: number
  readonly gapPx: number
  readonly marginPx: number
  readonly shelfWidthPx: number
  readonly shelfHeightPx: number
  /** Each shelf has its own "differs" beside it; else one key at the bottom turns the next touch into it. */
  readonly differsBeside: boolean
  /** Room for the stations of the line, left of the oven. */
  readonly lineWidthPx: number
  readonly lineHeightPx: number
  /** Between line and oven, where the way of the pieces is drawn. */
  readonly jointWidthPx: number
  readonly topHeightPx: number
  /** The oven's heading has room. */
  readonly hasOvenHeading: boolean
}

export interface BenchGlass {
  readonly widthPx: number
  readonly heightPx: number
  /** CSS pixels to a millimetre. */
  readonly mmPx: number
  /** Shelves, or on a hearth the loads on the floor and the one to come. */
  readonly shelves: number
  /** Heights of text in the top band and of the oven's heading, in CSS pixels. */
  readonly topHeightPx: number
  readonly headingPx: number
  /** The widest act on a shelf's key, as wide as it is written there: with a key beside it, it must still fit in a row. */
  readonly actWidthPx: number
}

/** Narrower glass than this many keys is used upright: everything below each other. */
const BESIDE_KEYS_MIN = 7
/** Taller keys say no more than these. */
const SHELF_HEIGHT_KEYS_MAX = 1.3
/** A shelf's key beside its "differs" must still hold a ring and a few words. */
const SHELF_WIDTH_KEYS_MIN = 2
/** What ring, edges and stripes of a narrow key take of its width, in keys. */
const RING_KEYS = 0.95
/** The oven's share of the width by columns; the rest is the line's. */
const OVEN_SHARE = [0.46, 0.62, 0.68, 0.72, 0.78] as const
const COLUMNS_MAX = OVEN_SHARE.length
const JOINT_GAPS = { wide: 4.5, tight: 2 } as const

/**
 * Lays the bench out.
 * @example 1280 × 800 on 10.1 inches, 3 shelves: one column, "differs" beside each; 12 shelves: 3 columns of 4
 */
export function benchLayout(glass: BenchGlass): BenchLayout {
  const keyPx = Math.ceil(KEY_MM_MIN * glass.mmPx)
  const gapPx = Math.ceil(KEY_GAP_MM_MIN * glass.mmPx)
  const marginPx = Math.round(gapPx * 0.9)
  const sizes = { keyPx, gapPx, marginPx }
  const side = glass.widthPx < BESIDE_KEYS_MIN * keyPx ? null : beside(glass, sizes)
  return side ?? stacked(glass, sizes)
}

type Sizes = Pick<BenchLayout, 'keyPx' | 'gapPx' | 'marginPx'>

/** Line and oven side by side; null where the glass is too small for so many shelves. */
function beside(glass: BenchGlass, sizes: Sizes): BenchLayout | null {
  const { keyPx, gapPx, marginPx } = sizes
  const shelves = Math.max(1, glass.shelves)
  // Top band, line, bottom keys: a margin at both ends, half a gap under the band, a whole one between line and keys.
  const lineHeightPx = glass.heightPx - 2 * marginPx - glass.topHeightPx - Math.round(gapPx / 2) - gapPx - keyPx
  const rowsMax = Math.max(1, Math.floor((lineHeightPx + gapPx) / (keyPx + gapPx)))
  const columns = Math.ceil(shelves / rowsMax)
  if (columns > COLUMNS_MAX) return null
  const rows = Math.ceil(shelves / columns)
  const hasOvenHeading = rows * (keyPx + gapPx) - gapPx + glass.headingPx <= lineHeightPx
  const ovenHeightPx = lineHeightPx - (hasOvenHeading ? glass.headingPx : 0)
  const innerPx = glass.widthPx - 2 * marginPx
  const jointWidthPx = (columns === 1 ? JOINT_GAPS.wide : JOINT_GAPS.tight) * gapPx
  // The line keeps room for two keys side by side.
  const lineMinPx = 2 * keyPx + gapPx
  const share = Math.round(innerPx * (OVEN_SHARE[columns - 1] ?? OVEN_SHARE[0]))
  const ovenWidthPx = Math.min(share, innerPx - jointWidthPx - lineMinPx)
  const columnPx = Math.floor((ovenWidthPx - (columns - 1) * gapPx) / columns)
  // Of the line, two keys below each other must stand, with a row of text at both ends.
  const isLow = lineHeightPx < 2 * (keyPx + gapPx + glass.headingPx)
  if (isLow || columnPx < keyPx) return null
  const withDiffersMin = Math.max(SHELF_WIDTH_KEYS_MIN * keyPx, glass.actWidthPx + RING_KEYS * keyPx)
  const differsBeside = columnPx - gapPx - keyPx >= withDiffersMin
  return {
    ...sizes,
    form: columns === 1 ? 'wide' : 'tight',
    columns,
    rows,
    shelfWidthPx: differsBeside ? columnPx - gapPx - keyPx : columnPx,
    shelfHeightPx: shelfHeight(Math.floor((ovenHeightPx - (rows - 1) * gapPx) / rows), keyPx),
    differsBeside,
    lineWidthPx: innerPx - ovenWidthPx - jointWidthPx,
    jointWidthPx,
    lineHeightPx,
    topHeightPx: glass.topHeightPx,
    hasOvenHeading,
  }
}

/** One column, each key as wide as the glass allows; the page scrolls. */
function stacked(glass: BenchGlass, sizes: Sizes): BenchLayout {
  const { keyPx, gapPx, marginPx } = sizes
  const innerPx = glass.widthPx - 2 * marginPx
  const shelfWidthPx = innerPx - gapPx - keyPx
  return {
    ...sizes,
    form: 'stacked',
    columns: 1,
    rows: Math.max(1, glass.shelves),
    shelfWidthPx,
    shelfHeightPx: keyPx,
    differsBeside: true,
    lineWidthPx: innerPx,
    lineHeightPx: 0,
    jointWidthPx: 0,
    topHeightPx: glass.topHeightPx,
    hasOvenHeading: true,
  }
}

function shelfHeight(roomPx: number, keyPx: number): number {
  return Math.max(keyPx, Math.min(roomPx, Math.round(keyPx * SHELF_HEIGHT_KEYS_MAX)))
}
