import type { VarietyLot } from '../day/events.ts'
import type { Line, State } from '../day/state.ts'
import type { OrderId, VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { byDue } from './due-on.ts'
import { mixedOf } from './mixed-of.ts'
import type { Order } from './order.ts'
import type { SpokenFor } from './spoken-for.ts'
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
const KEEP_AHEAD_MS = 4 * 60 * 60_000

/**
 * Which pieces of what just came out are kept for which orders: of the varieties that are ordered by name, soonest due
 * first, never more than is ordered and not kept yet. Mixed lines are filled when the order is picked; what one that is due
 * sooner will need of this load, as the rods have not enough for it, is not kept for a later one.
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
  const needs = dueSoon(state, outAtMs).map((order) => stillToKeep(order, kept.get(order.id) ?? []))
  const rods = new Map([...state.stock.values()].map(({ varietyId, lots }) => [varietyId, piecesOf(lots)]))
  const keeps = needs.map((some) => keptOf(some, free, rods))
  // A load is for a handful of orders by name; to look through all five hundred for each would make a tap wait.
  const last = [...keeps.entries()].filter(([, lines]) => lines.size > 0).reverse()
  needs.forEach((some, at) => {
    const later = last.flatMap(([of, lines]) => (of > at ? [lines] : []))
    for (const need of some) if (need.varietyId === null) leaveFor(shop, need, [rods, free, ...later])
  })
  return keeps.flatMap((lines, at): KeepNow[] => {
    const orderId = needs[at]?.[0]?.orderId
    const some = [...lines].filter(([, pieces]) => pieces > 0)
    if (orderId === undefined || some.length === 0) return []
    return [{ orderId, lines: some.map(([varietyId, pieces]) => ({ varietyId, pieces })) }]
  })
}

/** A mixed line has what the rods have, else what is for nobody by name, else what is for the last due by name. */
function leaveFor(shop: Shop, need: SpokenFor, from: readonly Map<VarietyId, number>[]): void {
  let open = need.pieces
  for (const there of from) open -= piecesOf(mixedOf(shop, need, open, there))
}

function dueSoon({ orders }: State, outAtMs: number): readonly Order[] {
  return [...orders.values()].filter(({ dueAtMs }) => isKeptFrom(dueAtMs, outAtMs)).sort(byDue)
}

/** Whether pieces that come out at an instant are kept for what is due then. */
export function isKeptFrom(dueAtMs: EpochMs, outAtMs: number): boolean {
  return dueAtMs - outAtMs <= KEEP_AHEAD_MS
}

/** Takes them off what is free; what the load lacks is wanted of the rods. */
function keptOf(
  needs: readonly SpokenFor[],
  free: Map<VarietyId, number>,
  rods: Map<VarietyId, number>,
): Map<VarietyId, number> {
  const takes = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of needs) {
    if (varietyId === null) continue
    const some = takeOff(free, varietyId, pieces)
    takeOff(rods, varietyId, pieces - some)
    if (some > 0) takes.set(varietyId, (takes.get(varietyId) ?? 0) + some)
  }
  return takes
}

/** @returns how many of them were there */
function takeOff(there: Map<VarietyId, number>, varietyId: VarietyId, pieces: number): number {
  const has = there.get(varietyId) ?? 0
  const some = Math.min(pieces, has)
  there.set(varietyId, has - some)
  return some
}
