import type { Case, Decision } from '../day/decision.ts'
import { refuse } from '../day/decision.ts'
import type { VarietyId } from '../ids.ts'
import type { MenuItem } from '../shop/kitchen.ts'
import type { Shop } from '../shop/shop.ts'
import type { ItemStep, OrderItem, OrderLine } from './order.ts'
import type { AskedItem, AskedLine } from './order-commands.ts'

/** What was asked for, in the form that an order has it. */

/** Why what is asked for cannot be taken; null when it can. Retired varieties may still be sold off. */
export function askedRefusal(
  shop: Shop,
  { lines, items }: { readonly lines: readonly AskedLine[]; readonly items: readonly AskedItem[] },
): Decision | null {
  if (lines.length + items.length === 0) return refuse('order-empty')
  for (const { varietyId, without, dozens, pieces } of lines) {
    if (dozens + pieces === 0) return refuse('order-empty')
    const unknown = [varietyId, ...without].find((id) => id !== null && !shop.varieties.has(id))
    if (unknown !== undefined) return refuse('unknown-variety', { varietyId: unknown })
    if (varietyId === null && !hasAnyLeft(shop, without)) return refuse('order-nothing-left')
  }
  for (const item of items) {
    const refusal = itemRefusal(shop, item)
    if (refusal !== null) return refusal
  }
  return null
}

function hasAnyLeft(shop: Shop, without: readonly VarietyId[]): boolean {
  return [...shop.varieties.values()].some(({ id, retired }) => !retired && !without.includes(id))
}

function itemRefusal(shop: Shop, { itemId, varietyId, without, more }: AskedItem): Decision | null {
  const item = shop.menu.get(itemId)
  if (item === undefined) return refuse('unknown-menu-item', { itemId })
  if (item.retired) return refuse('retired', { itemId })
  if (item.onBagel && varietyId === null) return refuse('which-bagel', { itemId })
  if (varietyId !== null && !shop.varieties.has(varietyId)) return refuse('unknown-variety', { varietyId })
  const portion = [...without, ...more].find((id) => !shop.portions.has(id))
  return portion === undefined ? null : refuse('unknown-portion', { portionId: portion })
}

export function orderLines({ shop }: Case, lines: readonly AskedLine[]): readonly OrderLine[] {
  return lines.map(({ dozens, pieces, ...line }) => ({
    ...line,
    // What a mixed dozen must not have says nothing of a line of one variety.
    without: line.varietyId === null ? line.without : [],
    dozens,
    pieces: dozens * shop.orders.dozenPieces + pieces,
  }))
}

/** @param from the number of the first of them */
export function orderItems({ shop }: Case, items: readonly AskedItem[], from: number): readonly OrderItem[] {
  let no = from
  return items.flatMap((asked) => {
    const item = shop.menu.get(asked.itemId)
    if (item === undefined) return []
    return Array.from({ length: asked.times }, (): OrderItem => {
      const { times: _times, varietyId, ...rest } = asked
      const made: OrderItem = {
        ...rest,
        no,
        varietyId: item.onBagel ? varietyId : null,
        toasted: item.canToast && asked.toasted,
        steps: item.steps.map(waiting),
      }
      no += 1
      return made
    })
  })
}

function waiting({ stationId, takesMs, oven }: MenuItem['steps'][number]): ItemStep {
  return { stationId, takesMs, oven, begunAtMs: null, shelfId: null, turned: 0, madeAtMs: null }
}
