import { dateAfter } from '../day/label.ts'
import { minuteOn } from '../dough/dates.ts'
import { hoursOn } from '../shop/hours.ts'
import type { EpochMs } from '../units.ts'
import type { SupplyAsked } from './promise.ts'

/** Longer nobody looks ahead for a dozen bagels. */
const DAYS_MAX = 7

/**
 * The opening of the soonest later day for which orders are still taken: until the cut-off on the day before
 * (`OrderRules.cutOffMinute`), without one until that opening.
 * @returns null: none within a week
 */
export function nextDayOf({ state, date, noonOf, nowMs }: Omit<SupplyAsked, 'outlook' | 'plan'>): EpochMs | null {
  const { shop } = state
  if (shop === null) return null
  const { cutOffMinute } = shop.orders
  for (let days = 1; days <= DAYS_MAX; days += 1) {
    const next = dateAfter(date, days)
    const hours = hoursOn(shop, next)
    if (hours === null) continue
    const opensMs = minuteOn(noonOf, next, hours.openMinute)
    const untilMs = cutOffMinute === null ? opensMs : minuteOn(noonOf, dateAfter(next, -1), cutOffMinute)
    if (nowMs <= untilMs) return opensMs
  }
  return null
}
