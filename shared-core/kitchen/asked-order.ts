import { orderId } from '../ids.ts'
import type { Order, OrderItem } from '../orders/order.ts'
import type { AskedItem } from '../orders/order-commands.ts'
import { epochMs } from '../units.ts'
import type { Kitchen } from './model.ts'
import { itemsOf } from './model.ts'

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

/** The kitchen with one more order, in its place by due time; after those that are due with it. */
export function withOrder(kitchen: Kitchen, order: Order): Kitchen {
  const isLater = (one: Order) => one.dueAtMs > order.dueAtMs
  return {
    ...kitchen,
    orders: inserted(kitchen.orders, [order], isLater),
    items: inserted(kitchen.items, itemsOf(order), (one) => isLater(one.order)),
  }
}

function inserted<One>(all: readonly One[], some: readonly One[], isLater: (one: One) => boolean): readonly One[] {
  const later = all.findIndex(isLater)
  const at = later === -1 ? all.length : later
  return [...all.slice(0, at), ...some, ...all.slice(at)]
}
