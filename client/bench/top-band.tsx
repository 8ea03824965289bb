import { useMeasuredWidth } from '../parts/measured-width.ts'
import { Ruler } from '../parts/ruler.tsx'
import type { BenchWords } from '../words/bench.ts'
import type { DayView } from './day-view.ts'
import type { BenchSizes } from './glass.ts'
import { wrapped } from './key-text.ts'

export interface TopBandProps {
  readonly day: DayView
  readonly words: BenchWords
  readonly sizes: BenchSizes
  /** Room for the words beside the time, in CSS pixels; `bench.css` has the same. */
  readonly roomPx: number
  readonly clockText: (ms: number) => string
  readonly offsetAtMs: (ms: number) => number
}

/** The time, what is to come and the link at the left; the day as a ruler at the right. */
export function TopBand({ day, words, sizes, roomPx, clockText, offsetAtMs }: TopBandProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const said = saidBeside(day, sizes.minPx, roomPx)
  const { top } = words.bench
  return (
    <header class="bench-top">
      <div class="bench-time">
        <h1 class="bench-clock">{day.clock}</h1>
        {day.demo !== '' && <div class="bench-demo">{day.demo}</div>}
      </div>
      <div class="bench-day">
        {said.toGo.map((text) => (
          <div key={text}>{text}</div>
        ))}
        <div class={day.link.isTrouble ? 'bench-link bench-trouble' : 'bench-link'} role="status">
          {said.link}
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

/** Lines of text in the band. */
export const TOP_LINES = 3

/** How the link is, as long as it fits in a line, and before it what changed and what is to come, as many whole lines as are left. */
function saidBeside({ changed, toGo, link }: DayView, minPx: number, roomPx: number) {
  const rows = (text: string) => wrapped(text, minPx, roomPx, 'regular').length
  const linkText = link.isTrouble || rows(link.text) === 1 ? link.text : link.short
  let left = TOP_LINES - rows(linkText)
  const takes = (text: string) => {
    if (rows(text) > left) return false
    left -= rows(text)
    return true
  }
  const change = changed.find(takes)
  const shown = (link.isTrouble ? toGo.slice(0, 1) : toGo).filter(takes)
  return { toGo: [...(change === undefined ? [] : [change]), ...shown], link: linkText }
}
