import type { State } from '../../../shared-core/day/state.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import type { DetailsBook } from '../../live/details-book.ts'

/** Who ordered: as it was said of the order itself, else of the standing order that it is of. Null: nothing, or not here yet. */
export function detailsOfOrder(
  order: Order,
  { standing }: Pick<State, 'standing'>,
  book: Pick<DetailsBook, 'of'>,
): OrderDetails | null {
  const own = book.of(order)
  if (own !== null || order.standing === null) return own
  const of = standing.get(order.standing.standingId)
  return of === undefined ? null : book.of(of)
}

/** Whether something that was said is not here yet: it must not be typed over. */
export function isOnItsWay(one: { readonly details: number }, known: OrderDetails | null): boolean {
  return one.details > 0 && known === null
}
