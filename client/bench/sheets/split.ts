import type { SheetRoom } from '../sheet.tsx'

/** A sheet in two parts: what is being said at the left, what can be chosen at the right; below each other where narrow. */
export interface SplitRoom {
  readonly leftPx: number
  readonly rightPx: number
  /** Columns of keys at the right. */
  readonly columns: number
  /** The two stand below each other. */
  readonly isNarrow: boolean
}

/** A name, a board less and a board more, in keys. */
const LEFT_KEYS = 4.1
const COLUMN_KEYS = 1.35
const BESIDE_KEYS_MIN = 8

export function splitRoom({ widthPx, keyPx, gapPx }: Pick<SheetRoom, 'widthPx' | 'keyPx' | 'gapPx'>): SplitRoom {
  const isNarrow = widthPx < BESIDE_KEYS_MIN * keyPx
  const leftPx = isNarrow ? widthPx : Math.round(LEFT_KEYS * keyPx)
  const rightPx = isNarrow ? widthPx : widthPx - leftPx - gapPx
  const columns = Math.max(2, Math.floor((rightPx + gapPx) / (COLUMN_KEYS * keyPx + gapPx)))
  return { leftPx, rightPx, columns, isNarrow }
}
