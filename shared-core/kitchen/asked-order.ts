import { orderId } from '../ids.ts'
import type { Order, OrderItem } from '../orders/order.ts'
import type { AskedItem } from '../orders/order-commands.ts'
import { epochMs } from '../units.ts'
import type { Kitchen } from './model.ts'
import { itemsOf } from './model.ts'
import { byDue } from './parts.ts'

/** What somebody asks for as an order that is taken now and waited for at the counter. */
export function askedOrder({ shop, nowMs }: Kitchen, items: readonly AskedItem[]): Order {
  let no = 0
  const made = items.flatMap(({ itemId, times, varietyId, toasted, without, more, allergies }): OrderItem[] =>
    Array.from({ length: times }, () => {
      no += 1
      const steps = (shop.menu.get(itemId)?.steps ?? []).map((step) => ({ ...step, ...NOT_BEGUN }))
      return { no, itemId, varietyId, toasted, without, more, allergies, steps }
    }),
  )
  return {
    id: orderId('asked'),
    mark: '',
    takenAtMs: nowMs,
    dueAtMs: epochMs(nowMs + shop.orders.madeInMs),
    way: 'here',
    runId: null,
    stop: 0,
    lines: [],
    items: made,
    isPaid: false,
    details: 0,
    standing: null,
    ref: null,
    isRisk: false,
  }
}
const NOT_BEGUN = { begunAtMs: null, shelfId: null, turned: 0, madeAtMs: null } as const

/** The kitchen with one more order, in its place by due time. */
export function withOrder(kitchen: Kitchen, order: Order): Kitchen {
  const before = kitchen.items.findIndex((one) => byDue(one.order, order) > 0)
  const at = before === -1 ? kitchen.items.length : before
  return {
    ...kitchen,
    orders: [...kitchen.orders, order].sort(byDue),
    items: [...kitchen.items.slice(0, at), ...itemsOf(order), ...kitchen.items.slice(at)],
  }
}
