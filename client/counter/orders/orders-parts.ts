import type { DetailsBook } from '../../live/details-book.ts'
import type { CounterOrderWords } from '../../words/counter-orders.ts'
import type { SheetProps } from '../sheets.tsx'

/** What each page of the orders is given. */
export interface OrdersProps extends SheetProps {
  readonly say: CounterOrderWords
  readonly book: DetailsBook
}
