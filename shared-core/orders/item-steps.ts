import type { OrderItem } from './order.ts'

/** Index of the part that an item waits with or that is begun; null: it is made, or there is nothing to make. */
export function stepNow({ steps }: Pick<OrderItem, 'steps'>): number | null {
  const at = steps.findIndex(({ madeAtMs }) => madeAtMs === null)
  return at === -1 ? null : at
}

/** Nothing of it is left to make; so is what has no parts. */
export function itemIsMade(item: Pick<OrderItem, 'steps'>): boolean {
  return stepNow(item) === null
}

/** Somebody has begun to make it: it does not change any more, and what it is made of is taken. */
export function itemIsBegun({ steps }: Pick<OrderItem, 'steps'>): boolean {
  return steps.some(({ begunAtMs, madeAtMs }) => begunAtMs !== null || madeAtMs !== null)
}
