import type { Day, State } from '../day/state.ts'
import type { EpochMs } from '../units.ts'
import type { Order } from './order.ts'

const HALF_A_DAY_MS = 12 * 3_600_000

/**
 * Orders that a day's close ends: due on it, or until it is closed where that is past midnight; in id order. Whoever waits
 * at the counter is of the day on which they came: a day that nobody closed ends with the next morning's first act, when
 * that morning's guests may stand there already.
 */
export function ordersOver({ orders }: State, { noonMs }: Day, closedAtMs: EpochMs): readonly Order[] {
  const untilMs = noonMs === null ? closedAtMs : Math.max(closedAtMs, noonMs + HALF_A_DAY_MS - 1)
  return [...orders.values()]
    .filter(({ way, dueAtMs, takenAtMs }) => (way === 'here' ? takenAtMs : dueAtMs) <= untilMs)
    .sort((one, other) => (one.id < other.id ? -1 : 1))
}
