import type { Recurrence } from './recurrence.ts'
import { weekdaysOf } from './recurrence.ts'

/**
 * A recurrence as a rule of a calendar, without its exceptions and dates besides: those stand beside it (EXDATE, RDATE).
 * A calendar counts DTSTART as the first one whatever the rule says: it must be a date on which it comes.
 * @param untilOf how the last date is written: a plain date beside a DTSTART that is one, else an instant in UTC
 * Source: RFC 5545, 3.3.10.
 * @example ruleText({ ...weekly, interval: 2, weekdays: [1, 3] }) // 'FREQ=WEEKLY;INTERVAL=2;WKST=MO;BYDAY=MO,WE'
 */
export function ruleText(recurrence: Recurrence, untilOf: (isoDate: string) => string = compact): string {
  const { freq, interval, until } = recurrence
  const parts = [
    `FREQ=${freq.toUpperCase()}`,
    ...(interval === 1 ? [] : [`INTERVAL=${interval}`]),
    ...(until === null ? [] : [`UNTIL=${untilOf(until)}`]),
    // Monday is what a calendar assumes as well; it matters only here.
    ...(freq === 'weekly' && interval > 1 ? ['WKST=MO'] : []),
    ...byDay(recurrence),
  ]
  return parts.join(';')
}

const NAMES = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU']

function byDay(recurrence: Recurrence): string[] {
  const { freq, weekdays, nth } = recurrence
  if (freq === 'monthly' && nth !== null) return [`BYDAY=${named(weekdaysOf(recurrence), String(nth))}`]
  if (weekdays.length > 0) return [`BYDAY=${named(weekdays, '')}`]
  // Said, as DTSTART may be a later one than `from`.
  if (freq === 'weekly') return [`BYDAY=${named(weekdaysOf(recurrence), '')}`]
  return freq === 'monthly' ? [`BYMONTHDAY=${Number(recurrence.from.slice(8))}`] : []
}

function named(weekdays: readonly number[], nth: string): string {
  return [...weekdays]
    .sort((one, other) => one - other)
    .map((weekday) => `${nth}${NAMES[weekday - 1] ?? ''}`)
    .join(',')
}

function compact(isoDate: string): string {
  return isoDate.replaceAll('-', '')
}
