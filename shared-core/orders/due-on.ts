import type { State } from '../day/state.ts'
import type { EpochMs } from '../units.ts'
import { notTakenUp } from './comes-on.ts'
import type { Order } from './order.ts'
import { standingAsOrder } from './take-up.ts'

/** A date of the shop, with its noon: the minutes of the day count from it. */
export interface OrdersAt {
  /** YYYY-MM-DD */
  readonly date: string
  readonly noonMs: EpochMs
}

const HALF_DAY_MS = 12 * 60 * 60_000

/**
 * What is ordered for a date: open orders that are due then, and the standing ones that come then and of which no order
 * was made yet. What was handed over is none any more.
 * @returns by due time, ties by id
 */
export function dueOn(state: State, at: OrdersAt): readonly Order[] {
  const open = [...state.orders.values()].filter(({ dueAtMs }) => isOnDate(at, dueAtMs))
  return [...open, ...standingOn(state, at)].sort(byDue)
}

/** The standing ones of these. */
export function standingOn(state: State, { date, noonMs }: OrdersAt): readonly Order[] {
  if (state.shop === null) return []
  return notTakenUp(state, state.shop, date).map((standing) => standingAsOrder(standing, date, noonMs, noonMs))
}

/** Soonest due first, ties by id. */
export function byDue(one: Order, other: Order): number {
  return one.dueAtMs - other.dueAtMs || (one.id < other.id ? -1 : one.id > other.id ? 1 : 0)
}

/** Whether an instant lies on a date: half a day around its noon. */
export function isOnDate({ noonMs }: Pick<OrdersAt, 'noonMs'>, atMs: EpochMs): boolean {
  return atMs >= noonMs - HALF_DAY_MS && atMs < noonMs + HALF_DAY_MS
}
