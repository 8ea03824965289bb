import { dateAfter } from '../../../shared-core/day/label.ts'
import type { SpecialDay } from '../../../shared-core/shop/shop.ts'
import { withSpans } from '../set-up/special-days.ts'

/** Whether a day has this name. */
export function isOn({ spans }: Pick<SpecialDay, 'spans'>, date: string): boolean {
  return spans.some(({ from, to }) => from <= date && date <= to)
}

/** The special day with this date, or without it: a span that it stood in the middle of becomes two. */
export function toggled(special: SpecialDay, date: string): SpecialDay {
  if (!isOn(special, date)) return { ...special, spans: withSpans(special.spans, [{ from: date, to: date }]) }
  const spans = special.spans.flatMap(({ from, to }) => {
    if (date < from || to < date) return [{ from, to }]
    return [
      ...(from < date ? [{ from, to: dateAfter(date, -1) }] : []),
      ...(date < to ? [{ from: dateAfter(date, 1), to }] : []),
    ]
  })
  return { ...special, spans }
}
