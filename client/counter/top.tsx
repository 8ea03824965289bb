import { epochMs } from '../../shared-core/units.ts'
import { useMeasuredWidth } from '../parts/measured-width.ts'
import { Ruler } from '../parts/ruler.tsx'
import { offsetMsAt } from '../parts/ruler-of-day.ts'
import type { RulerDay } from '../parts/ruler-view.ts'
import type { CounterParts } from './counter-screen.tsx'

export interface TopProps extends CounterParts {
  readonly ruler: RulerDay | null
  readonly rulerFontPx: number
}

/** The time, and the day as a ruler. */
export function Top({ store, live, words, ruler, rulerFontPx }: TopProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const { shopClock } = live
  return (
    <header class="counter-top">
      <h1 class="counter-clock" aria-label={words.counter.title(words.times.clock(live.nowMs))}>
        {words.times.clock(live.nowMs)}
      </h1>
      <div class="counter-ruler" ref={ref}>
        {ruler !== null && shopClock !== null && widthPx > 0 && (
          <Ruler
            {...ruler}
            clockText={(ms) => store.localTime(epochMs(ms))}
            offsetAtMs={(ms) => offsetMsAt(shopClock, ms)}
            moreText={words.counter.day.others}
            fontPx={rulerFontPx}
            lines={1}
            widthPx={widthPx}
            name={words.counter.day.spoken}
          />
        )}
      </div>
    </header>
  )
}
