import { dateAfter } from '../../shared-core/day/label.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import type { Shop, SpecialKind } from '../../shared-core/shop/shop.ts'

/** A special day as a set-up file has it. */
interface SpecialInFile {
  readonly id: string
  readonly name: string
  readonly kind: SpecialKind
  readonly dates: readonly (string | { readonly from: string; readonly to: string })[]
}

/** Customers against those that the weekday would bring, by the ids below. Invented. */
const FACTORS: ReadonlyMap<string, number> = new Map([
  ['street-fair', 1.3],
  ['school-break', 0.85],
  ['founders-day', 0.7],
  ['snow', 0.75],
])

const SATURDAY = 6
const MONDAY = 1

/**
 * What is special in the demo's weeks, for its set-up: around a date, so that each has been seen and one is to come.
 * @param today YYYY-MM-DD
 */
export function demoSpecials(today: string): readonly SpecialInFile[] {
  const saturday = next(today, SATURDAY)
  const breakFrom = dateAfter(next(today, MONDAY), -7 * 7)
  return [
    {
      id: 'street-fair',
      name: 'Street fair',
      kind: 'event',
      dates: [-14, -10, -6, -2, 0].map((weeks) => dateAfter(saturday, weeks * 7)),
    },
    {
      id: 'school-break',
      name: 'School break',
      kind: 'school',
      dates: [{ from: breakFrom, to: dateAfter(breakFrom, 4) }],
    },
    { id: 'founders-day', name: 'Founders’ day', kind: 'holiday', dates: [dateAfter(today, -60)] },
    { id: 'snow', name: 'Snow', kind: 'weather', dates: [-25, -24].map((days) => dateAfter(today, days)) },
  ]
}

/** What the special days of the set-up do to the crowd of a date. */
export function specialFactor({ specialDays }: Pick<Shop, 'specialDays'>, date: string): number {
  return [...specialDays.values()]
    .filter(({ retired, spans }) => !retired && spans.some(({ from, to }) => from <= date && date <= to))
    .reduce((product, { id }) => product * (FACTORS.get(id) ?? 1), 1)
}

/** The first such weekday after a date. */
function next(date: string, weekday: number): string {
  const ahead = (weekday - isoWeekday(date) + 7) % 7
  return dateAfter(date, ahead === 0 ? 7 : ahead)
}
