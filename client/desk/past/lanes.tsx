import type { TargetedPointerEvent } from 'preact'
import { useMemo } from 'preact/hooks'
import type { ShelfId } from '../../../shared-core/ids.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { useMeasuredWidth } from '../../parts/measured-width.ts'
import { offsetMsAt } from '../../parts/ruler-of-day.ts'
import type { PastWords } from '../../words/desk-past.ts'
import type { Words } from '../../words/words.ts'
import type { PlayedDay } from './day-record.ts'
import type { Lane, LaneBar } from './lanes-layout.ts'
import { HOURS_PX, lanesLayout, xAt } from './lanes-layout.ts'

interface LanesProps {
  readonly day: PlayedDay
  readonly shelfIds: readonly ShelfId[]
  readonly atMs: EpochMs
  readonly words: Words
  readonly say: PastWords
  readonly onMove: (atMs: EpochMs) => void
}

const MINUTE_MS = 60_000
const BAR_ROUND_PX = 6

/** The day drawn: a lane for each shelf and for each rod that ran out. A touch or a drag goes to that instant. */
export function Lanes({ day, shelfIds, atMs, words, say, onMove }: LanesProps) {
  const [ref, widthPx] = useMeasuredWidth<HTMLDivElement>()
  const layout = useMemo(
    () => (widthPx === 0 ? null : lanesLayout(day, shelfIds, widthPx, offsetMsAt(day.clock, day.fromMs))),
    [day, shelfIds, widthPx],
  )
  const goTo = (event: TargetedPointerEvent<SVGSVGElement>) => {
    const { left, width } = event.currentTarget.getBoundingClientRect()
    const part = Math.min(1, Math.max(0, (event.clientX - left) / width))
    const wanted = day.fromMs + part * (day.toMs - day.fromMs)
    onMove(epochMs(Math.round(wanted / MINUTE_MS) * MINUTE_MS))
  }
  return (
    <div ref={ref} class="desk-lanes" style={{ height: `${layout?.heightPx ?? 0}px` }}>
      {layout !== null && (
        // The ruler below it does the same from the keyboard.
        <svg
          aria-hidden="true"
          width={widthPx}
          height={layout.heightPx}
          viewBox={`0 0 ${widthPx} ${layout.heightPx}`}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId)
            goTo(event)
          }}
          onPointerMove={(event) => event.buttons > 0 && goTo(event)}
        >
          <rect class="desk-lanes-open" x={layout.open.x} y={0} width={layout.open.width} height={layout.heightPx} />
          {layout.hours.map(({ atMs: hourMs, x, hasText }) => (
            <g key={hourMs}>
              <line class="desk-lanes-hour" x1={x} x2={x} y1={HOURS_PX - 4} y2={layout.heightPx} />
              {hasText && (
                <text class="desk-lanes-text" x={x} y={HOURS_PX - 8} text-anchor="middle">
                  {words.times.clock(epochMs(hourMs))}
                </text>
              )}
            </g>
          ))}
          {layout.lanes.map((lane) => (
            <OneLane key={lane.key} lane={lane} widthPx={widthPx} words={words} say={say} />
          ))}
          <Cursor x={xAt(day, widthPx, atMs)} height={layout.heightPx} />
        </svg>
      )}
    </div>
  )
}

function Cursor({ x, height }: { readonly x: number; readonly height: number }) {
  return (
    <g class="desk-lanes-cursor">
      <line x1={x} x2={x} y1={4} y2={height} />
      <circle cx={x} cy={5} r={5} />
    </g>
  )
}

interface OneLaneProps {
  readonly lane: Lane
  readonly widthPx: number
  readonly words: Words
  readonly say: PastWords
}

function OneLane({ lane, widthPx, words, say }: OneLaneProps) {
  const { of, y, height, bars } = lane
  const name = of.kind === 'shelf' ? words.names.shelf(of.shelfId) : words.names.variety(of.varietyId)
  return (
    <g>
      <rect class={`desk-lane desk-lane-${of.kind}`} x={0} y={y} width={widthPx} height={height} rx={height / 2} />
      {bars.map((bar) => (
        <Bar key={bar.key} bar={bar} y={y} height={height} title={titleOf(bar, name, words, say)} />
      ))}
      <text class="desk-lanes-text desk-lanes-name" x={8} y={y + height / 2 + 4}>
        {name}
      </text>
    </g>
  )
}

function Bar({
  bar,
  y,
  height,
  title,
}: {
  readonly bar: LaneBar
  readonly y: number
  readonly height: number
  readonly title: string
}) {
  const { x, width, flipX, load } = bar
  const round = Math.min(BAR_ROUND_PX, width / 2)
  return (
    <g>
      <title>{title}</title>
      <rect
        class={load === null ? 'desk-lanes-gap' : 'desk-lanes-load'}
        x={x}
        y={y}
        width={width}
        height={height}
        rx={round}
      />
      {flipX !== null && <line class="desk-lanes-flip" x1={flipX} x2={flipX} y1={y + 3} y2={y + height - 3} />}
    </g>
  )
}

function titleOf({ load, gap }: LaneBar, name: string, words: Words, say: PastWords): string {
  if (gap !== null) return say.replay.gap(name, gap.fromMs, gap.toMs)
  return load === null ? '' : say.replay.load(name, load.fromMs, load.toMs, words.line.contents(load.lines))
}
