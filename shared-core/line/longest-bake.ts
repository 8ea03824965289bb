import type { VarietyId } from '../ids.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { loadWindow, windowOf } from '../shop/windows.ts'

/** Bake target of the slowest; of all varieties in use when none is named; 0 where no window says. */
export function longestBakeMs(shop: Shop, varietyIds: readonly VarietyId[]): number {
  const all = inUse(shop.varieties).map(({ id }) => id)
  return loadWindow(shop, 'bake', varietyIds.length > 0 ? varietyIds : all)?.targetMs ?? 0
}

/** The variety in use that bakes longest, the first of equals in the set-up's order; null where no window says. */
export function longestBaking(shop: Shop): VarietyId | null {
  let longest: { readonly id: VarietyId; readonly ms: number } | null = null
  for (const { id, doughId } of inUse(shop.varieties)) {
    const ms = windowOf(shop, 'bake', doughId, id)?.targetMs ?? 0
    if (ms > (longest?.ms ?? 0)) longest = { id, ms }
  }
  return longest?.id ?? null
}
