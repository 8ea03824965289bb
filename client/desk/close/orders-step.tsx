import type { Order } from '../../../shared-core/orders/order.ts'
import { orderWords } from '../../words/orders.ts'
import { momentOf } from '../moment.ts'
import { itemsTyped } from '../orders/order-draft.ts'
import type { ClosingParts } from './closing.tsx'

interface OrdersStepProps extends ClosingParts {
  readonly open: readonly Order[]
}

/** Orders of the day that are still open: somebody fetched them, or nobody came. */
export function OrdersStep(parts: OrdersStepProps) {
  const { open, say } = parts
  if (open.length === 0) return <p class="desk-even">{`✓ ${say.orders.none}`}</p>
  return (
    <>
      <p class="desk-quiet">{say.orders.hint}</p>
      <ul class="desk-counts">
        {open.map((order) => (
          <OpenOrder key={order.id} {...parts} order={order} />
        ))}
      </ul>
    </>
  )
}

function OpenOrder({ store, live, shop, words, say, order }: OrdersStepProps & { readonly order: Order }) {
  const said = orderWords(words)
  const { id: orderId, mark } = order
  const { clock } = momentOf(order.dueAtMs, { ...live, shop, words })
  const what = [
    said.lines(order.lines, shop.orders.dozenPieces),
    ...itemsTyped(order.items).map((item) => said.item(item, item.times ?? 1)),
  ].filter((part) => part !== '')
  return (
    <li data-order={mark}>
      <span class="desk-count-name">
        <strong>{mark}</strong>{' '}
        <span class="desk-quiet">{`${say.orders.due(clock)}, ${said.way[order.way]}: ${what.join('; ')}`}</span>
      </span>
      <button
        type="button"
        class="desk-strong"
        aria-label={say.orders.actOf(say.orders.handedOver, mark)}
        onClick={() => store.send({ type: 'handOverOrder', orderId, lines: null })}
      >
        {say.orders.handedOver}
      </button>
      <button
        type="button"
        aria-label={say.orders.actOf(say.orders.nobodyCame, mark)}
        onClick={() => store.send({ type: 'missOrder', orderId })}
      >
        {say.orders.nobodyCame}
      </button>
    </li>
  )
}
