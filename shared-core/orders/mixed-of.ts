import type { Line } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { takeFrom } from '../stock/assorted.ts'
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
  if (pieces <= 0) return []
  const fitting = inUse(shop.varieties)
    .filter(({ id }) => fits(line, id) && (there.get(id) ?? 0) > 0)
    .map(({ id, size }) => ({ id, isRegular: size === 'regular', there: there.get(id) ?? 0, taken: 0 }))
  let open = pieces
  for (const isRegular of [true, false])
    open = takeFrom(
      fitting.filter((one) => one.isRegular === isRegular),
      open,
    )
  const taken = new Map<VarietyId, number>()
  for (const one of fitting) {
    if (one.taken === 0) continue
    taken.set(one.id, one.taken)
    there.set(one.id, one.there - one.taken)
  }
  return linesOf(taken, shop)
}
