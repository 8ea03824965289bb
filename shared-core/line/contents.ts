import type { Line, State } from '../day/state.ts'
import type { LoadId, VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'

/** What is in each load, by variety in the set-up's order. A load drawn in several outs shows what is still in. */
export function contentsByLoad(state: State, shop: Shop): ReadonlyMap<LoadId, readonly Line[]> {
  const sums = new Map<LoadId, Map<VarietyId, number>>()
  for (const { loadId, varietyId, pieces } of state.batches.values()) {
    // What goes into the oven is of a variety: the load tap says which.
    if (loadId === null || varietyId === null) continue
    const ofLoad = sums.get(loadId) ?? new Map<VarietyId, number>()
    sums.set(loadId, ofLoad.set(varietyId, (ofLoad.get(varietyId) ?? 0) + pieces))
  }
  return new Map([...sums].map(([loadId, ofLoad]) => [loadId, linesOf(ofLoad, shop)]))
}

/** Sums by variety as lines, in the set-up's order. */
export function linesOf(pieces: ReadonlyMap<VarietyId, number>, shop: Shop): readonly Line[] {
  return [...pieces]
    .map(([varietyId, sum]) => ({ varietyId, pieces: sum }))
    .sort((one, other) => byVariety(shop, one.varietyId, other.varietyId))
}

/** The set-up's order of varieties, ties by id. */
export function byVariety(shop: Shop, one: VarietyId, other: VarietyId): number {
  const order = (id: VarietyId) => shop.varieties.get(id)?.order ?? Number.MAX_SAFE_INTEGER
  return order(one) - order(other) || (one < other ? -1 : one > other ? 1 : 0)
}
