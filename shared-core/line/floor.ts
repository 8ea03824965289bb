import type { Line, State } from '../day/state.ts'
import type { LoadId } from '../ids.ts'
import type { Shelf, Shop } from '../shop/shop.ts'
import { boardsWorth } from './boards.ts'
import { contentsByLoad } from './contents.ts'
import { piecesOf } from './lines.ts'

/**
 * Room on a hearth's floor, in boards. Pieces keep their place on the floor from the load to the out: flipping frees the
 * boards, not the floor.
 */
export interface Floor {
  readonly boards: number
  /** May be more than `boards` when people loaded more than fits. */
  readonly taken: number
}

/** @param besides a load that is left out, as its contents are being put right */
export function floorOf(state: State, shop: Shop, shelf: Shelf, besides: LoadId | null = null): Floor {
  const contents = contentsByLoad(state, shop)
  let taken = 0
  for (const load of state.loads.values())
    if (load.shelfId === shelf.id && load.id !== besides) taken += boardsWorth(shop, contents.get(load.id) ?? [])
  return { boards: floorBoardsOf(shop, shelf), taken }
}

/** A floor whose set-up gives only pieces is as many boards as these pieces fill. */
export function floorBoardsOf(shop: Shop, shelf: Shelf): number {
  return shelf.floorBoards ?? boardsWorth(shop, [shelf])
}

/** Whether lines are more than a shelf takes, or on a hearth more than the room that is left. Shown, never blocked. */
export function overShelf(
  state: State,
  shop: Shop,
  shelf: Shelf,
  lines: readonly Line[],
  besides: LoadId | null = null,
): boolean {
  if (shop.oven.kind !== 'hearth') return piecesOf(lines) > shelf.pieces
  const floor = floorOf(state, shop, shelf, besides)
  return floor.taken + boardsWorth(shop, lines) > floor.boards
}
