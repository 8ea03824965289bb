import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import { estimateOf } from '../stock/estimate.ts'
import { leaksOf } from '../stock/leak.ts'
import type { EpochMs } from '../units.ts'

/** Pieces of each rod that have probably left since it was last known, though the books still have them. */
export function unseenNow(state: State, nowMs: EpochMs): ReadonlyMap<VarietyId, number> {
  const leaks = leaksOf(state)
  const salesFrom = state.shop?.counter.salesFrom
  if (leaks === null || salesFrom === undefined) return new Map()
  return new Map(
    [...state.stock.values()].map((stock) => {
      const lots = stock.lots.filter(({ readyAtMs }) => readyAtMs <= nowMs)
      return [stock.varietyId, piecesOf(lots) - estimateOf(leaks, { stock, lots, nowMs, salesFrom }).mean]
    }),
  )
}
