import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { State } from '../day/state.ts'
import { orderId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { notTakenUp } from './comes-on.ts'
import { endOrder } from './decide-orders.ts'
import type { Order, StandingOrder } from './order.ts'
import type { OrderCommand } from './order-commands.ts'

const MINUTE_MS = 60_000

/** Whether something is to be done that nobody taps: standing orders of the open day, orders that nobody fetched. */
export function ordersToTakeUp(state: State, nowMs: EpochMs): boolean {
  const { shop, day } = state
  if (shop === null || day?.noonMs == null) return false
  return missed(state, nowMs).length > 0 || notTakenUp(state, shop, day.label).length > 0
}

export function decideTakeUpOrders(oneCase: Case<Extract<OrderCommand, { type: 'takeUpOrders' }>>): Decision {
  const { state } = oneCase
  const atMs = happenedAt(oneCase)
  for (const order of missed(state, atMs)) endOrder(oneCase, order, 'noShow', atMs)
  if (state.day?.noonMs != null) takeUpStanding(oneCase, state.day.label, state.day.noonMs, atMs)
  return oneCase.events.length === 0 ? refuse('nothing-due') : take(oneCase, { pieces: oneCase.events.length })
}

/** Real orders of those that stand, for the day that is open. */
export function takeUpStanding(oneCase: Case, label: string, noonMs: EpochMs, atMs: EpochMs): void {
  for (const standing of notTakenUp(oneCase.state, oneCase.shop, label)) {
    happen(oneCase, atMs, { type: 'orderTaken', order: standingAsOrder(standing, label, noonMs, atMs), slip: null })
    happen(oneCase, atMs, { type: 'standingSet', standing: { ...standing, takenUp: label } })
  }
}

/** The order of a date of one that stands. */
export function standingAsOrder(standing: StandingOrder, date: string, noonMs: EpochMs, takenAtMs: EpochMs): Order {
  const { id, mark, dueMinute, way, runId, stop, lines, isPaid, details } = standing
  return {
    id: orderId(`${id}.${date}`),
    mark,
    takenAtMs,
    dueAtMs: epochMs(noonMs + (dueMinute - 12 * 60) * MINUTE_MS),
    way,
    runId,
    stop,
    lines,
    items: [],
    isPaid,
    details,
    standing: { standingId: id, date },
    ref: null,
    isRisk: false,
  }
}

/** Nobody came for them in the time that the shop waits. Who waits at the counter, and what a van carries, is not missed. */
function missed({ shop, orders }: State, nowMs: EpochMs): readonly Order[] {
  const waitMs = shop?.orders.noShowMs ?? null
  if (waitMs === null) return []
  return [...orders.values()]
    .filter(({ way, dueAtMs }) => way === 'pickUp' && dueAtMs + waitMs < nowMs)
    .sort((one, other) => (one.id < other.id ? -1 : 1))
}
