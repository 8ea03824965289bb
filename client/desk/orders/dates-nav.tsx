import { useState } from 'preact/hooks'
import { dateAfter, isDate } from '../../../shared-core/day/label.ts'
import { dueOn } from '../../../shared-core/orders/due-on.ts'
import { addressOf } from '../place.ts'
import type { OrdersPage } from './pages.ts'
import { withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'

interface DatesNavProps extends OrdersParts {
  readonly kind: 'day' | 'packing'
  readonly date: string
}

/** Today and what comes next. */
const DAYS_SHOWN = 6

/** The days, each with how many orders it has, and the way to any other. */
export function DatesNav({ kind, date, state, words, say, room }: DatesNavProps) {
  const dates = Array.from({ length: DAYS_SHOWN }, (_, n) => dateAfter(room.today, n))
  const pageOf = (one: string): OrdersPage => ({ kind, date: one })
  return (
    <div class="orders-dates desk-noprint">
      <nav class="desk-pages" aria-label={say.dates.name}>
        {[...new Set([...dates, date])].sort().map((one) => {
          const orders = dueOn(state, { date: one, noonMs: room.noonOf(one) }).length
          return (
            <a
              key={one}
              href={addressOf('orders', withinOf(pageOf(one)))}
              aria-current={one === date ? 'page' : undefined}
            >
              {words.times.date(one)}
              {orders > 0 && <span class="orders-count">{orders}</span>}
            </a>
          )
        })}
      </nav>
      <AnyDate say={say} onDate={(one) => (window.location.hash = addressOf('orders', withinOf(pageOf(one))))} />
    </div>
  )
}

function AnyDate({ say, onDate }: Pick<OrdersParts, 'say'> & { readonly onDate: (date: string) => void }) {
  const [date, setDate] = useState('')
  return (
    <form
      class="desk-line"
      onSubmit={(event) => {
        event.preventDefault()
        if (isDate(date)) onDate(date)
      }}
    >
      <label class="desk-line">
        {say.dates.goTo}
        <input type="date" value={date} onInput={(event) => setDate(event.currentTarget.value)} />
      </label>
      <button type="submit" disabled={!isDate(date)}>
        {say.dates.go}
      </button>
    </form>
  )
}
