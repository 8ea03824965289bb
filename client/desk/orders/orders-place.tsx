import '../sheet/sheet.css'
import './orders-print.css'
import './orders.css'
import { useMemo } from 'preact/hooks'
import { openDetailsBook } from '../../live/details-book.ts'
import { useDetails } from '../../parts/use-details.ts'
import { deskOrderWords } from '../../words/desk-orders.ts'
import type { PlaceParts } from '../desk-screen.tsx'
import { useRoom } from '../dough/room.ts'
import { addressOf } from '../place.ts'
import { DayPage } from './day-page.tsx'
import { FilesPage } from './files-page.tsx'
import { NamesPage } from './names-page.tsx'
import { OneStandingPage } from './one-standing-page.tsx'
import { OrderPage } from './order-page.tsx'
import { PackingPage } from './packing-page.tsx'
import type { OrdersPage, TopPage } from './pages.ts'
import { ordersPage, TOP_PAGES, topOf, withinOf } from './pages.ts'
import type { OrdersParts } from './parts.ts'
import { StandingPage } from './standing-page.tsx'

/** Orders by day, standing ones, what is packed and picked, who ordered, and what comes in files. */
export function OrdersPlace({ within, ...parts }: PlaceParts) {
  const { live, shop, state, words } = parts
  const say = useMemo(() => deskOrderWords(words), [words])
  const room = useRoom(live.shopClock, live.nowMs, shop)
  const book = useMemo(() => openDetailsBook(), [])
  const all = useMemo(() => [...state.orders.values(), ...state.standing.values()], [state])
  useDetails(book, all, live)
  if (room === null) return <p class="desk-quiet">{say.waiting}</p>
  const page = ordersPage(within)
  return (
    <>
      <nav class="desk-pages desk-noprint" aria-label={say.pagesName}>
        {TOP_PAGES.map((top) => (
          <a
            key={top}
            href={addressOf('orders', withinOf(firstOf(top)))}
            aria-current={topOf(page) === top ? 'page' : undefined}
          >
            {say.pages[top]}
          </a>
        ))}
      </nav>
      <Page page={page} parts={{ ...parts, say, room, book }} />
    </>
  )
}

function firstOf(top: TopPage): OrdersPage {
  return top === 'day' || top === 'packing' ? { kind: top, date: null } : { kind: top }
}

function Page({ page, parts }: { readonly page: OrdersPage; readonly parts: OrdersParts }) {
  switch (page.kind) {
    case 'day':
      return <DayPage {...parts} date={page.date ?? parts.room.today} />
    case 'new':
      return <OrderPage key="new" {...parts} orderId={null} date={page.date} />
    case 'order':
      return <OrderPage key={page.orderId} {...parts} orderId={page.orderId} date={null} />
    case 'standing':
      return <StandingPage {...parts} />
    case 'oneStanding':
      return <OneStandingPage key={page.standingId} {...parts} standingId={page.standingId} />
    case 'packing':
      return <PackingPage {...parts} date={page.date ?? parts.room.today} />
    case 'names':
      return <NamesPage {...parts} />
    case 'files':
      return <FilesPage {...parts} />
  }
}
