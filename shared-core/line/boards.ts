import { boardsMark } from '../day/marks.ts'
import type { Line, State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

/**
 * Where the wet boards are. A board is taken from the lift until the flip, then re-wets; what varieties need no board
 * (baked on a pan, or never flipped) is asked of the set-up, so a change of it shows at once.
 */
export interface BoardsNow {
  /** Boards that can be used today: what somebody said, else all that the shop has; 0 without a set-up. */
  readonly count: number
  /** Wet and ready to be taken. */
  readonly free: number
  /** Under pieces, beside the kettle or in the oven. */
  readonly out: number
  /** Freed at a flip and still re-wetting. */
  readonly drying: number
  /** Boards more than there are, when the line holds pieces for which the board knows none; else 0. */
  readonly over: number
  /** When the next of them is wet enough again; null when none is re-wetting. */
  readonly nextWetAtMs: EpochMs | null
}

/**
 * Counts the boards at an instant: `free + out + drying = count + over`, with `free` or `over` zero.
 * @example 24 boards of 6, 36 plain on boards, 8 boards under a load, 8 freed 2 min ago // free 2, out 14, drying 8
 */
export function boardsNow(state: State, nowMs: EpochMs): BoardsNow {
  const { shop } = state
  if (shop === null) return { count: 0, free: 0, out: 0, drying: 0, over: 0, nextWetAtMs: null }
  const count = usableBoards(state, shop)
  const wetting = rewetting(state).filter((some) => some.boards > 0 && some.wetAtMs > nowMs)
  const drying = wetting.reduce((sum, some) => sum + some.boards, 0)
  const out = boardsBesideKettle(state, shop) + boardsInOven(state)
  const rest = count - out - drying
  const nextWetAtMs = wetting.reduce<EpochMs | null>(
    (soonest, { wetAtMs }) => (soonest === null || wetAtMs < soonest ? wetAtMs : soonest),
    null,
  )
  return { count, free: Math.max(0, rest), out, drying, over: Math.max(0, -rest), nextWetAtMs }
}

/** Boards that can be used today: what somebody said, else all that the shop has. */
export function usableBoards({ marks }: State, shop: Shop): number {
  const mark = marks.get(boardsMark())
  return mark?.kind === 'boards' ? mark.usable : shop.boards.count
}

/** Whether pieces of a variety lie on a wet board before the flip. Unknown varieties do: better a board too many. */
export function needsBoard(shop: Shop, varietyId: VarietyId): boolean {
  const variety = shop.varieties.get(varietyId)
  return variety === undefined || (variety.bakedOn === 'board' && variety.flip)
}

/** Boards under a load of these lines: each line begins a board of its own. @example 24 sesame, 10 poppy at 6 // 4 + 2 */
export function boardsNeeded(shop: Shop, lines: readonly Line[]): number {
  return boardsWorth(
    shop,
    lines.filter((line) => needsBoard(shop, line.varietyId)),
  )
}

/** Floor that lines take on a hearth, in boards: pans and unflipped pieces lie there too, and all of it until the out. */
export function boardsWorth(shop: Shop, lines: readonly { readonly pieces: number }[]): number {
  return lines.reduce((sum, line) => sum + boardsOf(shop, line.pieces), 0)
}

function boardsOf(shop: Shop, pieces: number): number {
  return Math.ceil(pieces / shop.boards.pieces)
}

/** By variety; pieces of which nobody said what they become, by dough. */
function boardsBesideKettle(state: State, shop: Shop): number {
  const pieces = new Map<string, number>()
  for (const batch of state.batches.values()) {
    if (batch.stage !== 'boards') continue
    if (batch.varietyId !== null && !needsBoard(shop, batch.varietyId)) continue
    const line = batch.varietyId === null ? `dough ${batch.doughId}` : `variety ${batch.varietyId}`
    pieces.set(line, (pieces.get(line) ?? 0) + batch.pieces)
  }
  return [...pieces.values()].reduce((sum, some) => sum + boardsOf(shop, some), 0)
}

function boardsInOven(state: State): number {
  let boards = 0
  for (const load of state.loads.values()) if (load.phase === 'first-side') boards += load.boards
  return boards
}

interface Rewetting {
  readonly boards: number
  readonly wetAtMs: EpochMs
}

/** Boards of loads that are flipped, and of loads that have left their shelf. */
function rewetting(state: State): readonly Rewetting[] {
  const ofLoads = [...state.loads.values()].flatMap((load) =>
    load.phase === 'second-side' && load.boardsWetAtMs !== null
      ? [{ boards: load.boards, wetAtMs: load.boardsWetAtMs }]
      : [],
  )
  const ofShelves = [...state.shelves.values()].map((use) => ({ boards: use.boardsFreed, wetAtMs: use.boardsWetAtMs }))
  return [...ofLoads, ...ofShelves]
}
