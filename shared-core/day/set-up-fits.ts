import { shopMisfits } from '../shop/set-up-rules.ts'
import type { Shop } from '../shop/shop.ts'

/** Whether a shop may become another: its parts fit, and no variety has moved to another dough. */
export function fits(before: Shop, after: Shop): boolean {
  return doughMoved(before, after).length + shopMisfits(after).length === 0
}

/**
 * Varieties that would be of another dough. Their pieces are booked by dough, today's and all before: a variety of
 * another dough is a new one.
 */
export function doughMoved(before: Shop | null, after: Shop): readonly { readonly id: string }[] {
  const known = [...(before?.varieties.values() ?? [])]
  return known.filter(({ id, doughId }) => after.varieties.get(id)?.doughId !== doughId)
}
