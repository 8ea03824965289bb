import { dateAfter } from '../../../shared-core/day/label.ts'
import type { SpecialDay } from '../../../shared-core/shop/shop.ts'

export type Spans = SpecialDay['spans']
export type Span = Spans[number]

/**
 * The spans with others among them, in order; those that meet or overlap become one. A day is in one span at most, which
 * is what the set-up's rules ask.
 */
export function withSpans(spans: Spans, more: Spans): Spans {
  const sorted = [...spans, ...more].sort((one, other) => (one.from < other.from ? -1 : 1))
  const merged: Span[] = []
  for (const span of sorted) {
    const last = merged[merged.length - 1]
    if (last === undefined || span.from > last.to) merged.push(span)
    else merged[merged.length - 1] = { from: last.from, to: later(last.to, span.to) }
  }
  return merged
}

function later(one: string, other: string): string {
  return other > one ? other : one
}

/** The first span that is not over yet; null: all are past. */
export function nextSpan(spans: Spans, today: string): Span | null {
  return spans.find(({ to }) => to >= today) ?? null
}

/** 52 weeks: the same weekday, a day or two off the date. */
const WEEKDAY_YEAR_DAYS = 364

/**
 * The last span a year on: the same dates, or with `keepsWeekday` as many weeks on as come nearest to them. 29 February
 * becomes the 28th. Nothing when there is no span, or the one after it is there already.
 * @example againNextYear([{ from: '2026-08-29', to: '2026-08-29' }], true) // from '2027-08-28', again a Saturday
 */
export function againNextYear(spans: Spans, keepsWeekday: boolean): Span | null {
  const last = spans[spans.length - 1]
  if (last === undefined) return null
  const days = daysBetween(last.from, last.to)
  const from = keepsWeekday ? sameWeekday(last.from) : sameDate(last.from)
  return { from, to: dateAfter(from, days) }
}

function sameDate(date: string): string {
  const next = `${Number(date.slice(0, 4)) + 1}${date.slice(4)}`
  return date.endsWith('-02-29') ? next.replace('-29', '-28') : next
}

/** 364 days on, or 371 where that comes nearer to the same date: after some years it would else have crept away. */
function sameWeekday(date: string): string {
  const near = dateAfter(date, WEEKDAY_YEAR_DAYS)
  const later = dateAfter(near, 7)
  const aim = sameDate(date)
  return daysBetween(near, aim) <= daysBetween(aim, later) ? near : later
}

function daysBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 86_400_000
}
