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

/** Noon of a date in the seconds of a drawing; a date has one place on its axis, wherever the shop is. */
export function secondsOf(date: string): number {
  return Date.parse(`${date}T12:00:00Z`) / 1_000
}

/** @example dateOf(secondsOf('2026-11-24')) // '2026-11-24' */
export function dateOf(seconds: number): string {
  return new Date(seconds * 1_000).toISOString().slice(0, 10)
}
