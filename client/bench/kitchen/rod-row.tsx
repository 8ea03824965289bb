import { Key } from '../../parts/key.tsx'
import { besideRingPx, OrderRing } from '../../parts/order-ring.tsx'
import { middleOf, strung } from '../../parts/strung.ts'
import { textWidthPx } from '../../parts/text-width.ts'
import type { KitchenRoomWords } from '../../words/bench-kitchen.ts'
import type { BenchSizes } from '../glass.ts'
import type { KitchenLayout } from './kitchen-layout.ts'
import type { HeadRow } from './rod-head.ts'
import { rodHead } from './rod-head.ts'
import type { RodRing, RodView } from './rods-view.ts'

export interface RodRowProps {
  readonly rod: RodView
  readonly span: { readonly fromMs: number; readonly toMs: number }
  readonly layout: KitchenLayout
  readonly sizes: BenchSizes
  readonly words: KitchenRoomWords
  readonly gapPx: number
  /** Of the rings that were chosen for the oven. */
  readonly chosen: ReadonlySet<string>
  readonly onPress: (ring: RodRing) => void
  readonly onMore: (rod: RodView) => void
}

/** The edge of a ring's key around the ring. */
const RING_IN_KEY = 0.92

/** A lying rod: what is on it above, rings along the ruler by when they are due, how many there are at its end. */
export function RodRow(props: RodRowProps) {
  const { rod, span, layout, sizes, words, gapPx, chosen, onPress, onMore } = props
  const { ringPx, spanPx, totalPx } = layout
  const rows = rodHead(rod, layout, sizes.minPx)
  const headPx = rows.length * layout.headPx
  const sizePx = Math.round(ringPx * RING_IN_KEY)
  const besidePx = ({ mark, isAllergy }: RodRing) => besideRingPx(mark, sizePx, isAllergy, sizes.minPx)
  const { placed, hidden } = strung(
    rod.rings.map((ring) => ({ key: ring.key, atMs: ring.dueAtMs, widthPx: ringPx + besidePx(ring) })),
    { ...span, widthPx: spanPx, gapPx, morePx: ringPx },
  )
  const total = rod.rings.length
  return (
    <section
      class="kitchen-rod"
      style={{ height: `${headPx + ringPx}px` }}
      data-rod={rod.key}
      aria-label={words.kitchen.total(total, rod.name)}
    >
      <RodHead rows={rows} rod={rod} layout={layout} />
      <div class="kitchen-rod-line" style={{ top: `${headPx + ringPx / 2}px`, width: `${spanPx + gapPx}px` }} />
      {placed.map(({ key, leftPx }) => {
        const ring = rod.rings.find((one) => one.key === key)
        if (ring === undefined) return null
        const isBeside = besidePx(ring) > 0
        return (
          <div
            key={key}
            class={`kitchen-ring kitchen-ring-${ring.stage}`}
            style={{
              left: `${leftPx}px`,
              top: `${headPx}px`,
              width: `${ringPx + besidePx(ring)}px`,
              height: `${ringPx}px`,
            }}
            data-ring={key}
          >
            <Key
              name={ring.name}
              chosen={ring.isOven && chosen.size > 0 ? chosen.has(key) : undefined}
              onPress={() => onPress(ring)}
            >
              <OrderRing {...ring.ring} mark={isBeside ? '' : ring.mark} size={sizePx} isAllergy={ring.isAllergy} />
              {isBeside && <strong class="kitchen-mark">{ring.mark}</strong>}
            </Key>
          </div>
        )
      })}
      {hidden > 0 && (
        <div class="kitchen-more" style={{ left: `${spanPx - ringPx}px`, top: `${headPx}px`, width: `${ringPx}px` }}>
          <Key name={words.kitchen.others(hidden)} onPress={() => onMore(rod)}>
            <span class="bench-label">{words.kitchen.others(hidden)}</span>
          </Key>
        </div>
      )}
      <output class="kitchen-total" style={{ top: `${headPx}px`, width: `${totalPx}px`, height: `${ringPx}px` }}>
        {total}
      </output>
    </section>
  )
}

/** What the rod holds, an allergy before all else, and how it stands with the first of them. */
function RodHead({ rows, rod, layout }: { readonly rows: readonly HeadRow[] } & Pick<RodRowProps, 'rod' | 'layout'>) {
  const { headPx } = layout
  return (
    <>
      {rows.map(({ allergy, name, told }) => (
        <div
          key={`${allergy} ${name}`}
          class="kitchen-rod-head"
          style={{ height: `${headPx}px`, lineHeight: `${headPx}px` }}
        >
          {allergy !== '' && <strong class="kitchen-allergy">{allergy}</strong>}
          {name !== '' && <strong class="kitchen-rod-name">{name}</strong>}
          {told !== '' && (
            <span class={rod.tone === 'late' ? 'kitchen-told bench-trouble' : 'kitchen-told'}>{told}</span>
          )}
        </div>
      ))}
    </>
  )
}

export interface AxisProps {
  readonly span: { readonly fromMs: number; readonly toMs: number }
  readonly nowMs: number
  readonly layout: KitchenLayout
  readonly minPx: number
  readonly nowText: string
  readonly clockText: (ms: number) => string
  /** Of the rods below it: the line of now goes through all of them. */
  readonly heightPx: number
}

/** Tried in turn until the clock times keep apart. */
const STEPS_MIN = [5, 10, 15, 30] as const
const MINUTE_MS = 60_000

/** The ruler that the rods lie along: clock times every five minutes or more, and now as a line across. */
export function RodAxis({ span, nowMs, layout, minPx, nowText, clockText, heightPx }: AxisProps) {
  const { spanPx, axisPx } = layout
  const xOf = (ms: number) => Math.round(middleOf(ms, { ...span, widthPx: spanPx }))
  const nowX = xOf(nowMs)
  const tickPx = textWidthPx('00:00', minPx) + minPx
  const pxOf = (minutes: number) => (minutes * MINUTE_MS * spanPx) / (span.toMs - span.fromMs)
  const stepMs = (STEPS_MIN.find((minutes) => pxOf(minutes) >= tickPx) ?? 60) * MINUTE_MS
  const ticks: number[] = []
  for (let ms = Math.ceil(span.fromMs / stepMs) * stepMs; ms <= span.toMs; ms += stepMs) ticks.push(ms)
  const nowPx = textWidthPx(nowText, minPx, 'strong')
  const isFree = (ms: number) => {
    const half = textWidthPx(clockText(ms), minPx) / 2
    const clearPx = half + nowPx / 2 + minPx * 0.6
    return Math.abs(xOf(ms) - nowX) > clearPx && xOf(ms) >= half && xOf(ms) <= spanPx - half
  }
  return (
    <div class="kitchen-axis" style={{ height: `${axisPx}px`, lineHeight: `${axisPx}px` }} aria-hidden="true">
      <div class="kitchen-now" style={{ left: `${nowX}px`, top: `${axisPx}px`, height: `${heightPx}px` }} />
      <strong class="kitchen-now-text" style={{ left: `${nowX}px` }}>
        {nowText}
      </strong>
      {ticks.filter(isFree).map((ms) => (
        <span key={ms} class="kitchen-tick" style={{ left: `${xOf(ms)}px` }}>
          {clockText(ms)}
        </span>
      ))}
    </div>
  )
}
