import { useState } from 'preact/hooks'
import type { OrderId } from '../../../shared-core/ids.ts'
import { itemIsBegun } from '../../../shared-core/orders/item-steps.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { localDate, minuteOfDay } from '../../live/clock-text.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { ItemsField } from './items-field.tsx'
import { LinesField } from './lines-field.tsx'
import type { DraftClock, OrderDraft } from './order-draft.ts'
import { askedOrder, dueAt, keepsItems, missingIn, newOrder, orderTyped } from './order-draft.ts'
import { withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'
import { PromiseNote } from './promise-note.tsx'
import { usePromise } from './use-promise.ts'
import { WhenFields } from './when-fields.tsx'
import { detailsOfOrder, isOnItsWay } from './who.ts'
import { WhoFields } from './who-fields.tsx'

interface OrderPageProps extends OrdersParts {
  /** Null: a new one, due on `date` (null: today). */
  readonly orderId: OrderId | null
  readonly date: string | null
}

/** One order is taken or changed: when, what, for whom, with what can be promised beside it. */
export function OrderPage(props: OrderPageProps) {
  const { orderId, date, state, shop, say, room, book } = props
  const order = orderId === null ? null : (state.orders.get(orderId) ?? null)
  const clock: DraftClock = {
    noonOf: room.noonOf,
    dateOf: (atMs) => localDate(room.clock, atMs),
    minuteOf: (atMs) => minuteOfDay(room.clock, atMs),
  }
  const [draft, setDraft] = useState<OrderDraft>(() =>
    order === null ? newOrder(date ?? room.today) : orderTyped(order, shop.orders.dozenPieces, clock),
  )
  const [typed, setTyped] = useState<OrderDetails | null>(null)
  const back = addressOf('orders', withinOf({ kind: 'day', date: draft.date === room.today ? null : draft.date }))
  if (orderId !== null && order === null)
    return (
      <p>
        {say.form.unknown} <a href={addressOf('orders')}>{say.form.back}</a>
      </p>
    )
  const known = order === null ? null : detailsOfOrder(order, state, book)
  const change = (some: Partial<OrderDraft>) => setDraft({ ...draft, ...some })
  const isBegun = order?.items.some(itemIsBegun)
  return (
    <>
      <p>
        <a href={back}>← {say.form.back}</a>
      </p>
      <Panel part="order" title={order === null ? say.form.newTitle : say.form.changeTitle(order.mark)} isWide>
        <div class="orders-compose">
          <div class="orders-form">
            <WhenFields {...props} draft={draft} onChange={change} />
            <LinesField {...props} lines={draft.lines} onChange={(lines) => change({ lines })} />
            <ItemsField
              {...props}
              items={draft.items}
              isBegun={isBegun === true}
              onChange={(items) => change({ items })}
            />
            <WhoFields
              {...props}
              draft={draft}
              markHint={say.form.markHint}
              details={typed ?? known}
              isComing={order !== null && isOnItsWay(order, known)}
              onChange={change}
              onDetails={setTyped}
            />
          </div>
          <Taking {...props} draft={draft} order={order} clock={clock} typed={typed} known={known} onChange={change} />
        </div>
      </Panel>
    </>
  )
}

interface TakingProps extends OrderPageProps {
  readonly draft: OrderDraft
  readonly order: Order | null
  readonly clock: DraftClock
  readonly typed: OrderDetails | null
  readonly known: OrderDetails | null
  readonly onChange: (some: Partial<OrderDraft>) => void
}

/** What is missing or cannot be promised, and the key. */
function Taking(props: TakingProps) {
  const { store, shop, say, draft, order, clock, typed, known } = props
  const missing = missingIn(draft, shop)
  const promise = usePromise(props, draft, order?.id ?? null)
  const isRisk = promise !== null && !promise.holds
  const send = () => {
    if (missing.length > 0) return
    const asked = askedOrder(draft, clock, { typed, known })
    const sent =
      order === null
        ? store.send({ type: 'takeOrder', ...asked, ...(isRisk ? { isRisk } : {}) })
        : store.send({
            type: 'changeOrder',
            orderId: order.id,
            ...asked,
            ...(keepsItems(draft, order) ? { keepsItems: true } : {}),
          })
    if (sent === null) return
    const due = dueAt(draft, clock)
    window.location.hash = addressOf('orders', withinOf({ kind: 'day', date: due === null ? null : clock.dateOf(due) }))
  }
  return (
    <div class="orders-take">
      <PromiseNote {...props} promise={promise} />
      {missing.map((one) => (
        <p key={one} class="desk-quiet">
          {say.form.missing[one]}
        </p>
      ))}
      <button type="button" class="desk-strong desk-large" disabled={missing.length > 0} onClick={send}>
        {order !== null ? say.form.save : isRisk ? say.form.takeAtRisk : say.form.take}
      </button>
    </div>
  )
}
