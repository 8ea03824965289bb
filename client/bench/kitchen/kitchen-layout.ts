import type { SheetRoom } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'

/** How rods and the oven's shelves lie on the glass, from its size alone. */
export interface KitchenLayout {
  /** One below the other, on a page that scrolls. */
  readonly isNarrow: boolean
  /** Rods on this page, and rows of what is in the oven below them. */
  readonly rods: number
  readonly ovenRows: number
  /** A ring is a touch key. */
  readonly ringPx: number
  /** Of a rod with the words above it. */
  readonly rodPx: number
  readonly headPx: number
  /** The ruler above the rods; 0 where there is none. */
  readonly axisPx: number
  /** Where rings can be, left of the rod's total. */
  readonly spanPx: number
  readonly totalPx: number
  readonly ovenColumns: number
  readonly ovenCellPx: number
}

export interface KitchenRoom {
  readonly room: SheetRoom
  readonly minPx: number
  /** Kinds of things that wait or are begun. */
  readonly kinds: number
  /** Groups on shelves, or shelves to choose from; 0: the oven needs no room. */
  readonly ovenCells: number
}

/** Words of a rod and the ruler's hours, in sizes of small text. */
const HEAD_EM = 1.25
/** Inside a ring's key, so that its edge is seen when it is touched. */
const TOTAL_KEYS = 0.75
const NARROW_TOTAL_KEYS = 0.36
/** A ring with what is in it and when it comes out, in least keys. */
const OVEN_CELL_KEYS = 2.3
const OVEN_ROWS_MAX = 2
/** On narrow glass a page scrolls: so many rods are shown, the others are a touch away. */
const NARROW_RODS = 8

/**
 * Rods have the room that the oven leaves: one row of shelves where all fit in it, two where not and rods are few.
 * @example 1280 × 800 on 10.1 inches, 5 kinds, 2 groups in the oven: two rods and a row of the oven
 */
export function kitchenLayout({ room, minPx, kinds, ovenCells }: KitchenRoom): KitchenLayout {
  const { widthPx, keyPx, gapPx, rows, rowPx } = room
  const { isNarrow } = splitRoom(room)
  const headPx = Math.ceil(minPx * HEAD_EM)
  const axisPx = headPx
  const rodPx = headPx + keyPx
  const totalPx = Math.round((isNarrow ? NARROW_TOTAL_KEYS : TOTAL_KEYS) * keyPx)
  const ovenColumns = Math.max(1, Math.floor((widthPx + gapPx) / (OVEN_CELL_KEYS * keyPx + gapPx)))
  const ovenCellPx = Math.floor((widthPx - (ovenColumns - 1) * gapPx) / ovenColumns)
  const wantedRows = Math.ceil(ovenCells / ovenColumns)
  const sizes = { ringPx: keyPx, rodPx, headPx, axisPx, totalPx, ovenColumns, ovenCellPx }
  const spanPx = widthPx - totalPx - (isNarrow ? 0 : gapPx)
  if (isNarrow) return { ...sizes, isNarrow, spanPx, rods: Math.min(NARROW_RODS, kinds), ovenRows: wantedRows }
  // Head and foot each take a row of keys.
  const bodyPx = rows * rowPx + (rows - 1) * gapPx - keyPx - gapPx
  // The words above each row keep rings of two rows apart.
  const rodsIn = (ovenRows: number) => Math.max(1, Math.floor((bodyPx - axisPx) / rodPx) - ovenRows)
  const least = Math.min(wantedRows, 1)
  const isRoomy = wantedRows > least && rodsIn(Math.min(wantedRows, OVEN_ROWS_MAX)) >= kinds
  const ovenRows = isRoomy ? Math.min(wantedRows, OVEN_ROWS_MAX) : least
  return { ...sizes, isNarrow, spanPx, rods: rodsIn(ovenRows), ovenRows }
}
