import { menuItemId, varietyId } from '../../../shared-core/ids.ts'
import type { AskedItem, AskedLine, OrderCommand } from '../../../shared-core/orders/order-commands.ts'
import type { OrderRules } from '../../../shared-core/shop/rules.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { at } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'
import { kitchenParts } from '../support/shop-kitchen.ts'

/** The test shop with a kitchen, a menu and a van. */
export function orderShop(rules: Partial<OrderRules> = {}, parts: Partial<Shop> = {}): Shop {
  const plain = shopWith({ ...kitchenParts(), ...parts })
  return { ...plain, orders: { ...plain.orders, ...rules } }
}

/** Six of a variety; null: a mixed line. */
export function askedLine(variety: string | null, parts: Partial<AskedLine> = {}): AskedLine {
  const id = variety === null ? null : varietyId(variety)
  return { varietyId: id, without: [], dozens: 0, pieces: 6, sliced: false, bagged: false, ...parts }
}

export function askedItem(item: string, parts: Partial<AskedItem> = {}): AskedItem {
  const made = { itemId: menuItemId(item), varietyId: null, toasted: false, without: [], more: [], allergies: [] }
  return { ...made, times: 1, ...parts }
}

/** Fetched at 9:00 under the mark AK, unless said otherwise. */
export function takeOrder(parts: Partial<Taking> = {}): Taking {
  const pickUp = { mark: 'AK', dueAtMs: at('9:00'), way: 'pickUp', runId: null, stop: 0 } as const
  return { type: 'takeOrder', ...pickUp, lines: [], items: [], isPaid: false, ...parts }
}

type Taking = Extract<OrderCommand, { type: 'takeOrder' }>

/** Somebody waits at the counter for things made to order. */
export function slip(...items: readonly AskedItem[]): Taking {
  return takeOrder({ mark: null, dueAtMs: null, way: 'here', items })
}
