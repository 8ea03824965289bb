import { weekdayId } from '../ids.ts'
import type { Hours, Shop } from './shop.ts'

/**
 * The shop's hours on a date: its weekday's own, else the usual ones.
 * @param isoDate the shop's date, YYYY-MM-DD
 * @returns null when the shop is closed on that weekday
 * @example hoursOn(closedOnSundays, '2026-11-29') // null
 */
export function hoursOn({ hours, weekdays }: Pick<Shop, 'hours' | 'weekdays'>, isoDate: string): Hours | null {
  const own = weekdays.get(weekdayId(String(isoWeekday(isoDate))))
  return own === undefined || own.retired ? hours : own.hours
}

/**
 * Weekday of a date by ISO 8601: 1 is Monday, 7 Sunday. A date has one weekday wherever it is, so no zone comes in.
 * @example isoWeekday('2026-11-26') // 4, a Thursday
 */
export function isoWeekday(isoDate: string): number {
  return ((new Date(`${isoDate}T00:00:00Z`).getUTCDay() + 6) % 7) + 1
}
