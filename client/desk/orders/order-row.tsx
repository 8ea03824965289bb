import type { Recurrence } from '../../../shared-core/orders/recurrence.ts'
import { addressOf } from '../place.ts'
import type { OrderRow } from './day-view.ts'
import { clockOf, dateOf } from './order-times.ts'
import { OrderWhat } from './order-what.tsx'
import { withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'
import { sameStanding } from './standing-draft.ts'

interface OrderRowProps extends OrdersParts {
  readonly row: OrderRow
  /** It is asked whether it shall really be cancelled. */
  readonly isAsked: boolean
  readonly onAsk: (isAsked: boolean) => void
}

export function OrderRowCells(props: OrderRowProps) {
  const { row, say, words, live } = props
  const { order, details, risk } = row
  const { columns } = say.day
  const isOverdue = order.dueAtMs < live.nowMs && !row.isComing
  return (
    <tr class={risk !== null ? 'orders-at-risk' : undefined} data-order={order.mark}>
      <td class="orders-due" data-label={columns.due}>
        <strong>{clockOf(order.dueAtMs, props)}</strong>
        {isOverdue && <span class="desk-trouble orders-small">{say.day.overdue}</span>}
      </td>
      <th scope="row">
        <span class="orders-mark">{order.mark}</span>
        {details !== null && details.name !== '' && <span class="orders-name">{details.name}</span>}
        {details !== null && details.phone !== '' && <span class="orders-name desk-quiet">{details.phone}</span>}
        {order.standing !== null && <span class="orders-small desk-quiet">{say.day.standing}</span>}
      </th>
      <td class="orders-what" data-label={columns.what}>
        <OrderWhat {...props} order={order} note={details?.note ?? ''} />
        {order.isRisk && <span class="orders-small">{say.day.isRisk}</span>}
      </td>
      <td data-label={columns.way}>
        {say.said.way[order.way]}
        {order.runId !== null && (
          <span class="orders-small">
            {`${say.day.run(words.names.run(order.runId))}${order.stop > 0 ? ` · ${order.stop}` : ''}`}
          </span>
        )}
      </td>
      <td data-label={columns.paid}>{order.isPaid ? say.said.paid : say.said.notPaid}</td>
      <td class="desk-number" data-label={columns.kept}>
        {row.pieces > 0 && say.day.keptOf(row.kept, row.pieces)}
        {order.items.length > 0 && <span class="orders-small">{say.day.madeOf(row.made, order.items.length)}</span>}
      </td>
      <td class="orders-of">
        <div class="orders-acts">
          <Acts {...props} />
        </div>
      </td>
    </tr>
  )
}

function Acts(props: OrderRowProps) {
  const { store, row, say, isAsked, onAsk } = props
  const { order } = row
  const { mark, id: orderId } = order
  if (row.isComing) return <ComingActs {...props} />
  if (isAsked)
    return (
      <span class="orders-ask" role="alert">
        <span>{say.day.sureToCancel(mark)}</span>
        <button type="button" class="desk-strong" onClick={() => store.send({ type: 'cancelOrder', orderId })}>
          {say.day.yesCancel}
        </button>
        <button type="button" onClick={() => onAsk(false)}>
          {say.day.noCancel}
        </button>
      </span>
    )
  return (
    <>
      <a
        class="desk-button"
        href={addressOf('orders', withinOf({ kind: 'order', orderId }))}
        aria-label={say.day.actOf(say.day.change, mark)}
      >
        {say.day.change}
      </a>
      <button
        type="button"
        aria-label={say.day.actOf(say.day.handedOver, mark)}
        onClick={() => store.send({ type: 'handOverOrder', orderId, lines: null })}
      >
        {say.day.handedOver}
      </button>
      <button type="button" aria-label={say.day.actOf(say.day.cancel, mark)} onClick={() => onAsk(true)}>
        {say.day.cancel}
      </button>
    </>
  )
}

/** Of a standing order of a day to come: it is left out on that day, or changed for all of them. */
function ComingActs(props: OrderRowProps) {
  const { store, state, row, say } = props
  const { mark, standing: of, dueAtMs } = row.order
  const standing = of === null ? undefined : state.standing.get(of.standingId)
  if (standing === undefined) return null
  const date = of?.date ?? dateOf(dueAtMs, props)
  const { recurrence } = standing
  const without: Recurrence = {
    ...recurrence,
    except: [...new Set([...recurrence.except, date])].sort(),
    also: recurrence.also.filter((one) => one !== date),
  }
  return (
    <>
      <a
        class="desk-button"
        href={addressOf('orders', withinOf({ kind: 'oneStanding', standingId: standing.id }))}
        aria-label={say.day.actOf(say.day.change, mark)}
      >
        {say.day.change}
      </a>
      <button
        type="button"
        aria-label={say.day.actOf(say.day.leaveOut, mark)}
        onClick={() => store.send({ ...sameStanding(standing, props.shop.orders.dozenPieces), recurrence: without })}
      >
        {say.day.leaveOut}
      </button>
    </>
  )
}
