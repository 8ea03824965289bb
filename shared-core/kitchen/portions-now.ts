import type { State } from '../day/state.ts'
import type { PortionId } from '../ids.ts'
import { itemIsBegun } from '../orders/item-steps.ts'
import type { OrderItem } from '../orders/order.ts'
import { inUse } from '../shop/in-order.ts'
import type { MenuItem } from '../shop/kitchen.ts'
import type { EpochMs } from '../units.ts'

/** What is left of one kind of portion, and how much of it open orders will take. */
export interface PortionNow {
  readonly portionId: PortionId
  readonly name: string
  /** As counted, less what was taken since; null: nobody has counted it, so that it limits nothing. */
  readonly left: number | null
  /** Of these, portions of items that are ordered and not begun yet. More than are left: some cannot be made. */
  readonly spokenFor: number
  /** What a new order may have; null as `left`. */
  readonly free: number | null
  readonly countedAtMs: EpochMs | null
}

/** In the set-up's order. @returns empty without a set-up */
export function portionsNow(state: State): readonly PortionNow[] {
  const { shop } = state
  if (shop === null) return []
  const spoken = spokenFor(state)
  return inUse(shop.portions).map(({ id, name }) => {
    const counted = state.portions.get(id)
    const left = counted?.portions ?? null
    const taken = spoken.get(id) ?? 0
    const free = left === null ? null : Math.max(0, left - taken)
    return { portionId: id, name, left, spokenFor: taken, free, countedAtMs: counted?.countedAtMs ?? null }
  })
}

function spokenFor({ orders, shop }: State): ReadonlyMap<PortionId, number> {
  const sums = new Map<PortionId, number>()
  for (const { items } of orders.values()) {
    for (const item of items) {
      const made = shop?.menu.get(item.itemId)
      if (made === undefined || itemIsBegun(item)) continue
      for (const [portionId, portions] of portionsOf(made, item))
        sums.set(portionId, (sums.get(portionId) ?? 0) + portions)
    }
  }
  return sums
}

/** What one item uses up: nothing of what is left out, once more of what is asked for more of. */
export function portionsOf(
  { portions }: Pick<MenuItem, 'portions'>,
  { without, more }: Pick<OrderItem, 'without' | 'more'>,
): ReadonlyMap<PortionId, number> {
  const sums = new Map<PortionId, number>()
  for (const { portionId, portions: some } of portions) if (!without.includes(portionId)) sums.set(portionId, some)
  for (const portionId of more) sums.set(portionId, (sums.get(portionId) ?? 0) + 1)
  return sums
}
