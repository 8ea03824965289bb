import type { Case } from '../day/decision.ts'
import type { VarietyLot } from '../day/events.ts'
import type { Keep } from '../day/state.ts'
import type { OrderId } from '../ids.ts'
import { batchId } from '../ids.ts'
import { wantOf } from '../line/lines.ts'

/** What is kept for an order, the first kept first. */
export function keepsOf({ state }: Case, id: OrderId): readonly Keep[] {
  return [...state.keeps.values()]
    .filter((keep) => keep.orderId === id)
    .sort((one, other) => one.keptAtMs - other.keptAtMs || (one.id < other.id ? -1 : 1))
}

/** The pieces of a keep as lots for sale again. */
export function releasedLots(oneCase: Case, { lines, outAtMs, readyAtMs }: Keep): readonly VarietyLot[] {
  return lines.map((line) => ({
    varietyId: line.varietyId,
    doughId: wantOf(oneCase.shop, line).doughId,
    lot: { id: batchId(oneCase.newId()), pieces: line.pieces, outAtMs, readyAtMs },
  }))
}
