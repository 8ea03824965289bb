import type { State } from '../day/state.ts'
import { itemIsBegun } from '../orders/item-steps.ts'
import type { Order } from '../orders/order.ts'
import type { ItemPart } from '../orders/order-commands.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shelf, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { kitchenHours } from './kitchen-hours.ts'

/** What is due within so long after the close is still this day's work. Common practice, no source. */
const AFTER_CLOSE_MS = 3_600_000
/** How far ahead the kitchen looks where no day tells when it closes. */
const AHEAD_MS = 12 * 3_600_000

/** Names a part for sounds, pedals and "coming". @example partKey({ orderId: orderId('k7'), no: 2, step: 0 }) // 'k7:2:0' */
export function partKey({ orderId, no, step }: ItemPart): string {
  return `${orderId}:${no}:${step}`
}

/** Open orders with something made to order that are this day's work, by due time, then the older one. */
export function ordersInKitchen(state: State, nowMs: EpochMs): readonly Order[] {
  const { closesAtMs } = kitchenHours(state)
  const untilMs = closesAtMs === null ? nowMs + AHEAD_MS : Math.max(nowMs, closesAtMs + AFTER_CLOSE_MS)
  return [...state.orders.values()]
    .filter(({ items, dueAtMs }) => items.length > 0 && (dueAtMs <= untilMs || items.some(itemIsBegun)))
    .sort(byDue)
}

export function byDue(one: Order, other: Order): number {
  return one.dueAtMs - other.dueAtMs || one.takenAtMs - other.takenAtMs || (one.id < other.id ? -1 : 1)
}

/** The shelves that the second menu bakes on, in the set-up's order. */
export function shelvesWithSlots({ shelves }: Shop): readonly Shelf[] {
  return inUse(shelves).filter(({ slots }) => slots > 0)
}
