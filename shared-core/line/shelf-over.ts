import { shelfMark } from '../day/marks.ts'
import type { State } from '../day/state.ts'
import type { ShelfId } from '../ids.ts'

/** Somebody said that the shelf is done with bagels for today. A load may still be in it. */
export function isShelfOver({ marks }: State, shelfId: ShelfId): boolean {
  return marks.get(shelfMark(shelfId))?.kind === 'shelf-over'
}

/** Somebody said that it takes bagels again. */
export function isShelfOpen({ marks }: State, shelfId: ShelfId): boolean {
  return marks.get(shelfMark(shelfId))?.kind === 'shelf-open'
}
