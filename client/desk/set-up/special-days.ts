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

/**
 * The last span a year on: from the same date, or with `keepsWeekday` from the same weekday of its month, as people name
 * such days: the second Saturday, the last one. 29 February becomes the 28th. Null when there is no span.
 *
 * Not 52 weeks on: over the years that creeps out of the month.
 * @example againNextYear([{ from: '2026-08-29', to: '2026-08-29' }], true) // from '2027-08-28', the last Saturday again
 */
export function againNextYear(spans: Spans, keepsWeekday: boolean): Span | null {
  const last = spans[spans.length - 1]
  if (last === undefined) return null
  const from = keepsWeekday ? sameWeekday(last.from) : sameDate(last.from)
  return { from, to: dateAfter(from, daysBetween(last.from, last.to)) }
}

function sameDate(date: string): string {
  const next = `${Number(date.slice(0, 4)) + 1}${date.slice(4)}`
  return date.endsWith('-02-29') ? next.replace('-29', '-28') : next
}

function sameWeekday(date: string): string {
  const month = date.slice(0, 7)
  const [first, next] = [`${month}-01`, `${Number(month.slice(0, 4)) + 1}${month.slice(4)}-01`]
  const weekday = weekdayOf(date)
  const firstOfIt = dateAfter(next, (weekday - weekdayOf(next) + 7) % 7)
  const weeks = Math.floor(daysBetween(first, date) / 7)
  if (dateAfter(date, 7).startsWith(month)) return dateAfter(firstOfIt, weeks * 7)
  const fifth = dateAfter(firstOfIt, 28)
  return fifth.startsWith(next.slice(0, 7)) ? fifth : dateAfter(firstOfIt, 21)
}

/** 0 is Sunday. */
function weekdayOf(date: string): number {
  return new Date(`${date}T00:00:00Z`).getUTCDay()
}

function daysBetween(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 86_400_000
}
