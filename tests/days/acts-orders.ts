import { ORDER_MAKERS } from '../core/support/any-order-act.ts'
import { drawer } from '../core/support/draw.ts'
import type { Scene, SmallAct } from './people.ts'

const COUNTER = ['counter', 'desk', 'bench'] as const
const AT_IT = ['counter', 'desk'] as const
const MORNING_ON = ['first-loads', 'morning', 'changeover', 'afternoon', 'close'] as const

/** Orders come all day, are made, handed over or not fetched; standing ones are few. */
export const AT_ORDERS: readonly SmallAct[] = [
  { roles: COUNTER, parts: MORNING_ON, weight: 6, do: some('takeOrder') },
  { roles: COUNTER, parts: MORNING_ON, weight: 1, do: some('changeOrder') },
  { roles: COUNTER, parts: MORNING_ON, weight: 1, do: some('cancelOrder') },
  { roles: COUNTER, parts: MORNING_ON, weight: 1, do: some('missOrder') },
  { roles: COUNTER, parts: MORNING_ON, weight: 4, do: some('handOverOrder') },
  { roles: COUNTER, parts: MORNING_ON, weight: 6, do: some('moveItems') },
  { roles: COUNTER, parts: 'all-day', weight: 1, do: some('countPortions') },
  { roles: AT_IT, parts: 'all-day', weight: 1, do: some('setStanding') },
  { roles: AT_IT, parts: MORNING_ON, weight: 1, do: some('endStanding') },
]

/** Nothing where there is no order that it could be about. */
function some(type: Exclude<keyof typeof ORDER_MAKERS, 'takeUpOrders'>): SmallAct['do'] {
  return ({ shown, chance }: Scene) => {
    const needsOrder = ['changeOrder', 'cancelOrder', 'missOrder', 'handOverOrder', 'moveItems'].includes(type)
    if (needsOrder && shown.orders.size === 0) return []
    if (type === 'endStanding' && shown.standing.size === 0) return []
    if (type === 'countPortions' && (shown.shop?.portions.size ?? 0) === 0) return []
    return [ORDER_MAKERS[type](shown, drawer(chance.word()))]
  }
}
