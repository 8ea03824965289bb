import type { MenuItemId, PortionId, VarietyId } from '../../../shared-core/ids.ts'
import type { AskedItem, OrderCommand } from '../../../shared-core/orders/order-commands.ts'
import { TIMES_MAX } from '../../../shared-core/orders/order-limits.ts'
import type { MenuItem } from '../../../shared-core/shop/kitchen.ts'
import type { Allergen, Shop } from '../../../shared-core/shop/shop.ts'

/** Things made to order, as they are touched together; the last line of all is what a touch of an option changes. */
export interface Slip {
  readonly items: readonly AskedItem[]
  /** Index of the item that options change; -1: there is none. */
  readonly chosen: number
}

export const EMPTY_SLIP: Slip = { items: [], chosen: -1 }

/** A thing once more: the chosen one becomes two of the same, another thing is a line of its own. */
export function withThing({ items, chosen }: Slip, itemId: MenuItemId): Slip {
  if (items[chosen]?.itemId === itemId) {
    const more = (item: AskedItem) => ({ ...item, times: Math.min(TIMES_MAX, item.times + 1) })
    return { items: replaced(items, chosen, more), chosen }
  }
  const item = { itemId, varietyId: null, toasted: false, without: [], more: [], allergies: [], times: 1 }
  return { items: [...items, item], chosen: items.length }
}

/** The same thing with nothing said of it yet, beside the chosen one: one with, one without onion. */
export function withAnother({ items, chosen }: Slip): Slip {
  const like = items[chosen]
  if (like === undefined) return { items, chosen }
  const item = { ...like, toasted: false, without: [], more: [], allergies: [], times: 1 }
  return { items: [...items, item], chosen: items.length }
}

/** One of the chosen thing fewer; the last one goes with what was said of it. */
export function withOneLess({ items, chosen }: Slip): Slip {
  const item = items[chosen]
  if (item === undefined) return { items, chosen }
  if (item.times > 1) return { items: replaced(items, chosen, () => ({ ...item, times: item.times - 1 })), chosen }
  const rest = items.filter((_, index) => index !== chosen)
  return { items: rest, chosen: Math.min(chosen, rest.length - 1) }
}

export function withChosen(slip: Slip, chosen: number): Slip {
  return { ...slip, chosen }
}

export function withBagel(slip: Slip, varietyId: VarietyId): Slip {
  return changed(slip, (item) => ({ ...item, varietyId }))
}

export function withToasted(slip: Slip): Slip {
  return changed(slip, (item) => ({ ...item, toasted: !item.toasted }))
}

/**
 * Where a filling stands: as the menu has it, left out, or more of it; a touch goes on to the next. One that the thing
 * is not made with can only be added.
 */
export function withPortionTurned(slip: Slip, portionId: PortionId, isOwn: boolean): Slip {
  const others = (ids: readonly PortionId[]) => ids.filter((one) => one !== portionId)
  return changed(slip, (item) => {
    if (item.more.includes(portionId)) return { ...item, more: others(item.more) }
    if (isOwn && !item.without.includes(portionId)) return { ...item, without: [...item.without, portionId] }
    return { ...item, without: others(item.without), more: [...item.more, portionId] }
  })
}

export function withAllergy(slip: Slip, allergen: Allergen): Slip {
  return changed(slip, (item) => {
    const has = item.allergies.includes(allergen)
    return {
      ...item,
      allergies: has ? item.allergies.filter((one) => one !== allergen) : [...item.allergies, allergen],
    }
  })
}

function changed({ items, chosen }: Slip, change: (item: AskedItem) => AskedItem): Slip {
  return { items: replaced(items, chosen, change), chosen }
}

function replaced(
  items: readonly AskedItem[],
  at: number,
  change: (item: AskedItem) => AskedItem,
): readonly AskedItem[] {
  return items.map((item, index) => (index === at ? change(item) : item))
}

/** The first thing that still lacks its bagel: it cannot be begun. Null: none does. */
export function lacksBagel({ items }: Slip, shop: Shop): MenuItem | null {
  for (const { itemId, varietyId } of items) {
    const item = shop.menu.get(itemId)
    if (item?.onBagel === true && varietyId === null) return item
  }
  return null
}

/** Digits of a number that a till or a roll of paper gives. */
const DIGITS_MOST = 4

export function withDigit(mark: string, digit: string): string {
  return (mark + digit).replace(/^0+/, '').slice(0, DIGITS_MOST)
}

/** The command of a slip for somebody who waits; it was paid where it was ordered. @param mark null: the next number */
export function slipCommand({ items }: Slip, mark: string | null): OrderCommand {
  return {
    type: 'takeOrder',
    mark: mark === '' ? null : mark,
    dueAtMs: null,
    way: 'here',
    runId: null,
    stop: 0,
    lines: [],
    items,
    isPaid: true,
  }
}
