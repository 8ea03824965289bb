import type { HistoryDayJson } from '../../../shared-core/live/sales-history.ts'

/** Days that follow each other under one name: a school break is told once. */
export interface NamedSpan {
  readonly name: string
  /** Places among the days, both belong to it. */
  readonly from: number
  readonly to: number
}

/** Where the special days stand on the axis, in order. Several of one day share its place. */
export function namedSpans(
  days: readonly Pick<HistoryDayJson, 'specials'>[],
  nameOf: (id: string) => string,
): readonly NamedSpan[] {
  const spans: NamedSpan[] = []
  for (const [place, { specials }] of days.entries()) {
    if (specials.length === 0) continue
    const name = specials.map(nameOf).join(', ')
    const last = spans[spans.length - 1]
    if (last?.to === place - 1 && last.name === name) spans[spans.length - 1] = { ...last, to: place }
    else spans.push({ name, from: place, to: place })
  }
  return spans
}

/** The place of a date on a drawing's axis: days counted from a Monday, so that marks a week apart stand on Mondays. */
export function dayNumber(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / DAY_MS + MONDAY
}

/** @example dateOf(dayNumber('2026-11-24')) // '2026-11-24' */
export function dateOf(day: number): string {
  return new Date((day - MONDAY) * DAY_MS).toISOString().slice(0, 10)
}

const DAY_MS = 86_400_000
/** 1 January 1970 was a Thursday. */
const MONDAY = 3
