import { isDate } from '../../../shared-core/day/label.ts'
import { standingId } from '../../../shared-core/ids.ts'
import { comesOn } from '../../../shared-core/orders/comes-on.ts'
import type { StandingOrder } from '../../../shared-core/orders/order.ts'
import { hoursOn } from '../../../shared-core/shop/hours.ts'
import type { OrdersParts } from './parts.ts'
import type { StandingDraft } from './standing-draft.ts'
import { nextDates, recurrenceOf } from './standing-draft.ts'

/** Shown ahead: enough to see a rule by weeks or months. */
const DATES_SHOWN = 8

/** The next days on which the rule as typed would come, with those that fall out. */
export function NextDates({ draft, shop, words, say, room }: OrdersParts & { readonly draft: StandingDraft }) {
  const { from, freq, weekdays } = draft.recurrence
  if (!isDate(from) || (freq === 'weekly' && weekdays.length === 0)) return null
  const recurrence = recurrenceOf(draft.recurrence)
  const dates = nextDates(recurrence, room.today, DATES_SHOWN)
  const year = room.today.slice(0, 4)
  return (
    <section class="orders-part" aria-label={say.standing.next}>
      <h3>{say.standing.next}</h3>
      {dates.length === 0 ? (
        <p>{say.standing.nextNone}</p>
      ) : (
        <ul class="orders-next">
          {dates.map((date) => {
            const text = date.startsWith(year)
              ? words.times.date(date)
              : `${words.times.date(date)}, ${date.slice(0, 4)}`
            if (comesOn(shop, standingLike(draft, recurrence), date)) return <li key={date}>{text}</li>
            return (
              <li key={date} class="desk-quiet">
                <s>{text}</s>{' '}
                <span class="orders-small">
                  {hoursOn(shop, date) === null ? say.standing.closed : say.standing.holiday}
                </span>
              </li>
            )
          })}
        </ul>
      )}
    </section>
  )
}

/** What says on which days it comes. */
function standingLike({ onHolidays }: StandingDraft, recurrence: StandingOrder['recurrence']): StandingOrder {
  return {
    id: standingId(''),
    mark: '',
    way: 'pickUp',
    runId: null,
    stop: 0,
    dueMinute: 0,
    lines: [],
    isPaid: false,
    details: 0,
    recurrence,
    onHolidays,
    takenUp: null,
  }
}
