import { orderId } from '../ids.ts'
import type { Order } from '../orders/order.ts'
import { durationMs, later } from '../units.ts'
import type { Kitchen, KitchenItem } from './model.ts'
import { itemsOf } from './model.ts'

/** The newest orders tell what comes next: those of the shop's promise, as older ones may be handed over already. */
const REPEATS_MAX = 12
/** More than this is not needed to keep hands and oven busy. */
const ITEMS_MAX = 75

/**
 * What will probably be ordered until then: the last minutes once more, and again. All of it is due after what is there
 * now, but a hand that has begun it is not free, and a place that it has taken is not empty: without it a wait in a rush
 * would be told too short by minutes.
 */
export function toCome({ shop, nowMs, orders }: Kitchen, untilMs: number): readonly KitchenItem[] {
  const spanMs = shop.orders.madeInMs
  const recent = orders.filter(({ way, takenAtMs }) => way === 'here' && takenAtMs > nowMs - spanMs)
  const items: KitchenItem[] = []
  for (let turn = 1; turn <= REPEATS_MAX && recent.length > 0; turn += 1) {
    for (const order of recent) {
      const again = repeated(order, turn, durationMs(spanMs * turn))
      if (again.takenAtMs > untilMs || items.length >= ITEMS_MAX) return items
      items.push(...itemsOf(again).map((item) => ({ ...item, holdMs: again.takenAtMs })))
    }
  }
  return items
}

function repeated(order: Order, turn: number, byMs: ReturnType<typeof durationMs>): Order {
  return {
    ...order,
    id: orderId(`${order.id}+${turn}`),
    takenAtMs: later(order.takenAtMs, byMs),
    dueAtMs: later(order.dueAtMs, byMs),
    items: order.items.map((item) => ({
      ...item,
      steps: item.steps.map((step) => ({ ...step, begunAtMs: null, shelfId: null, turned: 0, madeAtMs: null })),
    })),
  }
}
