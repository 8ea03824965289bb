import type { Ruler } from '../../shared-core/day/ruler.ts'
import type { State } from '../../shared-core/day/state.ts'
import { ordersAtRisk } from '../../shared-core/orders/at-risk.ts'
import { dueOn } from '../../shared-core/orders/due-on.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { LiveState } from '../live/shop-store.ts'
import { supplyNow } from '../parts/supply-now.ts'
import type { NextOrder } from '../words/wall-kitchen.ts'
import type { OrdersNow } from './orders-told.ts'
import { NO_ORDERS } from './orders-told.ts'

/** Further ahead than this, other things are nearer. */
const AHEAD_MS = 3 * 60 * 60_000
/** One that nobody has fetched is still told for so long. */
const PAST_MS = 30 * 60_000

/** @param ruler the day's; null: the shop is closed, and nothing is fetched */
export function ordersNow(
  state: State,
  live: Pick<LiveState, 'shopClock' | 'plan' | 'outlook'>,
  nowMs: EpochMs,
  ruler: Ruler | null,
): OrdersNow {
  if (ruler === null || state.orders.size + state.standing.size === 0) return NO_ORDERS
  const asked = supplyNow(live, state, nowMs)
  if (asked === null) return NO_ORDERS
  const risks = ordersAtRisk(asked).map((risk) => ({ ...risk, mark: state.orders.get(risk.orderId)?.mark ?? '' }))
  return { risks, next: nextOrders(state, { nowMs, date: asked.date, noonMs: asked.noonOf(asked.date) }) }
}

interface At {
  readonly nowMs: EpochMs
  readonly date: string
  readonly noonMs: EpochMs
}

function nextOrders(state: State, { nowMs, date, noonMs }: At): readonly NextOrder[] {
  return dueOn(state, { date, noonMs })
    .filter(({ way, dueAtMs }) => way !== 'here' && dueAtMs >= nowMs - PAST_MS && dueAtMs <= nowMs + AHEAD_MS)
    .map(({ id, mark, dueAtMs, lines }) => {
      const keeps = [...state.keeps.values()].filter(({ orderId }) => orderId === id)
      const kept = keeps.reduce((sum, keep) => sum + keep.lines.reduce((all, line) => all + line.pieces, 0), 0)
      return { mark, dueAtMs, kept, pieces: lines.reduce((sum, line) => sum + line.pieces, 0) }
    })
    .filter(({ pieces }) => pieces > 0)
}
