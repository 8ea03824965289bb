import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import type { OrdersSheet } from './sheet.ts'
import type { SheetProps } from './sheets.tsx'

export type OrdersLaterProps = SheetProps & { readonly sheet: OrdersSheet }

/** Orders come once the counter stands, so that it opens as quickly without them and has them without the server. */
export const fetchOrders = () => import('./orders/orders-part.tsx')

/** What cannot be fetched is closed again: the next touch asks anew. */
export function OrdersLater(props: OrdersLaterProps) {
  const [part, setPart] = useState<{ readonly Shown: ComponentType<OrdersLaterProps> } | null>(null)
  const { openSheet } = props.board
  // biome-ignore lint/correctness/useExhaustiveDependencies: fetched once.
  useEffect(() => {
    let isOpen = true
    fetchOrders().then(
      ({ OrdersPart }) => isOpen && setPart({ Shown: OrdersPart }),
      () => isOpen && openSheet(null),
    )
    return () => {
      isOpen = false
    }
  }, [])
  return part === null ? <section class="counter-sheet" /> : <part.Shown {...props} />
}
