import { weekdayId } from '../ids.ts'
import type { Hours, Shop } from './shop.ts'

/**
 * The shop's hours on a date: its weekday's own, else the usual ones.
 * @param isoDate the shop's date, YYYY-MM-DD
 * @returns null when the shop is closed on that weekday, or by a closure among its special days
 * @example hoursOn(closedOnSundays, '2026-11-29') // null
 */
export function hoursOn(
  { hours, weekdays, specialDays }: Pick<Shop, 'hours' | 'weekdays' | 'specialDays'>,
  isoDate: string,
): Hours | null {
  for (const { kind, spans, retired } of specialDays.values())
    if (kind === 'closure' && !retired && spans.some(({ from, to }) => from <= isoDate && isoDate <= to)) return null
  const own = weekdays.get(weekdayId(String(isoWeekday(isoDate))))
  return own === undefined || own.retired ? hours : own.hours
}

/** Minutes after the day's midnight: a shop that closes at or before the minute at which it opens closes after the next. */
export function closesAtMinute({ openMinute, closeMinute }: Pick<Hours, 'openMinute' | 'closeMinute'>): number {
  return closeMinute > openMinute ? closeMinute : closeMinute + 1_440
}

/**
 * Weekday of a date by ISO 8601: 1 is Monday, 7 Sunday. A date has one weekday wherever it is, so no zone comes in.
 *
 *   h = (q + ⌊13 (m + 1) / 5⌋ + Y + ⌊Y / 4⌋ − ⌊Y / 100⌋ + ⌊Y / 400⌋) mod 7     weekday = (h + 5) mod 7 + 1
 *
 * q is the day, m the month from March (3) to the February after (14), Y the year that March is in.
 * Source: Chr. Zeller, Kalender-Formeln, Acta Mathematica 9 (1887).
 * @param isoDate YYYY-MM-DD
 * @example isoWeekday('2026-11-26') // 4, a Thursday
 */
export function isoWeekday(isoDate: string): number {
  const [year = 0, month = 0, q = 0] = isoDate.split('-').map(Number)
  const [m, Y] = month < 3 ? [month + 12, year - 1] : [month, year]
  const h = (q + floor((13 * (m + 1)) / 5) + Y + floor(Y / 4) - floor(Y / 100) + floor(Y / 400)) % 7
  return ((h + 5) % 7) + 1
}

const { floor } = Math
