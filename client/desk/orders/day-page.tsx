import { useMemo, useState } from 'preact/hooks'
import { ordersAtRisk } from '../../../shared-core/orders/at-risk.ts'
import { supplyNow } from '../../parts/supply-now.ts'
import type { OrderFilter } from '../../words/desk-orders.ts'
import { Panel } from '../panel.tsx'
import { addressOf } from '../place.ts'
import { DatesNav } from './dates-nav.tsx'
import type { OrderRow } from './day-view.ts'
import { lookedFor, orderRows } from './day-view.ts'
import { OrdersTable } from './orders-table.tsx'
import { withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'
import { PickSheet } from './pick-sheet.tsx'
import { RiskPanel } from './risk-panel.tsx'
import { SumsPanel } from './sums-panel.tsx'
import { detailsOfOrder } from './who.ts'

export interface DayProps extends OrdersParts {
  readonly date: string
}

const FILTERS: readonly OrderFilter[] = ['all', 'risk', 'pickUp', 'delivery', 'here']

/** Orders of one day: what is at risk first, then all of them, then what they ask for together. */
export function DayPage(props: DayProps) {
  const { state, live, shop, words, say, room, book, date } = props
  const [filter, setFilter] = useState<OrderFilter>('all')
  const [text, setText] = useState('')
  // biome-ignore lint/correctness/useExhaustiveDependencies: reckoned anew with the state and each minute, not each second.
  const risks = useMemo(() => {
    const asked = date === room.today ? supplyNow(live, state, room.minuteMs) : null
    return asked === null ? [] : ordersAtRisk(asked)
  }, [state, room.minuteMs, date, live.plan, live.outlook])
  const at = { date, noonMs: room.noonOf(date) }
  const rows = orderRows(state, at, { risks, detailsOf: (order) => detailsOfOrder(order, state, book) })
  const found = lookedFor(rows, { filter, text })
  const pieces = rows.reduce((sum, row) => sum + row.pieces, 0)
  return (
    <>
      <DatesNav {...props} kind="day" />
      <div class="desk-noprint">
        {risks.length > 0 && <RiskPanel {...props} rows={rows} />}
        <Panel part="orders" title={words.times.date(date)} isWide>
          <div class="desk-line">
            <a class="desk-button" href={addressOf('orders', withinOf({ kind: 'new', date }))}>
              {say.day.take}
            </a>
            {rows.length > 0 && (
              <button type="button" onClick={() => window.print()}>
                {say.picking.print}
              </button>
            )}
          </div>
          {rows.length === 0 ? (
            <p>{say.day.none(words.times.date(date))}</p>
          ) : (
            <>
              <p class="desk-even">{say.day.total(rows.length, pieces)}</p>
              <Finding {...props} rows={rows} filter={filter} text={text} onFilter={setFilter} onText={setText} />
              {found.length === 0 ? <p>{say.day.noneSuch}</p> : <OrdersTable {...props} rows={found} />}
            </>
          )}
        </Panel>
        {rows.length > 0 && <SumsPanel {...props} rows={rows} />}
      </div>
      {rows.length > 0 && <PickSheet {...props} rows={rows} shopName={shop.profile.name} />}
    </>
  )
}

interface FindingProps extends DayProps {
  readonly rows: readonly OrderRow[]
  readonly filter: OrderFilter
  readonly text: string
  readonly onFilter: (filter: OrderFilter) => void
  readonly onText: (text: string) => void
}

/** Only filters that leave something, and none where all orders are alike. */
function Finding({ rows, say, filter, text, onFilter, onText }: FindingProps) {
  const some = FILTERS.filter((one) => one === 'all' || lookedFor(rows, { filter: one, text: '' }).length > 0)
  const isFew = some.length <= 2 && filter === 'all'
  return (
    <div class="desk-form">
      <label class="desk-field">
        {say.day.search}
        <input type="search" value={text} onInput={(event) => onText(event.currentTarget.value)} />
      </label>
      {!isFew && (
        <label class="desk-field">
          {say.day.show}
          <select
            value={filter}
            onChange={(event) => onFilter(FILTERS.find((one) => one === event.currentTarget.value) ?? 'all')}
          >
            {[...new Set([...some, filter])].map((one) => (
              <option key={one} value={one}>
                {say.day.filter[one]}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  )
}
