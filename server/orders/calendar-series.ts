import { dateAfter } from '../../shared-core/day/label.ts'
import { comesOn } from '../../shared-core/orders/comes-on.ts'
import type { StandingOrder } from '../../shared-core/orders/order.ts'
import { datesOf, occursOn } from '../../shared-core/orders/recurrence.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/** So far ahead closed days and holidays are looked at; whoever subscribes asks again long before. */
const AHEAD_DAYS = 400

/** A standing order as a calendar's recurring event: DTSTART is a date of the rule, so that its weeks are counted alike. */
export interface Series {
  /** YYYY-MM-DD. Null: its rule has no date any more. */
  readonly first: string | null
  /** Dates of the rule on which it does not come. */
  readonly except: readonly string[]
  /** Dates on which it comes besides the rule, after the first. */
  readonly besides: readonly string[]
  /** Dates before the first, or where there is none: events by themselves. */
  readonly single: readonly string[]
}

/**
 * @param today the shop's date: what is past is no order any more, and of dates that were taken up there are real ones
 */
export function seriesOf(shop: Shop, standing: StandingOrder, today: string): Series {
  const { recurrence, takenUp } = standing
  const from = takenUp !== null && takenUp >= today ? dateAfter(takenUp, 1) : today
  const to = dateAfter(from, AHEAD_DAYS)
  const rule = { ...recurrence, except: [], also: [] }
  const byRule = datesOf(rule, from, to)
  const first = byRule[0] ?? null
  const comes = (date: string) => comesOn(shop, standing, date)
  // Beyond what was looked at a calendar goes on by the rule: what is said of single dates must reach it as well.
  const said = recurrence.except.filter((date) => date > to && occursOn(rule, date))
  const also = [...new Set(recurrence.also)]
    .sort()
    .filter((date) => date >= from && !occursOn(rule, date) && comes(date))
  return {
    first,
    except: [...byRule.filter((date) => !comes(date)), ...[...new Set(said)].sort()],
    besides: also.filter((date) => first !== null && date > first),
    single: also.filter((date) => first === null || date < first),
  }
}
