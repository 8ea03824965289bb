import { useState } from 'preact/hooks'
import type { OrderId } from '../../../shared-core/ids.ts'
import type { OrderRow } from './day-view.ts'
import { OrderRowCells } from './order-row.tsx'
import type { OrdersParts } from './parts.ts'

interface OrdersTableProps extends OrdersParts {
  readonly rows: readonly OrderRow[]
}

/** As many rows as are looked over at once; a caterer's day has hundreds. */
const ROWS_AT_FIRST = 60

/** Orders under each other by due time. Acts stand in the row; what cannot be undone from here asks once, there. */
export function OrdersTable(props: OrdersTableProps) {
  const { rows, say } = props
  const [most, setMost] = useState(ROWS_AT_FIRST)
  const [asked, setAsked] = useState<OrderId | null>(null)
  const { columns } = say.day
  return (
    <>
      <table class="desk-cards orders-table">
        <thead>
          <tr>
            <th>{columns.due}</th>
            <th>{columns.mark}</th>
            <th>{columns.what}</th>
            <th>{columns.way}</th>
            <th>{columns.paid}</th>
            <th class="desk-number">{columns.kept}</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, most).map((row) => (
            <OrderRowCells
              key={row.order.id}
              {...props}
              row={row}
              isAsked={asked === row.order.id}
              onAsk={(isAsked) => setAsked(isAsked ? row.order.id : null)}
            />
          ))}
        </tbody>
      </table>
      {rows.length > most && (
        <button type="button" onClick={() => setMost(rows.length)}>
          {say.day.more(rows.length - most)}
        </button>
      )}
    </>
  )
}
