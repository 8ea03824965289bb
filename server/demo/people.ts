import type { PersonId } from '../../shared-core/ids.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Draw } from './draw.ts'

/** Somebody of the demo's crew who does such a thing; null where the set-up names nobody. */
export function personFor(shop: Shop, draw: Draw): PersonId | null {
  const people = inUse(shop.people)
  return people[draw.whole(0, Math.max(0, people.length - 1))]?.id ?? null
}
