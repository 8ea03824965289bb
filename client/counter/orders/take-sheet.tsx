import { useEffect, useState } from 'preact/hooks'
import type { OrderId } from '../../../shared-core/ids.ts'
import type { OrderDetails } from '../../../shared-core/orders/order-commands.ts'
import { nextSlip } from '../../../shared-core/orders/slip-number.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { Key } from '../../parts/key.tsx'
import type { TakeStep } from '../../words/counter-orders.ts'
import { makesToOrder } from '../orders-keys.ts'
import { Back, Wide } from '../small-key.tsx'
import { allPieces, splitAsked } from './asked.ts'
import { OrdersFoot } from './orders-foot.tsx'
import type { OrdersProps } from './orders-parts.ts'
import { dueText } from './row-text.ts'
import type { Taking } from './taking.ts'
import { NEW_TAKING, NO_DETAILS, takingCommand, takingOf } from './taking.ts'
import { Things } from './things.tsx'
import type { When } from './use-promise.ts'
import { useWhen } from './use-promise.ts'
import { WhatStep } from './what-step.tsx'
import { WhenStep } from './when-step.tsx'
import { WhoStep } from './who-step.tsx'

export interface TakeProps extends OrdersProps {
  readonly shop: Shop
  readonly taking: Taking
  readonly setTaking: (taking: Taking) => void
  readonly when: When
  /** Takes it in two parts: what can go now, and the rest. */
  readonly split: () => void
}

/** Takes an order, or changes one: what, when, for whom, in any sequence; the key that takes it says what is missing. */
export function TakeSheet(props: OrdersProps & { readonly orderId: OrderId | null }) {
  const { shop } = props.state
  return shop === null ? <section class="counter-sheet" /> : <TakeOf {...props} shop={shop} />
}

function TakeOf(props: OrdersProps & { readonly orderId: OrderId | null; readonly shop: Shop }) {
  const { store, state, board, say, shop, orderId } = props
  const { taking, setTaking, before } = useTaking(props)
  const [step, setStep] = useState<TakeStep>('what')
  const when = useWhen(props, taking, shop)
  const done = () => board.openSheet({ kind: 'orders' })
  const split = () => {
    const parts = when.promised?.split ?? null
    if (parts === null) return
    const { now, rest } = splitAsked(taking.asked, parts.nowLines, shop.orders.dozenPieces)
    const said = { isRisk: false, before }
    const mark = taking.mark.trim() === '' ? String(nextSlip(state)) : taking.mark
    store.send(takingCommand({ ...taking, asked: now }, board.time.nowMs, said))
    store.send(takingCommand({ ...taking, asked: rest, mark, slip: NEW_TAKING.slip }, parts.restAtMs, said))
    done()
  }
  const take = { ...props, taking, setTaking, when, split }
  const mark = orderId === null ? undefined : state.orders.get(orderId)?.mark
  const title = mark === undefined ? say.take.title : say.take.changeTitle(mark)
  const steps: readonly TakeStep[] = ['what', ...(makesToOrder(state) ? (['made'] as const) : []), 'when', 'who']
  return (
    <section class="counter-sheet counter-take" role="dialog" aria-label={title}>
      {step === 'what' && <WhatStep {...take} />}
      {step === 'made' && (
        <Things {...props} shop={shop} slip={taking.slip} setSlip={(slip) => setTaking({ ...taking, slip })} />
      )}
      {step === 'when' && <WhenStep {...take} />}
      {step === 'who' && <WhoStep {...take} />}
      <OrdersFoot {...props}>
        {steps.map((one) => (
          <Wide key={one} share={1} id={`take-${one}`}>
            <Key label={say.take.steps[one]} chosen={one === step} onPress={() => setStep(one)} />
          </Wide>
        ))}
        <TakeKey
          {...take}
          onTake={(dueAtMs) => {
            store.send(takingCommand(taking, dueAtMs, { isRisk: when.isRisk, before }))
            done()
          }}
        />
        <Back label={say.one.back} onPress={done} />
      </OrdersFoot>
    </section>
  )
}

/** What is typed; of an order that is changed it begins with what it is, its details as soon as they are there. */
function useTaking({
  state,
  book,
  shop,
  orderId,
}: OrdersProps & { readonly orderId: OrderId | null; readonly shop: Shop }) {
  const order = orderId === null ? undefined : state.orders.get(orderId)
  const known = order === undefined ? null : book.of(order)
  const [before, setBefore] = useState<OrderDetails | null>(known)
  const [taking, setTaking] = useState<Taking>(() => (order === undefined ? NEW_TAKING : takingOf(order, known, shop)))
  useEffect(() => {
    if (before !== null || known === null) return
    setBefore(known)
    setTaking((so) => (so.details === NO_DETAILS ? { ...so, details: known } : so))
  }, [before, known])
  return { taking, setTaking, before }
}

function TakeKey({
  live,
  say,
  shop,
  taking,
  when,
  onTake,
}: TakeProps & { readonly onTake: (dueAtMs: EpochMs) => void }) {
  const { take, names } = say
  const { lacks, dueAtMs, isRisk } = when
  const pieces = allPieces(taking.asked, shop.orders.dozenPieces)
  const things = taking.slip.items.reduce((sum, { times }) => sum + times, 0)
  const bagelFor = taking.slip.items.find(
    ({ itemId, varietyId }) => varietyId === null && shop.menu.get(itemId)?.onBagel,
  )
  const refusal = {
    pieces: take.needsPieces,
    time: take.needsTime,
    bagel: take.needsBagel(bagelFor === undefined ? '' : names.menuItem(bagelFor.itemId)),
  }
  const due = dueAtMs === null ? [] : [dueText({ order: { dueAtMs } }, say, live)]
  const much = [...(pieces > 0 ? [say.line.pieces(pieces)] : []), ...(things > 0 ? [`${things} ×`] : []), ...due]
  const label = taking.orderId !== null ? take.save : isRisk ? take.takeRisk : take.take
  return (
    <Wide share={3} id="take-it">
      <Key
        label={label}
        detail={much.join(', ')}
        tone={lacks !== null ? 'plain' : isRisk ? 'late' : 'act'}
        refusal={lacks === null ? undefined : refusal[lacks]}
        onPress={() => {
          if (dueAtMs !== null) onTake(dueAtMs)
        }}
      />
    </Wide>
  )
}
