import type { Weight } from './text-width.ts'
import { textWidthPx } from './text-width.ts'

/** Where room is short, less is shown, not smaller: these say how much fits, from sizes that are already decided. */

/**
 * How many of a row (or column) of equal things fit. Where not all do, room is left for the word that tells how many
 * others there are.
 * @param morePx room for "7 others fine", beside its own gap
 * @example howManyFit({ count: 12, roomPx: 1000, eachPx: 150, gapPx: 10, morePx: 150 }) // 5
 */
export function howManyFit(want: {
  readonly count: number
  readonly roomPx: number
  readonly eachPx: number
  readonly gapPx: number
  readonly morePx: number
}): number {
  const { count, roomPx, eachPx, gapPx, morePx } = want
  const inRoom = (px: number) => Math.max(0, Math.floor((px + gapPx) / (eachPx + gapPx)))
  const all = inRoom(roomPx)
  return count <= all ? count : Math.min(all, inRoom(roomPx - morePx - gapPx))
}

export interface RackFit {
  readonly columns: number
  readonly rows: number
  /** Things shown; less than all when the last place must tell how many others there are. */
  readonly shown: number
}

/**
 * Sets equal cells into a rectangle: the fewest rows that hold all, evenly filled; else all rows that there is room
 * for, with the last cell left for "n others".
 * @example fitRack({ count: 12, widthPx: 1240, heightPx: 560, cellWidthPx: 200, cellHeightPx: 270, gapPx: 6 })
 *   // { columns: 6, rows: 2, shown: 12 }
 */
export function fitRack(want: {
  readonly count: number
  readonly widthPx: number
  readonly heightPx: number
  readonly cellWidthPx: number
  readonly cellHeightPx: number
  readonly gapPx: number
}): RackFit {
  const columnsMax = Math.max(1, Math.floor((want.widthPx + want.gapPx) / (want.cellWidthPx + want.gapPx)))
  const rowsMax = Math.max(1, Math.floor((want.heightPx + want.gapPx) / (want.cellHeightPx + want.gapPx)))
  if (want.count > columnsMax * rowsMax) {
    return { columns: columnsMax, rows: rowsMax, shown: columnsMax * rowsMax - 1 }
  }
  const rows = Math.max(1, Math.ceil(want.count / columnsMax))
  return { columns: Math.max(1, Math.ceil(want.count / rows)), rows, shown: want.count }
}

/**
 * Joins as many texts as fit in one line; the rest becomes a count.
 * @param texts what matters most first
 * @param moreText the words for the others, e.g. (2) => "and 2 more"
 * @returns the line; when not even the first text fits, the count alone
 */
export function fitList(
  texts: readonly string[],
  line: { readonly roomPx: number; readonly fontPx: number; readonly weight?: Weight | undefined },
  moreText: (count: number) => string,
): string {
  for (let shown = texts.length; shown > 0; shown--) {
    const words = texts.slice(0, shown)
    const all = shown === texts.length ? words.join(', ') : [...words, moreText(texts.length - shown)].join(', ')
    if (textWidthPx(all, line.fontPx, line.weight) <= line.roomPx) return all
  }
  return texts.length === 0 ? '' : moreText(texts.length)
}
