import { useState } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { SalesHistoryJson } from '../../../shared-core/live/sales-history.ts'
import { localDate } from '../../live/clock-text.ts'
import { addressOf } from '../place.ts'
import { useGot } from '../use-got.ts'
import { Choose } from './choose.tsx'
import { DaysPanel } from './days-panel.tsx'
import { HoursPanel } from './hours-panel.tsx'
import { LearntPanel } from './learnt-panel.tsx'
import type { HistoryWhere } from './pages.ts'
import { RANGES, withinOf } from './pages.ts'
import type { HistoryParts } from './parts.ts'
import { salesVersion } from './parts.ts'
import { NoSales, Unanswered } from './unanswered.tsx'
import { WeekPanel } from './week-panel.tsx'

type SalesWhere = Extract<HistoryWhere, { page: 'sales' }>

/** What was sold: day by day, by weekday, by hour, and what was learnt of it. */
export function SalesPage(parts: HistoryParts & { readonly where: SalesWhere }) {
  const { say, where } = parts
  // Kept here, so that another variety is looked at in the same way.
  const [isTable, setTable] = useState(false)
  const query = queryOf(parts, where)
  const got = useGot<SalesHistoryJson>(query === null ? null : `/api/v1/history/sales?${query}`, salesVersion(parts))
  const history = got.kind === 'got' ? got.value : null
  if (history?.known === null) return <NoSales say={say} />
  return (
    <>
      <Choose
        parts={parts}
        of={where.of}
        range={where.range}
        label={say.choose.of}
        all={{ value: 'all', label: say.choose.all }}
        ranges={RANGES.map((value) => ({ value, label: say.choose.ranges[value] }))}
        hasDoughs
        onChoose={(of, range) => {
          window.location.hash = addressOf('history', withinOf({ page: 'sales', of, range }))
        }}
      />
      {got.kind !== 'got' ? (
        <Unanswered kind={got.kind} say={say} />
      ) : (
        <div class="desk-parts">
          <DaysPanel
            {...parts}
            history={got.value}
            csv={`/api/v1/history/sales.csv?${query}`}
            isTable={isTable}
            onTable={setTable}
          />
          <WeekPanel {...parts} history={got.value} />
          <LearntPanel {...parts} history={got.value} />
          <HoursPanel {...parts} history={got.value} />
        </div>
      )}
    </>
  )
}

/** Null while the shop's date is not known. */
function queryOf({ live }: HistoryParts, { of, range }: SalesWhere): string | null {
  if (live.shopClock === null) return null
  const query = new URLSearchParams({ of })
  if (range !== 'all') query.set('from', dateAfter(localDate(live.shopClock, live.nowMs), -Number(range)))
  return query.toString()
}
