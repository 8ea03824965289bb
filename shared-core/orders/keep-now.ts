import type { VarietyLot } from '../day/events.ts'
import type { Line, State } from '../day/state.ts'
import type { OrderId, VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { byDue } from './due-on.ts'
import type { Order } from './order.ts'
import { keptByOrder, stillToKeep } from './spoken-for.ts'

/** What just came out and is for an order. */
export interface KeepNow {
  readonly orderId: OrderId
  readonly lines: readonly Line[]
}

/**
 * A piece is not kept for longer than this: it would grow old in a bag while somebody goes without, and a later load
 * brings a fresher one. What no later load brings is said as an order at risk (`at-risk.ts`). Common practice, no source.
 */
export const KEEP_AHEAD_MS = 4 * 60 * 60_000

/**
 * Which pieces of what just came out are kept for which orders: of the varieties that are ordered by name, soonest due
 * first, never more than is ordered and not kept yet. Mixed lines are filled when the order is picked.
 * @param lots what came out
 * @returns nothing where the shop does not keep pieces as they come (`OrderRules.keepsAsTheyCome`)
 */
export function keepNow(state: State, shop: Shop, lots: readonly VarietyLot[]): readonly KeepNow[] {
  const free = new Map<VarietyId, number>()
  let outAtMs = 0
  for (const { varietyId, lot } of lots) {
    free.set(varietyId, (free.get(varietyId) ?? 0) + lot.pieces)
    outAtMs = Math.max(outAtMs, lot.outAtMs)
  }
  if (!shop.orders.keepsAsTheyCome || free.size === 0) return []
  const kept = keptByOrder(state)
  return dueSoon(state, outAtMs).flatMap((order): KeepNow[] => {
    const lines = keptOf(order, kept.get(order.id) ?? [], free)
    return lines.length === 0 ? [] : [{ orderId: order.id, lines }]
  })
}

function dueSoon({ orders }: State, outAtMs: number): readonly Order[] {
  return [...orders.values()].filter(({ dueAtMs }) => isKeptFrom(dueAtMs, outAtMs)).sort(byDue)
}

/** Whether pieces that come out at an instant are kept for what is due then. */
export function isKeptFrom(dueAtMs: EpochMs, outAtMs: number): boolean {
  return dueAtMs - outAtMs <= KEEP_AHEAD_MS
}

/** Takes them off what is free. */
function keptOf(order: Order, kept: readonly Line[], free: Map<VarietyId, number>): readonly Line[] {
  const takes = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of stillToKeep(order, kept)) {
    if (varietyId === null) continue
    const there = free.get(varietyId) ?? 0
    const some = Math.min(pieces, there)
    if (some === 0) continue
    free.set(varietyId, there - some)
    takes.set(varietyId, (takes.get(varietyId) ?? 0) + some)
  }
  return [...takes].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}
