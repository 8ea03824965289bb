import { useMemo } from 'preact/hooks'
import type { ReadyOrder, WaitingOrder } from '../../../shared-core/kitchen/queue.ts'
import { Key } from '../../parts/key.tsx'
import { useMeasuredWidth } from '../../parts/measured-width.ts'
import { OrderRing } from '../../parts/order-ring.tsx'
import { strung } from '../../parts/strung.ts'
import { textWidthPx } from '../../parts/text-width.ts'
import { hereOf } from './orders-now.ts'
import type { OrdersProps } from './orders-parts.ts'
import { ringsOf } from './queue-view.ts'

/** Whose order is ready, and those who wait, strung on a rod by when they were told that theirs is. */
export function QueueRow(props: OrdersProps) {
  const { state, say, board } = props
  const { nowMs } = board.time
  const { waiting, ready } = useMemo(() => hereOf({ state }, { nowMs }), [state, nowMs])
  return (
    <div class="counter-queue">
      <ReadyKey {...props} ready={ready} />
      {waiting.length === 0 ? (
        <p class="counter-queue-none">{say.slip.nobodyWaits}</p>
      ) : (
        <QueueRod {...props} waiting={waiting} />
      )}
    </div>
  )
}

function ReadyKey({ store, say, board, ready }: OrdersProps & { readonly ready: readonly ReadyOrder[] }) {
  const [first] = ready
  if (first === undefined) return null
  const { slip } = say
  const more = ready.length > 1 ? [slip.moreReady(ready.length - 1)] : []
  return (
    <div class="counter-ready">
      <Key
        label={slip.handOver(first.mark)}
        detail={[slip.readySince(first.madeAtMs), ...more].join(', ')}
        tone="act"
        onPress={() => {
          // Pieces that have to be picked first are shown line by line.
          if (first.piecesMissing > 0) board.openSheet({ kind: 'order', orderId: first.orderId })
          else store.send({ type: 'handOverOrder', orderId: first.orderId, lines: null })
        }}
      />
    </div>
  )
}

/** The rings' height in sizes of a key; the wait stands under each. */
const RING_SHARE = 0.62

function QueueRod({ live, state, say, sizes, waiting }: OrdersProps & { readonly waiting: readonly WaitingOrder[] }) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const { keyPx, gapPx, quietPx } = sizes
  const ringPx = Math.round(keyPx * RING_SHARE)
  const rings = ringsOf(waiting, live.nowMs, state.shop?.orders.madeInMs ?? 0)
  const fromMs = live.nowMs
  const toMs = Math.max(fromMs + 60_000, ...rings.map(({ dueAtMs }) => dueAtMs))
  const sized = rings.map((ring) => {
    const text = say.times.span(ring.waitsMs)
    return {
      ...ring,
      key: ring.orderId,
      atMs: ring.dueAtMs,
      text,
      widthPx: Math.ceil(Math.max(ringPx, textWidthPx(text, quietPx))),
    }
  })
  const { placed, hidden } = strung(sized, { fromMs, toMs, widthPx, gapPx, morePx: Math.round(quietPx * 2.4) })
  const left = new Map(placed.map(({ key, leftPx }) => [key, leftPx]))
  return (
    <div
      class="counter-queue-rod"
      ref={ref}
      role="img"
      aria-label={say.slip.spokenQueue(rings.map(({ mark }) => mark))}
    >
      <span class="counter-queue-pole" style={{ top: `${ringPx / 2}px` }} />
      {sized.map(({ key, mark, text, widthPx: ownPx, state: ringState, fraction, hasAllergy }) => {
        const at = left.get(key)
        if (at === undefined) return null
        return (
          <span key={key} class="counter-queue-ring" data-waits={mark} style={{ left: `${at}px`, width: `${ownPx}px` }}>
            <OrderRing fraction={fraction} state={ringState} mark={mark} size={ringPx} isAllergy={hasAllergy} />
            <span>{text}</span>
          </span>
        )
      })}
      {hidden > 0 && <strong class="counter-queue-more">{say.counter.day.others(hidden)}</strong>}
    </div>
  )
}
