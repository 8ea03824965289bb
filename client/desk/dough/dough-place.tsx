import '../sheet/sheet.css'
import './dough-sheet.css'
import './dough-order.css'
import './dough.css'
import { useMemo, useState } from 'preact/hooks'
import { dateAfter } from '../../../shared-core/day/label.ts'
import { doughWords } from '../../words/desk-dough.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { addressOf } from '../place.ts'
import { DayPage } from './day-page.tsx'
import { DaysPage } from './days-page.tsx'
import { DoughNav } from './dough-nav.tsx'
import { LearntPage } from './learnt-page.tsx'
import { OrderPage } from './order-page.tsx'
import { doughWhere } from './pages.ts'
import type { RoomParts } from './room.ts'
import { useRoom } from './room.ts'
import { RunningPage } from './running-page.tsx'
import { SheetsPage } from './sheets-page.tsx'
import { StockPage } from './stock-page.tsx'
import type { Typed } from './wanted-view.ts'

/** The dough room: what is wanted in the days to come, how it becomes mixes, and what runs there now. */
export function DoughPlace({ within, ...parts }: PlaceParts) {
  const { live, shop, words } = parts
  const say = useMemo(() => doughWords(words), [words])
  const room = useRoom(live.shopClock, live.nowMs, shop)
  // Kept here, so that what is typed for a day outlives a look at another page.
  const [typed, setTyped] = useState<ReadonlyMap<string, Typed>>(new Map())
  const { page, date } = doughWhere(within)
  if (room === null) return <p class="desk-quiet">{say.waiting}</p>
  const of = { ...parts, say, room }
  const ofDate = date ?? dateAfter(room.today, 1)
  return (
    <>
      <DoughNav page={page} date={ofDate} words={words} say={say} />
      {![...shop.formulas.values()].some((formula) => !formula.retired) && <NoFormulas {...of} />}
      {page === 'days' && <DaysPage {...of} />}
      {page === 'day' && (
        <DayPage
          key={ofDate}
          {...of}
          date={ofDate}
          typed={typed.get(ofDate) ?? NOTHING_TYPED}
          onTyped={(next) => setTyped(new Map([...typed, [ofDate, next]]))}
        />
      )}
      {page === 'order' && <OrderPage {...of} />}
      {page === 'sheets' && <SheetsPage {...of} date={ofDate} />}
      {page === 'stock' && <StockPage {...of} />}
      {page === 'running' && <RunningPage {...of} />}
      {page === 'learnt' && <LearntPage {...of} />}
      <p class="desk-quiet desk-small desk-noprint">{say.caution}</p>
    </>
  )
}

const NOTHING_TYPED: Typed = new Map()

function NoFormulas({ say }: RoomParts) {
  return (
    <p class="desk-notice desk-noprint">
      <span>{say.noFormulas}</span> <a href={addressOf('setUp')}>{say.goSetUp}</a>
    </p>
  )
}
