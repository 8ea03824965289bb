import type { Order } from '../../../shared-core/orders/order.ts'
import { itemsTyped } from './order-draft.ts'
import type { OrdersParts } from './parts.ts'

interface OrderWhatProps extends Pick<OrdersParts, 'say' | 'shop'> {
  readonly order: Pick<Order, 'lines' | 'items'>
  readonly note: string
}

/** What is ordered, a line each; what somebody must not get cannot be missed. */
export function OrderWhat({ order, note, say, shop }: OrderWhatProps) {
  const { dozenPieces } = shop.orders
  return (
    <ul class="orders-lines">
      {order.lines.map((line, at) => (
        <li key={at}>{say.said.line(line, dozenPieces)}</li>
      ))}
      {itemsTyped(order.items).map((item, at) => (
        <li key={at - 1_000} class={item.allergies.length > 0 ? 'orders-allergy' : undefined}>
          {say.said.item(item, item.times ?? 1)}
        </li>
      ))}
      {note !== '' && <li class="orders-note">{`“${note}”`}</li>}
    </ul>
  )
}
