import { useMemo } from 'preact/hooks'
import type { State } from '../../shared-core/day/state.ts'
import type { LiveState, ShopStore } from '../live/shop-store.ts'
import type { GlassSize } from '../parts/glass-size.ts'
import { useGlassSize } from '../parts/glass-size.ts'
import { ScreenSize } from '../parts/screen-size.tsx'
import { useLive } from '../parts/use-live.ts'
import { useWipeLock, WipeLock } from '../parts/wipe-lock.tsx'
import type { CounterWords } from '../words/counter.ts'
import { counterWords } from '../words/counter.ts'
import { settingsWords } from '../words/settings.ts'
import { languageOf, wordsFor } from '../words/words.ts'
import { CounterBoard } from './counter-board.tsx'
import type { CounterSizes } from './counter-sizes.ts'
import { counterSizes } from './counter-sizes.ts'

/** The tablet at the counter. */
export function CounterScreen({ store }: { readonly store: ShopStore }) {
  const live = useLive(store)
  const glass = useGlassSize()
  const shop = live.shown?.shop ?? null
  const language = languageOf(live.settings.language, shop)
  const words = useMemo(
    () => counterWords(wordsFor(language, shop, (atMs) => store.localTime(atMs))),
    [language, shop, store],
  )
  const sizes = useMemo(() => counterSizes(live.settings, glass), [live.settings, glass])
  const { shown } = live
  const wipe = useWipeLock()
  return (
    <ScreenSize panel={sizes.panel} distanceM={sizes.distanceM}>
      <div class="counter" lang={language} style={sizeVariables(sizes)}>
        {shown === null || shop === null ? (
          <main class="counter-waiting">
            <h1>{shown === null ? words.counter.day.looking : words.counter.day.noSetUp}</h1>
            <p role="status">{words.live.connection(live.connection)}</p>
          </main>
        ) : (
          <CounterBoard
            store={store}
            live={live}
            state={shown}
            words={words}
            sizes={sizes}
            glass={glass}
            onWipe={wipe.lock}
          />
        )}
        <WipeLock leftMs={wipe.leftMs} mmPx={sizes.mmPx} words={settingsWords(words).comfort} onEnd={wipe.end} />
      </div>
    </ScreenSize>
  )
}

export interface CounterParts {
  readonly store: ShopStore
  readonly live: LiveState
  readonly state: State
  readonly words: CounterWords
  readonly sizes: CounterSizes
  readonly glass: GlassSize
  /** Locks the glass for a moment, to be wiped. */
  readonly onWipe: () => void
}

function sizeVariables({ keyPx, gapPx, marginPx, numberPx, namePx, quietPx }: CounterSizes) {
  return {
    '--key': `${keyPx}px`,
    '--gap': `${gapPx}px`,
    '--margin': `${marginPx}px`,
    '--number': `${numberPx}px`,
    '--name': `${namePx}px`,
    '--small': `${quietPx}px`,
  }
}
