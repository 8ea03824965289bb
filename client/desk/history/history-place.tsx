import './history.css'
import { useMemo } from 'preact/hooks'
import { historyWords } from '../../words/desk-history.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { LinePage } from '../learnt/line-page.tsx'
import { addressOf } from '../place.ts'
import { TrustPage } from '../trust/trust-page.tsx'
import { DayPage } from './day-page.tsx'
import type { HistoryWhere } from './pages.ts'
import { historyWhere, withinOf } from './pages.ts'
import { SalesPage } from './sales-page.tsx'

/** Past sales, and what the forecasts of them were worth. */
export function HistoryPlace({ within, ...parts }: PlaceParts) {
  const { words } = parts
  const say = useMemo(() => historyWords(words), [words])
  const where = historyWhere(within)
  const pages: readonly (readonly [string, HistoryWhere])[] = [
    [say.pages.sales, { page: 'sales', of: 'all', range: '84' }],
    [say.pages.trust, { page: 'trust', of: null, range: '84' }],
    [say.pages.line, { page: 'line' }],
  ]
  const of = { ...parts, say }
  return (
    <>
      <nav class="desk-pages desk-noprint" aria-label={say.pagesName}>
        {pages.map(([name, to]) => (
          <a
            key={to.page}
            href={addressOf('history', withinOf(to))}
            aria-current={to.page === where.page || (to.page === 'sales' && where.page === 'day') ? 'page' : undefined}
          >
            {name}
          </a>
        ))}
      </nav>
      {where.page === 'sales' && <SalesPage {...of} where={where} />}
      {where.page === 'day' && <DayPage key={where.date} {...of} date={where.date} />}
      {where.page === 'trust' && <TrustPage {...of} where={where} />}
      {where.page === 'line' && <LinePage {...of} />}
    </>
  )
}
