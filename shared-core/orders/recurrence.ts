import { dateAfter } from '../day/label.ts'
import { isoWeekday } from '../shop/hours.ts'
import { unreachable } from '../support.ts'

/**
 * On which dates something comes again: whole dates, a part of RFC 5545's recurrence rules (3.3.10). Dates are
 * YYYY-MM-DD and have no zone.
 */
export interface Recurrence {
  readonly freq: 'daily' | 'weekly' | 'monthly'
  readonly interval: number
  /** The first date from which it counts; it comes on it only where the rule says so. */
  readonly from: string
  /** The last date that it may come on; null: without an end. */
  readonly until: string | null
  /** ISO weekdays, 1 Monday to 7 Sunday; weekly: empty means that of `from`. */
  readonly weekdays: readonly number[]
  /** Monthly: which of these weekdays in the month, -1 the last one; null: the date of `from`, or every such weekday. */
  readonly nth: number | null
  /** Dates on which it does not come. */
  readonly except: readonly string[]
  /** Dates on which it comes besides. */
  readonly also: readonly string[]
}

/**
 * Whether it comes on a date. Weeks begin on Monday; a month without that date is left out; `except` wins over all else,
 * and `also` comes whatever the rule, `from` and `until` say.
 * @param isoDate YYYY-MM-DD
 * Source: RFC 5545, 3.3.10 (rules), 3.8.5.1 and 3.8.5.2 (exceptions, dates besides).
 * @example occursOn({ ...weekly, from: '1997-09-02', weekdays: [2, 4] }, '1997-09-04') // true
 */
export function occursOn(recurrence: Recurrence, isoDate: string): boolean {
  const { from, until, except, also } = recurrence
  if (except.includes(isoDate)) return false
  if (also.includes(isoDate)) return true
  if (isoDate < from || (until !== null && isoDate > until)) return false
  return follows(recurrence, isoDate)
}

/**
 * The dates on which it comes, in order.
 * @param from first date that is asked for  @param to last one, both YYYY-MM-DD
 */
export function datesOf(recurrence: Recurrence, from: string, to: string): readonly string[] {
  const { also, until } = recurrence
  const besides = [...also].sort()
  const first = [besides[0] ?? recurrence.from, recurrence.from].sort()[0] ?? from
  const last = until === null ? to : ([besides[besides.length - 1] ?? until, until].sort()[1] ?? to)
  const dates: string[] = []
  for (let date = from > first ? from : first; date <= to && date <= last; date = dateAfter(date, 1))
    if (occursOn(recurrence, date)) dates.push(date)
  return dates
}

function follows(recurrence: Recurrence, isoDate: string): boolean {
  switch (recurrence.freq) {
    case 'daily':
      return isEvery(recurrence, dayNumber(isoDate) - dayNumber(recurrence.from)) && isOnWeekday(recurrence, isoDate)
    case 'weekly':
      return (
        isEvery(recurrence, weekNumber(isoDate) - weekNumber(recurrence.from)) &&
        weekdaysOf(recurrence).includes(isoWeekday(isoDate))
      )
    case 'monthly':
      return isEvery(recurrence, monthNumber(isoDate) - monthNumber(recurrence.from)) && isInMonth(recurrence, isoDate)
    default:
      return unreachable(recurrence.freq)
  }
}

function isEvery({ interval }: Recurrence, periods: number): boolean {
  return periods % interval === 0
}

function isOnWeekday({ weekdays }: Recurrence, isoDate: string): boolean {
  return weekdays.length === 0 || weekdays.includes(isoWeekday(isoDate))
}

/** The weekdays that a rule by weekday means. */
export function weekdaysOf({ weekdays, from }: Pick<Recurrence, 'weekdays' | 'from'>): readonly number[] {
  return weekdays.length === 0 ? [isoWeekday(from)] : weekdays
}

function isInMonth(recurrence: Recurrence, isoDate: string): boolean {
  const { nth, weekdays, from } = recurrence
  if (nth === null && weekdays.length === 0) return isoDate.slice(8) === from.slice(8)
  if (!weekdaysOf(recurrence).includes(isoWeekday(isoDate))) return false
  if (nth === null) return true
  const day = Number(isoDate.slice(8))
  return nth > 0 ? Math.ceil(day / 7) === nth : Math.ceil((daysInMonth(isoDate) - day + 1) / 7) === -nth
}

function daysInMonth(isoDate: string): number {
  const month = `${isoDate.slice(0, 8)}01`
  const next = dateAfter(month, 31).slice(0, 8)
  return dayNumber(`${next}01`) - dayNumber(month)
}

function monthNumber(isoDate: string): number {
  return Number(isoDate.slice(0, 4)) * 12 + Number(isoDate.slice(5, 7)) - 1
}

/** Counts weeks from Monday to Sunday. */
function weekNumber(isoDate: string): number {
  return Math.floor((dayNumber(isoDate) - isoWeekday(isoDate)) / 7)
}

/**
 * Counts days, from any day on:
 *
 *   365 Y + ⌊Y / 4⌋ − ⌊Y / 100⌋ + ⌊Y / 400⌋ + ⌊(153 m + 2) / 5⌋ + d
 *
 * Y begins with March and m is 0 then, so that the leap day is a year's last one.
 * Source: Fliegel & Van Flandern, Communications of the ACM 11 (1968), in this arrangement from memory.
 */
function dayNumber(isoDate: string): number {
  const [year = 0, month = 0, day = 0] = isoDate.split('-').map(Number)
  const [m, y] = month < 3 ? [month + 9, year - 1] : [month - 3, year]
  const leaps = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400)
  return 365 * y + leaps + Math.floor((153 * m + 2) / 5) + day
}
