import { useMeasuredWidth } from '../parts/measured-width.ts'
import { Ruler } from '../parts/ruler.tsx'
import type { BenchWords } from '../words/bench.ts'
import type { DayView } from './day-view.ts'
import type { BenchSizes } from './glass.ts'

export interface TopBandProps {
  readonly day: DayView
  readonly words: BenchWords
  readonly sizes: BenchSizes
  readonly clockText: (ms: number) => string
  readonly offsetAtMs: (ms: number) => number
}

/** The time, what is to come and the link at the left; the day as a ruler at the right. */
export function TopBand({ day, words, sizes, clockText, offsetAtMs }: TopBandProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const { top } = words.bench
  return (
    <header class="bench-top">
      <div class="bench-time">
        <h1 class="bench-clock">{day.clock}</h1>
        {day.demo !== '' && <div class="bench-demo">{day.demo}</div>}
      </div>
      <div class="bench-day">
        {(day.link.isTrouble ? day.toGo.slice(0, 1) : day.toGo).map((text) => (
          <div key={text}>{text}</div>
        ))}
        <div class={day.link.isTrouble ? 'bench-link bench-trouble' : 'bench-link'} role="status">
          {day.link.text}
        </div>
      </div>
      <div class="bench-ruler" ref={ref}>
        {day.ruler !== null && widthPx > 0 && (
          <Ruler
            {...day.ruler}
            clockText={clockText}
            offsetAtMs={offsetAtMs}
            moreText={top.others}
            fontPx={Math.round(sizes.minPx * 0.8)}
            lines={1}
            widthPx={widthPx}
            name={top.day}
          />
        )}
      </div>
    </header>
  )
}
