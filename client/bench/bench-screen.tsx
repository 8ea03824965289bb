import { useMemo } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { GlassSize } from '../parts/glass-size.ts'
import { useGlassSize } from '../parts/glass-size.ts'
import { ScreenSize } from '../parts/screen-size.tsx'
import { useLive } from '../parts/use-live.ts'
import type { BenchWords } from '../words/bench.ts'
import { benchWords } from '../words/bench.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import { BenchBoard } from './bench-board.tsx'
import type { BenchSizes } from './glass.ts'
import { benchSizes } from './glass.ts'

/** The tablet at the line. */
export function BenchScreen({ store }: { readonly store: ShopStore }) {
  const live = useLive(store)
  const glass = useGlassSize()
  const shop = live.shown?.shop ?? null
  const language = languageOf(live.settings.language, shop)
  const words = useMemo(
    () => benchWords(wordsFor(language, shop, (atMs) => store.localTime(atMs))),
    [language, shop, store],
  )
  const sizes = useMemo(() => benchSizes(live.settings, glass), [live.settings, glass])
  return (
    <ScreenSize panel={sizes.panel} distanceM={sizes.distanceM}>
      <div class="bench" lang={language}>
        {live.shown === null || shop === null ? (
          <Waiting
            words={words}
            text={live.shown === null ? words.bench.top.waiting : words.bench.top.noShop}
            live={live}
          />
        ) : (
          <BenchBoard
            store={store}
            live={live}
            state={live.shown}
            shop={shop}
            words={words}
            sizes={sizes}
            glass={glass}
          />
        )}
      </div>
    </ScreenSize>
  )
}

export interface BoardProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly state: State
  readonly shop: Shop
  readonly words: BenchWords
  readonly sizes: BenchSizes
  readonly glass: GlassSize
}

/** Nothing to show yet: what is being waited for, and what to do when it does not come. */
function Waiting({
  text,
  words,
  live,
}: {
  readonly text: string
  readonly words: BenchWords
  readonly live: LiveState
}) {
  return (
    <main class="bench-waiting">
      <h1 class="bench-waiting-title">{text}</h1>
      <div class="bench-quiet">{words.live.connection(live.connection)}</div>
    </main>
  )
}
