import type { State } from '../day/state.ts'
import { hoursOn } from '../shop/hours.ts'
import type { Shop } from '../shop/shop.ts'
import type { StandingOrder } from './order.ts'
import { occursOn } from './recurrence.ts'

/**
 * Whether a standing order comes on a date: its rule says so, the shop is open, and it is no holiday that it leaves out.
 * @param isoDate YYYY-MM-DD
 */
export function comesOn(shop: Shop, { recurrence, onHolidays }: StandingOrder, isoDate: string): boolean {
  if (!occursOn(recurrence, isoDate) || hoursOn(shop, isoDate) === null) return false
  return onHolidays || !isHoliday(shop, isoDate)
}

/** Standing orders that come on a date and have not been made into orders of it, in id order. */
export function notTakenUp(state: State, shop: Shop, isoDate: string): readonly StandingOrder[] {
  return [...state.standing.values()]
    .filter((one) => (one.takenUp === null || one.takenUp < isoDate) && comesOn(shop, one, isoDate))
    .sort((one, other) => (one.id < other.id ? -1 : 1))
}

function isHoliday({ specialDays }: Shop, isoDate: string): boolean {
  return [...specialDays.values()].some(
    ({ retired, kind, spans }) =>
      !retired && kind === 'holiday' && spans.some(({ from, to }) => from <= isoDate && isoDate <= to),
  )
}
