import { useMemo } from 'preact/hooks'
import { openDetailsBook } from '../../live/details-book.ts'
import { useDetails } from '../../parts/use-details.ts'
import { counterOrderWords } from '../../words/counter-orders.ts'
import type { OrdersLaterProps } from '../orders-later.tsx'
import '../../parts/order-ring.css'
import './orders.css'
import './take.css'
import './orders-phone.css'
import { ListSheet } from './list-sheet.tsx'
import { OrderSheet } from './order-sheet.tsx'
import { ordersNow } from './orders-now.ts'
import { SlipSheet } from './slip-sheet.tsx'
import { TakeSheet } from './take-sheet.tsx'

export { ordersNow }

/** Names that were fetched stay while this page is open: each sheet begins with them. */
const book = openDetailsBook()

/** The counter's pages of orders. */
export function OrdersPart(props: OrdersLaterProps) {
  const { state, live, words, sheet } = props
  const say = useMemo(() => counterOrderWords(words), [words])
  const open = useMemo(() => [...state.orders.values()], [state])
  useDetails(book, open, live)
  const parts = { ...props, say, book }
  switch (sheet.kind) {
    case 'orders':
      return <ListSheet {...parts} />
    case 'order':
      return <OrderSheet key={sheet.orderId} {...parts} orderId={sheet.orderId} />
    case 'take':
      return <TakeSheet key={sheet.orderId} {...parts} orderId={sheet.orderId} />
    case 'slip':
      return <SlipSheet {...parts} />
  }
}
