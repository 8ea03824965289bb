import type { State } from '../day/state.ts'
import { itemIsMade } from '../orders/item-steps.ts'
import type { Order } from '../orders/order.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Ahead } from './ahead.ts'
import { ordersInKitchen } from './parts.ts'
import type { ReadyOrder, WaitingOrder } from './queue.ts'

export function ordersWaiting({ kitchen, completeMs }: Ahead): readonly WaitingOrder[] {
  return kitchen.orders
    .filter(({ items }) => !items.every(itemIsMade))
    .map((order) => {
      const { id, mark, way, takenAtMs, dueAtMs, items } = order
      const atMs = completeMs.get(id) ?? Number.POSITIVE_INFINITY
      const status = kitchen.nowMs > dueAtMs ? 'late' : atMs > dueAtMs ? 'due' : 'coming'
      const made = items.filter(itemIsMade).length
      const readyAtMs = Number.isFinite(atMs) ? epochMs(atMs) : null
      const progress = { readyAtMs, items: items.length, made, hasAllergy: hasAllergy(order), status } as const
      return { orderId: id, mark, way, takenAtMs, dueAtMs, ...progress }
    })
}

/** Orders of which everything made to order is made. */
export function readyOrders(state: State, nowMs: EpochMs): readonly ReadyOrder[] {
  const kept = keptByOrder(state)
  return ordersInKitchen(state, nowMs)
    .filter(({ items }) => items.every(itemIsMade))
    .map((order) => {
      const { id, mark, way, takenAtMs, dueAtMs, lines } = order
      const ordered = lines.reduce((sum, { pieces }) => sum + pieces, 0)
      const piecesMissing = Math.max(0, ordered - (kept.get(id) ?? 0))
      const progress = { madeAtMs: madeAt(order), piecesMissing, hasAllergy: hasAllergy(order) }
      return { orderId: id, mark, way, takenAtMs, dueAtMs, ...progress }
    })
    .sort((one, other) => one.madeAtMs - other.madeAtMs || (one.orderId < other.orderId ? -1 : 1))
}

function madeAt({ items, takenAtMs }: Order): EpochMs {
  const all = items.flatMap(({ steps }) => steps.map(({ madeAtMs }) => madeAtMs ?? takenAtMs))
  return epochMs(Math.max(takenAtMs, ...all))
}

function hasAllergy({ items }: Order): boolean {
  return items.some(({ allergies }) => allergies.length > 0)
}

function keptByOrder({ keeps }: State): ReadonlyMap<string, number> {
  const sums = new Map<string, number>()
  for (const { orderId, lines } of keeps.values()) {
    if (orderId === undefined) continue
    sums.set(orderId, (sums.get(orderId) ?? 0) + lines.reduce((sum, { pieces }) => sum + pieces, 0))
  }
  return sums
}
