import type { Line } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { fits } from './spoken-for.ts'

/**
 * Mixed pieces out of what is there, each of the variety that has most left for each one taken; regular sizes first.
 * @param there is lessened by what is taken
 * @returns fewer than `pieces` where there are not as many
 */
export function mixedOf(
  shop: Shop,
  line: Parameters<typeof fits>[0],
  pieces: number,
  there: Map<VarietyId, number>,
): readonly Line[] {
  const fitting = inUse(shop.varieties).filter(({ id }) => fits(line, id))
  const taken = new Map<VarietyId, number>()
  for (const isRegular of [true, false]) {
    const some = fitting.filter(({ size }) => (size === 'regular') === isRegular)
    const all = new Map(some.map(({ id }) => [id, there.get(id) ?? 0]))
    while ([...taken.values()].reduce((sum, n) => sum + n, 0) < pieces) {
      let best: VarietyId | null = null
      for (const { id } of some) {
        const has = taken.get(id) ?? 0
        if (has >= (all.get(id) ?? 0)) continue
        const bestHas = best === null ? 0 : (taken.get(best) ?? 0)
        if (best === null || (all.get(id) ?? 0) * (bestHas + 1) > (all.get(best) ?? 0) * (has + 1)) best = id
      }
      if (best === null) break
      taken.set(best, (taken.get(best) ?? 0) + 1)
    }
  }
  for (const [id, n] of taken) there.set(id, (there.get(id) ?? 0) - n)
  return linesOf(taken, shop)
}
