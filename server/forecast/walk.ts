import { Learner } from '../../shared-core/demand/learner.ts'
import type { DayAsked, SalesDay, Span } from '../../shared-core/demand/sales-day.ts'
import type { Till, TillDay } from './till.ts'
import { itemDayOf } from './till.ts'
import { HoursSeen } from './usual-hours.ts'

/** A day of a till's files, reached with nothing learnt but the days before it. */
export interface Reached {
  readonly learner: Learner
  readonly asked: DayAsked
  /** The day's sales before a minute, all of them when none is given. */
  upTo(minute?: number): SalesDay
}

/** By date and item, when there was none. */
export type GoneBy = ReadonlyMap<string, ReadonlyMap<string, readonly Span[]>>

/**
 * Goes forward over dates, those of the till and others that are asked for: each is handed out first and learnt then.
 * Days without a sale are closed, and teach nothing.
 */
export function* walk(till: Till, others: Iterable<string>, goneBy: GoneBy = new Map()): Generator<Reached, void> {
  const learner = new Learner([])
  const hours = new HoursSeen()
  for (const date of [...new Set([...till.dates, ...others])].sort()) {
    const asked: DayAsked = { date, ...hours.of(date), specials: [] }
    const sold: TillDay = till.days.get(date) ?? new Map()
    const gone = goneBy.get(date) ?? new Map<string, readonly Span[]>()
    const upTo = (minute = Number.POSITIVE_INFINITY) => dayOf(asked, sold, gone, minute)
    yield { learner, asked, upTo }
    if (sold.size === 0) continue
    learner.learn(upTo())
    hours.learn(date, sold)
  }
}

function dayOf(
  asked: DayAsked,
  sold: TillDay,
  gone: ReadonlyMap<string, readonly Span[]>,
  untilMinute: number,
): SalesDay {
  const ids = [...new Set([...sold.keys(), ...gone.keys()])].sort()
  const items = ids.flatMap((id) => {
    const purchases = (sold.get(id) ?? []).filter(({ minute }) => minute < untilMinute)
    const spans = (gone.get(id) ?? []).flatMap((span) => withinDay(span, asked, untilMinute))
    return purchases.length === 0 && spans.length === 0 ? [] : [[id, itemDayOf(purchases, spans)] as const]
  })
  return { ...asked, items: new Map(items) }
}

/** A span as far as it lies in the opening hours and had begun. */
function withinDay({ fromMinute, toMinute }: Span, { closeMinute }: DayAsked, untilMinute: number): Span[] {
  if (fromMinute >= Math.min(untilMinute, closeMinute)) return []
  return [{ fromMinute, toMinute: Math.min(toMinute, closeMinute) }]
}
