import type { State } from '../day/state.ts'
import { orderId } from '../ids.ts'
import { hoursOn } from '../shop/hours.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Order, StandingOrder } from './order.ts'
import { occursOn } from './recurrence.ts'

/** A date of the shop, with its noon: the minutes of the day count from it. */
export interface OrdersAt {
  /** YYYY-MM-DD */
  readonly date: string
  readonly noonMs: EpochMs
}

const HALF_DAY_MS = 12 * 60 * 60_000

/**
 * What is ordered for a date: open orders that are due then, and the standing ones that come then. Of a day that is open
 * or over these are real orders already, or ended ones.
 * @returns by due time, ties by id
 */
export function dueOn(state: State, at: OrdersAt): readonly Order[] {
  const open = [...state.orders.values()].filter(({ dueAtMs }) => isOnDate(at, dueAtMs))
  const coming = isTakenUp(state, at.date) ? [] : standingOn(state, at)
  return [...open, ...coming].sort(byDue)
}

/**
 * The standing orders that come on a date, as orders. They do not come when the shop is closed, and on a holiday of its
 * calendar only where that was said. Those are left out that are among the open orders already.
 */
export function standingOn(state: State, at: OrdersAt): readonly Order[] {
  const { shop } = state
  if (shop === null || hoursOn(shop, at.date) === null) return []
  const isHoliday = isHolidayOn(shop, at.date)
  return [...state.standing.values()]
    .filter(({ recurrence, onHolidays }) => (onHolidays || !isHoliday) && occursOn(recurrence, at.date))
    .map((standing) => orderOf(standing, at))
    .filter(({ id }) => !state.orders.has(id))
    .sort(byDue)
}

/** Soonest due first, ties by id. */
export function byDue(one: Order, other: Order): number {
  return one.dueAtMs - other.dueAtMs || (one.id < other.id ? -1 : one.id > other.id ? 1 : 0)
}

/** Whether an instant lies on a date: half a day around its noon. */
export function isOnDate({ noonMs }: Pick<OrdersAt, 'noonMs'>, atMs: EpochMs): boolean {
  return atMs >= noonMs - HALF_DAY_MS && atMs < noonMs + HALF_DAY_MS
}

/** The day's opening has made orders of what stands for it. */
function isTakenUp({ day, lastDay }: State, date: string): boolean {
  if (day !== null) return date <= day.label
  return lastDay !== null && date <= lastDay.closedOn
}

function isHolidayOn({ specialDays }: Shop, date: string): boolean {
  for (const { kind, spans, retired } of specialDays.values())
    if (kind === 'holiday' && !retired && spans.some(({ from, to }) => from <= date && date <= to)) return true
  return false
}

function orderOf(standing: StandingOrder, { date, noonMs }: OrdersAt): Order {
  const { id, mark, way, runId, stop, dueMinute, lines, isPaid, details } = standing
  return {
    id: orderId(`${id}.${date}`),
    mark,
    takenAtMs: epochMs(Math.max(0, noonMs - HALF_DAY_MS)),
    dueAtMs: epochMs(Math.max(0, noonMs + (dueMinute - 720) * 60_000)),
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
