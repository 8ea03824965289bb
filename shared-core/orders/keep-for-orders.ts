import type { Case } from '../day/decision.ts'
import { happen } from '../day/decision.ts'
import type { KeptPart, VarietyLot } from '../day/events.ts'
import type { Line } from '../day/state.ts'
import { keepId } from '../ids.ts'
import { wantOf } from '../line/lines.ts'
import { oldestOf } from '../stock/decide-stock.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { keepNow } from './keep-now.ts'

/** What just came out of the oven is kept at once for the orders that wait for it. */
export function keepForOrders(oneCase: Case, lots: readonly VarietyLot[], atMs: EpochMs): void {
  const { state, shop } = oneCase
  let free = lots
  for (const { orderId, lines } of keepNow(state, shop, lots)) {
    const parts = lines.map((line) => keptPart(oneCase, line, free))
    const taken = new Map(parts.flatMap(({ takes }) => takes.map(({ batchId, pieces }) => [batchId, pieces])))
    const readyAtMs = free.reduce((last, { lot }) => (taken.has(lot.id) ? Math.max(last, lot.readyAtMs) : last), 0)
    free = free.map((one) => {
      const pieces = one.lot.pieces - (taken.get(one.lot.id) ?? 0)
      return { ...one, lot: { ...one.lot, pieces } }
    })
    const keep = { id: keepId(oneCase.newId()), lines, keptAtMs: atMs, outAtMs: atMs, orderId }
    happen(oneCase, atMs, { type: 'kept', keep: { ...keep, readyAtMs: epochMs(readyAtMs) }, parts })
  }
}

function keptPart({ shop }: Case, line: Line, free: readonly VarietyLot[]): KeptPart {
  const { varietyId } = line
  const lots = free.filter((one) => one.varietyId === varietyId).map(({ lot }) => lot)
  return { varietyId, doughId: wantOf(shop, line).doughId, takes: oldestOf(lots, line.pieces), found: 0 }
}
