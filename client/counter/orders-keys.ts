import type { State } from '../../shared-core/day/state.ts'
import type { IdleInput, IdleKey } from './idle-view.ts'
import { keptForNobody } from './kept-view.ts'

/** The menu has something that is made to order. */
export function makesToOrder({ shop }: State): boolean {
  return shop !== null && [...shop.menu.values()].some(({ retired }) => !retired)
}

export function slipKey({ orders, words: { counter } }: IdleInput): IdleKey {
  return {
    id: 'slip',
    label: counter.orders.slip,
    detail: counter.orders.slipSummary(orders.waiting, orders.ready),
    spoken: '',
    tone: orders.ready > 0 ? 'act' : 'strong',
    refusal: '',
    share: 2,
    does: { kind: 'open', sheet: { kind: 'slip' } },
  }
}

/** What is kept for nobody that the board knows has the key while no order is open; among orders it is one of them. */
export function hasOrdersKey(state: State): boolean {
  return state.orders.size > 0 || keptForNobody(state).length === 0
}

export function ordersKey({ orders, words }: IdleInput): IdleKey {
  return {
    id: 'orders',
    label: words.counter.orders.title,
    detail: words.counter.orders.summary(orders.open, orders.risks.length),
    spoken: '',
    tone: orders.risks.length > 0 ? 'late' : 'plain',
    refusal: '',
    share: 2,
    does: { kind: 'open', sheet: { kind: 'orders' } },
  }
}
