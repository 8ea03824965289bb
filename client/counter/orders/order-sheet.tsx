import { useMemo, useState } from 'preact/hooks'
import type { OrderId } from '../../../shared-core/ids.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { Pick } from '../../../shared-core/orders/picks.ts'
import { pickOf } from '../../../shared-core/orders/picks.ts'
import { Key } from '../../parts/key.tsx'
import { PageKeys } from '../page-keys.tsx'
import { Back, Wide } from '../small-key.tsx'
import { OrderKeys } from './order-keys.tsx'
import { ItemLines, PickLines } from './order-lines.tsx'
import { OrdersFoot, TakeBackKey } from './orders-foot.tsx'
import type { OrdersProps } from './orders-parts.ts'
import { dueText } from './row-text.ts'
import { usePages } from './use-pages.ts'

/** What is asked before it is done: it ends the order. */
export type Asked = 'missed' | 'cancelled' | 'short'

/** One order: whom it is for, what is kept of it, and what can be done with it. */
export function OrderSheet(props: OrdersProps & { readonly orderId: OrderId }) {
  const { state, say, board, orderId } = props
  const order = state.orders.get(orderId)
  if (order !== undefined) return <OpenOrder {...props} order={order} />
  return (
    <section class="counter-sheet" role="dialog" aria-label={say.list.title}>
      <div class="counter-sheet-head counter-alone">
        <h1>{say.one.gone}</h1>
      </div>
      <OrdersFoot {...props}>
        <TakeBackKey {...props} share={3} />
        <Back label={say.one.back} onPress={() => board.openSheet({ kind: 'orders' })} />
      </OrdersFoot>
    </section>
  )
}

function OpenOrder(props: OrdersProps & { readonly order: Order }) {
  const { state, say, board, order } = props
  const [asked, ask] = useState<Asked | null>(null)
  const { nowMs } = board.time
  const pick = useMemo(() => pickOf(state, order, nowMs), [state, order, nowMs])
  const open = { ...props, pick }
  const { ref, page, pages, turn } = usePages<HTMLDivElement>()
  return (
    <section class="counter-sheet" role="dialog" aria-label={say.one.title(order.mark)}>
      <OrderHead {...open} />
      <div class="counter-order-body" ref={ref}>
        <OrderBody {...open} />
      </div>
      <OrderKeys {...open} asked={asked} ask={ask} />
      <OrdersFoot {...props}>
        {pages > 1 && <PageKeys page={page} pages={pages} words={props.words} onPage={turn} direction="across" />}
        <Wide share={2}>
          <Key label={say.one.change} onPress={() => board.openSheet({ kind: 'take', orderId: order.id })} />
        </Wide>
        <Wide share={2}>
          <Key label={say.one.cancel} onPress={() => ask('cancelled')} />
        </Wide>
        <TakeBackKey {...props} share={3} />
        <Back label={say.one.back} onPress={() => board.openSheet({ kind: 'orders' })} />
      </OrdersFoot>
    </section>
  )
}

export type OrderProps = OrdersProps & { readonly order: Order; readonly pick: Pick }

function OrderHead({ live, say, book, order }: OrderProps) {
  const { one, said } = say
  const details = book.of(order)
  const how = [
    dueText({ order }, say, live),
    one.way(order.way, order.runId),
    ...(order.stop > 0 ? [say.take.stop(order.stop)] : []),
    order.isPaid ? said.paid : said.notPaid,
    one.taken(order.takenAtMs),
    ...(order.isRisk ? [one.isRisk] : []),
  ]
  const who = details === null ? [] : [details.name, details.phone].filter((text) => text !== '')
  return (
    <div class="counter-sheet-head counter-order-title">
      <h1>{[order.mark, ...who].join(' · ')}</h1>
      <p>{how.join(' · ')}</p>
      {details !== null && details.note !== '' && <p class="counter-order-note">{details.note}</p>}
      {details === null && order.details > 0 && <p>{one.detailsLater}</p>}
    </div>
  )
}

function OrderBody(props: OrderProps) {
  const { say, board, order, pick } = props
  const risk = board.orders.risks.find(({ orderId }) => orderId === order.id)
  return (
    <>
      {risk !== undefined && (
        <div class="counter-order-risk" role="alert">
          <strong>
            {say.list.atRisk}: {say.list.missing(say.promise.short(risk.missing))}
          </strong>
          {risk.saves.slice(0, 2).map((save) => (
            <span key={save.code}>{say.promise.save(save)}</span>
          ))}
        </div>
      )}
      <PickLines {...props} pick={pick} />
      <ItemLines {...props} />
    </>
  )
}
