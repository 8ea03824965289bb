import { useEffect, useMemo, useRef } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import { useLive } from '../parts/use-live.ts'
import type { DeskWords } from '../words/desk.ts'
import { deskWords } from '../words/desk.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import { Head } from './head.tsx'
import { HealthStrip } from './health-strip.tsx'
import { LoadsPlace } from './loads-place.tsx'
import { Nav } from './nav.tsx'
import { Notices } from './notices.tsx'
import type { Where } from './place.ts'
import {
  ClosePlace,
  ComingPlace,
  DoughPlace,
  HistoryPlace,
  OrdersPlace,
  PastPlace,
  PlanPlace,
  SalesPlace,
  ScreensPlace,
} from './places-later.tsx'
import { useFirstRun } from './set-up/use-first-run.ts'
import { SetUpPanel } from './set-up-panel.tsx'
import { TodayPlace } from './today/today-place.tsx'
import { useWhere } from './use-where.ts'

/** What every part of the desk is made with. */
export interface DeskParts {
  readonly store: ShopStore
  readonly live: LiveState
  readonly state: State
  readonly shop: Shop
  readonly words: DeskWords
}

/** A part that has addresses of its own below its place's. */
export interface PlaceParts extends DeskParts {
  readonly within: string
}

/** Any browser, with a mouse and a keyboard, or a phone. */
export function DeskScreen({ store }: { readonly store: ShopStore }) {
  const live = useLive(store)
  const shop = live.shown?.shop ?? null
  const language = languageOf(live.settings.language, shop)
  const words = useMemo(
    () => deskWords(wordsFor(language, shop, (atMs) => store.localTime(atMs))),
    [language, shop, store],
  )
  useEffect(() => {
    document.documentElement.lang = language
    document.title = `${words.desk.title} · ${shop?.profile.name ?? 'Boilboard'}`
  }, [language, words, shop])
  return (
    <div class="desk" lang={language} style={{ fontSize: `${(16 * live.settings.textPercent) / 100}px` }}>
      <Head store={store} live={live} shop={shop} words={words} />
      <HealthStrip words={words} />
      {live.shown === null ? (
        <main class="desk-waiting">
          <h1>{words.desk.looking}</h1>
        </main>
      ) : shop === null ? (
        <main class="desk-waiting">
          <h1>{words.desk.noSetUp}</h1>
          <SetUpPanel store={store} live={live} words={words} />
        </main>
      ) : (
        <Desk store={store} live={live} state={live.shown} shop={shop} words={words} />
      )}
    </div>
  )
}

function Desk(parts: DeskParts) {
  const where = useWhere()
  useFirstRun(parts.state)
  const { words } = parts
  const title = words.desk.places[where.place]
  const main = useRef<HTMLElement>(null)
  const last = useRef(where)
  useEffect(() => {
    const from = last.current
    last.current = where
    if (from.place !== where.place) {
      // Whoever went somewhere is there: at its top, and with the keyboard in it.
      window.scrollTo(0, 0)
      main.current?.focus({ preventScroll: true })
    } else if (from.within !== where.within && document.activeElement === document.body) {
      // What was touched went with its page; the keyboard does not begin at the top of the screen again.
      main.current?.focus({ preventScroll: true })
    }
  }, [where])
  return (
    <div class="desk-body">
      <Nav place={where.place} state={parts.state} words={words} />
      <main ref={main} tabIndex={-1} aria-label={title}>
        <Notices {...parts} />
        <h1 class="desk-place">{title}</h1>
        <Place where={where} parts={parts} />
      </main>
    </div>
  )
}

function Place({ where: { place, within }, parts }: { readonly where: Where; readonly parts: DeskParts }) {
  switch (place) {
    case 'today':
      return <TodayPlace {...parts} />
    case 'orders':
      return <OrdersPlace {...parts} within={within} />
    case 'loads':
      return <LoadsPlace {...parts} />
    case 'coming':
      return <ComingPlace {...parts} within={within} />
    case 'plan':
      return <PlanPlace {...parts} within={within} />
    case 'dough':
      return <DoughPlace {...parts} within={within} />
    case 'close':
      return <ClosePlace {...parts} />
    case 'history':
      return <HistoryPlace {...parts} within={within} />
    case 'past':
      return <PastPlace {...parts} within={within} />
    case 'salesIn':
      return <SalesPlace {...parts} within={within} />
    case 'setUp':
      return <SetUpPanel store={parts.store} live={parts.live} words={parts.words} />
    case 'screens':
      return <ScreensPlace {...parts} within={within} />
  }
}
