import type { OrderRow } from './day-view.ts'
import { clockOf } from './order-times.ts'
import { OrderWhat } from './order-what.tsx'
import type { OrdersParts } from './parts.ts'

interface PickSheetProps extends OrdersParts {
  readonly date: string
  readonly rows: readonly OrderRow[]
  readonly shopName: string
}

/** The picking list on paper, by due time: black on white, a box for each order. On a screen it is not shown. */
export function PickSheet(props: PickSheetProps) {
  const { rows, shopName, date, say, words } = props
  const { columns } = say.picking
  return (
    <article class="desk-sheet orders-sheet" aria-label={say.picking.title}>
      <h1>{say.picking.title}</h1>
      <p>{`${words.times.date(date)}, ${date.slice(0, 4)} · ${shopName}`}</p>
      <table>
        <thead>
          <tr>
            <th>{columns.done}</th>
            <th>{columns.due}</th>
            <th>{columns.mark}</th>
            <th>{columns.what}</th>
            <th>{columns.way}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ order, details }) => (
            <tr key={order.id}>
              <td>
                <span class="orders-box" />
              </td>
              <td class="orders-due">{clockOf(order.dueAtMs, props)}</td>
              <th scope="row">
                <strong>{order.mark}</strong>
                {details !== null && details.name !== '' && <div>{details.name}</div>}
              </th>
              <td>
                <OrderWhat {...props} order={order} note={details?.note ?? ''} />
              </td>
              <td>
                {say.said.way[order.way]}
                {!order.isPaid && <div>{say.said.notPaid}</div>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </article>
  )
}
