import type { CommandId } from '../ids.ts'
import type { JournalItem } from './journal-day.ts'
import type { Purchase } from './sales-day.ts'

/**
 * `unexplained`: what a count found missing, signed. `found`: pieces taken of which the books knew nothing. `noted`: sold
 * by the word of a source that takes nothing off. `ordered`: gone with an order that somebody placed ahead.
 */
export type Column =
  | 'sold'
  | 'ordered'
  | 'allotted'
  | 'kitchen'
  | 'wasted'
  | 'given'
  | 'baked'
  | 'unexplained'
  | 'found'
  | 'noted'

/** What one command did to a variety. */
export interface Move {
  readonly commandId: CommandId
  readonly column: Column
  readonly minute: number
  readonly pieces: number
}

export function piecesIn(moves: readonly Move[], column: Column): number {
  let sum = 0
  for (const move of moves) if (move.column === column) sum += move.pieces
  return sum
}

/** In order of time: a tap that was kept on a screen comes late. */
export function purchasesIn(moves: readonly Move[], ...columns: readonly Column[]): readonly Purchase[] {
  return moves
    .filter(({ column, pieces }) => columns.includes(column) && pieces > 0)
    .map(({ minute, pieces }) => ({ minute, pieces }))
    .sort((one, other) => one.minute - other.minute)
}

/**
 * Pieces that went without anybody saying when, signed.
 *
 *   counts' gaps − pieces that were found − what was noted beside the books
 *
 * The last two are taken off only as far as a gap shows them: a load that is tapped late is sold from before it is known,
 * and the next count finds just that missing; pieces that no count ever missed were there, and untold.
 * @param estimated what has probably left since a rod was last known
 */
export function unseenIn(moves: readonly Move[], estimated: number): number {
  const gaps = piecesIn(moves, 'unexplained')
  const beyondFound = gaps - Math.min(piecesIn(moves, 'found'), Math.max(0, gaps)) + estimated
  return beyondFound - Math.min(piecesIn(moves, 'noted'), Math.max(0, beyondFound))
}

/** @param rest what is not read off moves */
export function itemOf(
  moves: readonly Move[],
  estimated: number,
  rest: Pick<JournalItem, 'id' | 'gone' | 'left'>,
): JournalItem {
  return {
    ...rest,
    sold: purchasesIn(moves, 'sold', 'noted'),
    allotted: purchasesIn(moves, 'allotted'),
    kitchen: purchasesIn(moves, 'kitchen'),
    unseen: unseenIn(moves, estimated),
    baked: piecesIn(moves, 'baked'),
    wasted: piecesIn(moves, 'wasted'),
    given: piecesIn(moves, 'given'),
    ordered: piecesIn(moves, 'ordered') || null,
  }
}
