import type { OrdersRead, ReadOrder } from '../../../shared-core/live/orders-import.ts'
import { Sideways } from '../sideways.tsx'
import { piecesOfLine } from './asked-draft.ts'
import { whenOf } from './order-times.ts'
import type { OrdersParts } from './parts.ts'

interface ImportRowsProps extends OrdersParts {
  readonly read: OrdersRead
}

/** As many as are looked over; the rest is understood in the same way. */
const SHOWN_MAX = 50

/** Orders as they are understood, and each row that cannot be read with its line and why. */
export function ImportRows(props: ImportRowsProps) {
  const { read, say } = props
  const { rowColumns } = say.files
  return (
    <>
      {read.faults.length > 0 && <Faults {...props} />}
      {read.orders.length === 0 ? (
        read.faults.length === 0 && <p class="desk-trouble">{say.files.nothing}</p>
      ) : (
        <>
          <h3>{say.files.understood(read.orders.length)}</h3>
          <Sideways name={say.files.understood(read.orders.length)}>
            <table class="sales-rows">
              <thead>
                <tr>
                  {(['rows', 'due', 'mark', 'name', 'what', 'way', 'state'] as const).map((column) => (
                    <th key={column} scope="col">
                      {rowColumns[column]}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {read.orders.slice(0, SHOWN_MAX).map((order) => (
                  <OrderRead key={order.rows.join()} {...props} order={order} />
                ))}
              </tbody>
            </table>
          </Sideways>
        </>
      )}
    </>
  )
}

function OrderRead(props: ImportRowsProps & { readonly order: ReadOrder }) {
  const { order, say, shop } = props
  const { dozenPieces } = shop.orders
  const what = [
    ...order.lines.map((line) => say.said.line({ ...line, pieces: piecesOfLine(line, dozenPieces) }, dozenPieces)),
    ...order.items.map((item) => say.said.item(item, item.times)),
  ]
  return (
    <tr>
      <td>{say.files.lines(order.rows)}</td>
      <td>{whenOf(order.dueAtMs, props)}</td>
      <td>{order.mark ?? order.ref ?? ''}</td>
      <td>{`${order.name} ${order.phone}`.trim()}</td>
      <td>
        {what.join('; ')}
        {order.guessed.map(({ text, meant }) => (
          <span key={text} class="orders-small desk-quiet">
            {say.files.guessed(text, meant)}
          </span>
        ))}
      </td>
      <td>{say.said.way[order.way]}</td>
      <td>{say.files.state[order.state]}</td>
    </tr>
  )
}

function Faults({ read, say }: ImportRowsProps) {
  return (
    <section class="desk-mistakes">
      <h3>{say.files.faults(read.faults.length)}</h3>
      <p class="desk-quiet">{say.files.faultsHint}</p>
      <ol>
        {read.faults.slice(0, SHOWN_MAX).map(({ line, cells, fault }, at) => (
          <li key={at} data-line={line}>
            <strong>{say.files.line(line)}</strong>
            <span class="orders-name">{say.files.fault(fault)}</span>
            <code class="desk-right">{cells.join(' | ')}</code>
          </li>
        ))}
      </ol>
    </section>
  )
}
