import { kitchenQueue } from '../../../shared-core/kitchen/queue.ts'
import type { AtRisk } from '../../../shared-core/orders/at-risk.ts'
import { ordersAtRisk } from '../../../shared-core/orders/at-risk.ts'
import { supplyNow } from '../../parts/supply-now.ts'
import { counterOrderWords } from '../../words/counter-orders.ts'
import type { CounterParts } from '../counter-screen.tsx'
import { makesToOrder } from '../orders-keys.ts'
import type { RodTime } from '../rod-text.ts'
import type { OrdersNow } from '../use-orders-now.ts'

/** What has to be known of orders at the rack: those at risk before their customers come, and those that are ready. */
export function ordersNow({ live, state, words }: CounterParts, time: RodTime): Omit<OrdersNow, 'open'> {
  const asked = state.orders.size === 0 ? null : supplyNow(live, state, time.nowMs)
  const risks = asked === null ? [] : ordersAtRisk(asked)
  const { waiting, ready } = hereOf({ state }, time)
  return { risks, waiting: waiting.length, ready: ready.length, lines: riskLines({ state, words }, risks) }
}

function riskLines(
  { state, words }: Pick<CounterParts, 'state' | 'words'>,
  [first]: readonly AtRisk[],
): readonly string[] {
  if (first === undefined) return []
  const { list, one, promise } = counterOrderWords(words)
  const mark = state.orders.get(first.orderId)?.mark ?? ''
  const [save] = first.saves
  const who = `${one.title(mark)} ${list.atRisk}`
  const short = `${who}: ${list.missing(promise.short(first.missing))}`
  return [...(save === undefined ? [] : [`${short}, ${promise.save(save)}`]), short, who]
}

/** Those at the counter: who waits, and whose order is ready, the one first that has been ready longest. */
export function hereOf({ state }: Pick<CounterParts, 'state'>, { nowMs }: Pick<RodTime, 'nowMs'>) {
  if (!makesToOrder(state)) return { waiting: [], ready: [] }
  const { orders, ready } = kitchenQueue(state, nowMs)
  return {
    waiting: orders.filter(({ way }) => way === 'here'),
    ready: ready.filter(({ way }) => way === 'here'),
  }
}
