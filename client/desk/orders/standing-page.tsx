import { comesOn } from '../../../shared-core/orders/comes-on.ts'
import type { StandingOrder } from '../../../shared-core/orders/order.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { minuteClock } from './order-times.ts'
import { OrderWhat } from './order-what.tsx'
import { withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'
import { nextDates } from './standing-draft.ts'

/** All standing orders, the soonest time of day first. */
export function StandingPage(props: OrdersParts) {
  const { state, say } = props
  const all = [...state.standing.values()].sort(
    (one, other) => one.dueMinute - other.dueMinute || (one.id < other.id ? -1 : 1),
  )
  const { columns } = say.standing
  return (
    <Panel part="standing" title={say.pages.standing} isWide>
      <p>{say.standing.lead}</p>
      <p>
        <a class="desk-button" href={addressOf('orders', withinOf({ kind: 'oneStanding', standingId: null }))}>
          {say.standing.add}
        </a>
      </p>
      {all.length === 0 ? (
        <p>{say.standing.none}</p>
      ) : (
        <table class="desk-cards orders-table">
          <thead>
            <tr>
              <th>{columns.mark}</th>
              <th>{columns.when}</th>
              <th>{columns.what}</th>
              <th>{columns.next}</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {all.map((standing) => (
              <StandingRow key={standing.id} {...props} standing={standing} />
            ))}
          </tbody>
        </table>
      )}
    </Panel>
  )
}

/** Holidays are not the next day it comes: so many days of its rule are looked at. */
const DATES_LOOKED = 30

function StandingRow(props: OrdersParts & { readonly standing: StandingOrder }) {
  const { standing, shop, words, say, room, book } = props
  const { columns } = say.standing
  const details = book.of(standing)
  const next = nextDates(standing.recurrence, room.today, DATES_LOOKED).find((date) => comesOn(shop, standing, date))
  const bounds = say.standing.bounds(standing.recurrence, room.today)
  return (
    <tr data-standing={standing.mark}>
      <th scope="row">
        <span class="orders-mark">{standing.mark}</span>
        {details !== null && details.name !== '' && <span class="orders-name">{details.name}</span>}
      </th>
      <td data-label={columns.when}>
        <strong>{minuteClock(standing.dueMinute, props)}</strong>
        <span class="orders-name">{say.standing.rule(standing.recurrence)}</span>
        {bounds !== '' && <span class="orders-small">{bounds}</span>}
        <span class="orders-small">
          {standing.runId === null
            ? say.said.way[standing.way]
            : `${say.said.way[standing.way]}, ${say.day.run(words.names.run(standing.runId))}`}
        </span>
      </td>
      <td class="orders-what" data-label={columns.what}>
        <OrderWhat {...props} order={{ lines: standing.lines, items: [] }} note={details?.note ?? ''} />
      </td>
      <td data-label={columns.next}>{next === undefined ? '–' : words.times.date(next)}</td>
      <td class="orders-of">
        <div class="orders-acts">
          <a
            class="desk-button"
            href={addressOf('orders', withinOf({ kind: 'oneStanding', standingId: standing.id }))}
            aria-label={say.day.actOf(say.day.change, standing.mark)}
          >
            {say.day.change}
          </a>
        </div>
      </td>
    </tr>
  )
}
