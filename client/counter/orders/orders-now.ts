import { kitchenQueue } from '../../../shared-core/kitchen/queue.ts'
import { ordersAtRisk } from '../../../shared-core/orders/at-risk.ts'
import { counterOrderWords } from '../../words/counter-orders.ts'
import type { CounterParts } from '../counter-screen.tsx'
import { makesToOrder } from '../idle-view.ts'
import type { RodTime } from '../rod-text.ts'
import type { OrdersNow } from '../use-orders-now.ts'
import { supplyAsked } from './orders-parts.ts'

/** What has to be known of orders at the rack: those at risk before their customers come, and those that are ready. */
export function ordersNow({ live, state, words }: CounterParts, time: RodTime): OrdersNow {
  const asked = state.orders.size === 0 ? null : supplyAsked({ live, state }, time)
  const atRisk = asked === null ? [] : ordersAtRisk(asked)
  const { waiting, ready } = hereOf({ state }, time)
  const open = state.orders.size
  const [first] = atRisk
  if (first === undefined) return { open, atRisk: 0, waiting: waiting.length, ready: ready.length, line: '' }
  const { list, one, promise } = counterOrderWords(words)
  const mark = state.orders.get(first.orderId)?.mark ?? ''
  const [save] = first.saves
  const short = list.missing(promise.short(first.missing))
  const line = `${one.title(mark)} ${list.atRisk}: ${short}${save === undefined ? '' : `, ${promise.save(save)}`}`
  return { open, atRisk: atRisk.length, waiting: waiting.length, ready: ready.length, line }
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
