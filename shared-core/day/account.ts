import { assertMixesAccounted } from '../dough/mix-left.ts'
import type { DoughId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { assert } from '../support.ts'
import type { Account, State } from './state.ts'

export const EMPTY_ACCOUNT: Account = {
  shaped: 0,
  carriedIn: 0,
  sold: 0,
  kitchen: 0,
  wasted: 0,
  given: 0,
  dayOld: 0,
  unexplained: 0,
}

/** Pieces of each dough that are somewhere: in a stage, in the oven, cooling, for sale or kept. */
export function piecesPresent(state: State): Map<DoughId, number> {
  const present = new Map<DoughId, number>()
  const add = (doughId: DoughId, pieces: number) => present.set(doughId, (present.get(doughId) ?? 0) + pieces)
  for (const batch of state.batches.values()) add(batch.doughId, batch.pieces)
  for (const stock of state.stock.values()) add(stock.doughId, piecesOf(stock.lots) + stock.kept + stock.dayOld)
  return present
}

/**
 * Pieces of each dough that the account cannot place: come in − gone out − present. Only doughs with a gap are listed,
 * so an empty map means that every piece is accounted for.
 */
export function accountGaps(state: State): Map<DoughId, number> {
  const present = piecesPresent(state)
  const gaps = new Map<DoughId, number>()
  for (const doughId of new Set([...present.keys(), ...state.account.keys()])) {
    const account = state.account.get(doughId) ?? EMPTY_ACCOUNT
    const gone = account.sold + account.kitchen + account.wasted + account.given + account.dayOld + account.unexplained
    const gap = account.shaped + account.carriedIn - gone - (present.get(doughId) ?? 0)
    if (gap !== 0) gaps.set(doughId, gap)
  }
  return gaps
}

/** @throws AssertionError when a piece, or dough of a mix, is not accounted for. */
export function assertAccounted(state: State): void {
  const gaps = accountGaps(state)
  assert(gaps.size === 0, `pieces not accounted for: ${JSON.stringify([...gaps])}`)
  assertMixesAccounted(state)
}
