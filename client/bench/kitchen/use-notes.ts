import { useEffect, useMemo, useState } from 'preact/hooks'
import type { State } from '../../../shared-core/day/state.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import { openDetailsBook } from '../../live/details-book.ts'

/** What was said with the orders that are to be made; the shop's server tells the bench notes and no names. */
export function useNotes({ orders }: Pick<State, 'orders'>): (order: Pick<Order, 'id' | 'details'>) => string {
  const [, setHeard] = useState(0)
  const notes = useMemo(openDetailsBook, [])
  useEffect(() => notes.subscribe(() => setHeard((count) => count + 1)), [notes])
  useEffect(() => notes.want([...orders.values()].filter(({ items }) => items.length > 0)), [notes, orders])
  return (order) => notes.of(order)?.note ?? ''
}
