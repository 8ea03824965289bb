import { useMemo } from 'preact/hooks'
import { useStore } from 'zustand'
import type { State } from '../../shared-core/day/state.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { DeskPart, DeskWords } from '../words/desk.ts'
import { deskWords } from '../words/desk.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import { CautionsPanel } from './cautions-panel.tsx'
import { DayPanel } from './day-panel.tsx'
import { DistancePanel } from './distance-panel.tsx'
import { DonePanel } from './done-panel.tsx'
import { DryPanel } from './dry-panel.tsx'
import { Head } from './head.tsx'
import { LoadsPanel } from './loads-panel.tsx'
import { Notices } from './notices.tsx'
import { Panel } from './panel.tsx'
import { ScreensPanel } from './screens-panel.tsx'
import { SetUpPanel } from './set-up-panel.tsx'
import { TraysPanel } from './trays-panel.tsx'

/** What every part of the desk is made with. */
export interface DeskParts {
  readonly store: ShopStore
  readonly live: LiveState
  readonly state: State
  readonly shop: Shop
  readonly words: DeskWords
}

/** Any browser, with a mouse and a keyboard. */
export function DeskScreen({ store }: { readonly store: ShopStore }) {
  const live = useStore(store)
  const shop = live.shown?.shop ?? null
  const language = languageOf(live.settings.language, shop)
  const words = useMemo(
    () => deskWords(wordsFor(language, shop, (atMs) => store.localTime(atMs))),
    [language, shop, store],
  )
  return (
    <div class="desk" lang={language}>
      <Head store={store} live={live} shop={shop} words={words} />
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

const ORDER: readonly DeskPart[] = ['day', 'loads', 'trays', 'done', 'dry', 'setUp', 'screens', 'distance', 'cautions']

function Desk(parts: DeskParts) {
  const { words, state } = parts
  const { titles } = words.desk
  const counts: { readonly [part in DeskPart]?: number } = { dry: state.unsure.size }
  return (
    <div class="desk-body">
      <nav class="desk-nav">
        {ORDER.map((part) => (
          <a key={part} href={`#${part}`}>
            {titles[part]}
            {(counts[part] ?? 0) > 0 && <span class="desk-count">{counts[part]}</span>}
          </a>
        ))}
      </nav>
      <main>
        <Notices {...parts} />
        {ORDER.map((part) => (
          <Panel key={part} part={part} title={titles[part]}>
            <PartOf part={part} parts={parts} />
          </Panel>
        ))}
      </main>
    </div>
  )
}

function PartOf({ part, parts }: { readonly part: DeskPart; readonly parts: DeskParts }) {
  const Shown = PANELS[part]
  return <Shown {...parts} />
}

const PANELS = {
  day: DayPanel,
  loads: LoadsPanel,
  trays: TraysPanel,
  done: DonePanel,
  dry: DryPanel,
  setUp: SetUpPanel,
  screens: ScreensPanel,
  distance: DistancePanel,
  cautions: CautionsPanel,
}
