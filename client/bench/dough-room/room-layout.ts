import type { SheetRoom } from '../sheet.tsx'
import { splitRoom } from '../sheets/split.ts'
import { STATIONS } from './room-parts.ts'

/** How the stations stand on the glass: side by side, left to right; on narrow glass one below the other. */
export interface RoomLayout {
  readonly isNarrow: boolean
  /** A key of so narrow a column has no room for both its ring and its words, nor a heading for its sign. */
  readonly isCramped: boolean
  readonly columnPx: number
  readonly itemPx: number
  /** Keys that a column has room for. */
  readonly items: number
}

/** On narrow glass the page scrolls, and each station shows the first of what stands there. */
const NARROW_ITEMS = 4

/** In least keys. */
const CRAMPED_KEYS = 1.75

/** @param headingPx of a station's name and what stands beside it */
export function roomLayout(room: SheetRoom, headingPx: number): RoomLayout {
  const { widthPx, gapPx, keyPx, rows, rowPx } = room
  if (splitRoom(room).isNarrow)
    return { isNarrow: true, isCramped: false, columnPx: widthPx, itemPx: keyPx, items: NARROW_ITEMS }
  const columnPx = Math.floor((widthPx - (STATIONS.length - 1) * gapPx) / STATIONS.length)
  const bodyPx = rows * rowPx + (rows - 1) * gapPx
  const itemsPx = bodyPx - keyPx - gapPx - headingPx
  const items = Math.max(1, Math.floor((itemsPx + gapPx) / (keyPx + gapPx)))
  const isCramped = columnPx < CRAMPED_KEYS * keyPx
  return { isNarrow: false, isCramped, columnPx, itemPx: Math.floor((itemsPx - (items - 1) * gapPx) / items), items }
}

/** Those that are shown, and how many more there are: the last place leads to them. @example fitting([1, 2, 3], 2) // { shown: [1], more: 2 } */
export function fitting<Item>(
  items: readonly Item[],
  places: number,
): { readonly shown: readonly Item[]; readonly more: number } {
  if (items.length <= places) return { shown: items, more: 0 }
  const shown = items.slice(0, Math.max(0, places - 1))
  return { shown, more: items.length - shown.length }
}
