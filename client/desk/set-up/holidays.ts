import { dateAfter } from '../../../shared-core/day/label.ts'
import { specialDayId } from '../../../shared-core/ids.ts'
import type { Holiday } from '../../../shared-core/live/holidays.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { NAME_MAX } from '../../../shared-core/shop/set-up-limits.ts'
import type { Language, Shop, SpecialDay } from '../../../shared-core/shop/shop.ts'
import type { Span, Spans } from './special-days.ts'
import { nextSpan, withSpans } from './special-days.ts'

/** A holiday's dates of so many years past help to understand the sales of then. */
export const PAST_YEARS = 3
const YEAR_DAYS = 365

/** What is asked of a region's holidays: the past ones that teach, and two years to come, of which one is offered. */
export function holidaysAddress(region: string, today: string): string {
  const from = `${Number(today.slice(0, 4)) - PAST_YEARS}-01-01`
  return `/api/v1/holidays?region=${region}&from=${from}&to=${dateAfter(today, 2 * YEAR_DAYS)}`
}

export interface Offer {
  readonly holiday: Holiday
  readonly next: Span
  /** Dates that come with it: past ones, and those to come within a year. */
  readonly spans: Spans
  readonly past: number
  /** All of them are in the set-up's special day of that holiday. */
  readonly isThere: boolean
}

/** The holidays of the coming twelve months, the next one first. */
export function offersOf(holidays: readonly Holiday[], shop: Shop, today: string): readonly Offer[] {
  const lastDate = dateAfter(today, YEAR_DAYS)
  return holidays
    .flatMap((holiday): Offer[] => {
      const spans = holiday.spans.filter(({ from }) => from <= lastDate)
      const next = nextSpan(spans, today)
      if (next === null) return []
      const past = spans.filter(({ to }) => to < today).length
      return [{ holiday, next, spans, past, isThere: hasAll(shop.specialDays.get(specialDayId(holiday.id)), spans) }]
    })
    .sort((one, other) => (one.next.from < other.next.from ? -1 : 1))
}

function hasAll(day: SpecialDay | undefined, spans: Spans): boolean {
  if (day === undefined || day.retired) return false
  return spans.every((span) => day.spans.some(({ from, to }) => from <= span.from && to >= span.to))
}

/**
 * Special days made of holidays. One that is there already, also retired, gets the dates that it lacks and keeps what
 * people made of it.
 */
export function holidaysTaken(shop: Shop, offers: readonly Offer[], language: Language): readonly SetUpChange[] {
  let order = [...shop.specialDays.values()].reduce((most, one) => Math.max(most, one.order + 1), 0)
  return offers.map(({ holiday, spans }) => {
    const id = specialDayId(holiday.id)
    const before = shop.specialDays.get(id)
    const value: SpecialDay =
      before === undefined
        ? { id, name: nameOf(holiday, language), order: order++, kind: 'holiday', spans, retired: false }
        : { ...before, spans: withSpans(before.spans, spans), retired: false }
    return { entity: 'specialDay', value }
  })
}

function nameOf(holiday: Holiday, language: Language): string {
  return holiday[language].slice(0, NAME_MAX.specialDay).trim()
}

/** The dates of a holiday after the last ones of its special day; null where the library has none or it is no holiday. */
export function holidayAfter(day: SpecialDay, holidays: readonly Holiday[], today: string): Span | null {
  const last = day.spans[day.spans.length - 1]?.to ?? today
  const known = holidays.find(({ id }) => id === day.id)
  return known?.spans.find(({ from }) => from > last && from > today) ?? null
}
