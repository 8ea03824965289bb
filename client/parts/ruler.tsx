import { Drawing } from './drawing.tsx'
import { useMeasuredWidth } from './measured-width.ts'
import { hourMarks } from './ruler-hours.ts'
import type { RulerSize } from './ruler-size.ts'
import { rulerSize } from './ruler-size.ts'
import type { RulerDay, RulerLabel } from './ruler-view.ts'
import { rulerView, scale } from './ruler-view.ts'

export interface RulerProps extends RulerDay {
  /** A clock time as the shop writes it, e.g. "6:47"; the hour numbers are what stands before its colon. */
  readonly clockText: (ms: number) => string
  /** The shop's offset from UTC in ms at an instant. */
  readonly offsetAtMs: (ms: number) => number
  /** The words for so many orders that have no label, e.g. "+3". */
  readonly moreText: (count: number) => string
  /** CSS pixels: all its text has this size. */
  readonly fontPx: number
  /** Lines of labels above the ruler: 2 when left out. */
  readonly lines?: 1 | 2 | undefined
  /** CSS pixels; as wide as its place when left out. */
  readonly widthPx?: number | undefined
  /** For those who listen instead of looking. */
  readonly name?: string | undefined
}

/** The day as a ruler: what is past, now, the last load, the changeover, the second menu, and orders as marks on it. */
export function Ruler(props: RulerProps) {
  const [ref, measuredPx] = useMeasuredWidth<HTMLDivElement>()
  const widthPx = props.widthPx ?? measuredPx
  const size = rulerSize(props.fontPx, props.lines ?? 2)
  return (
    <div ref={ref} class="ruler" style={{ height: `${size.height}px` }}>
      {widthPx > 0 && (
        <Drawing
          class="ruler-drawing"
          viewBox={`0 0 ${widthPx} ${size.height}`}
          width={`${widthPx}px`}
          height={`${size.height}px`}
          name={props.name}
        >
          <Bar {...props} widthPx={widthPx} size={size} />
          <Hours {...props} widthPx={widthPx} size={size} />
          <Marks {...props} widthPx={widthPx} size={size} />
          <Labels {...props} widthPx={widthPx} size={size} />
        </Drawing>
      )}
    </div>
  )
}

type Sized = RulerProps & { readonly widthPx: number; readonly size: RulerSize }
function Bar({ fromMs, toMs, nowMs, changeover, secondMenu, widthPx, size }: Sized) {
  const xOf = scale({ fromMs, toMs }, widthPx)
  const box = { y: size.barTop, height: size.bar }
  const round = Math.round(size.bar * 0.28)
  const dash = size.fontPx * 0.22
  const line = Math.max(2, Math.round(size.fontPx * 0.08))
  return (
    <>
      <rect class="ruler-bar" {...box} width={widthPx} rx={round} />
      <rect class="ruler-past" {...box} width={xOf(nowMs)} rx={round} />
      {secondMenu !== undefined && (
        <rect class="ruler-second-menu" {...box} {...across(xOf, secondMenu)} rx={round} stroke-width={line} />
      )}
      {changeover !== undefined && (
        <rect
          class="ruler-changeover"
          {...box}
          {...across(xOf, changeover)}
          stroke-width={line}
          stroke-dasharray={`${dash} ${dash * 0.7}`}
        />
      )}
    </>
  )
}

function across(xOf: (ms: number) => number, span: { fromMs: number; toMs: number }) {
  const x = xOf(span.fromMs)
  return { x, width: Math.max(0, xOf(span.toMs) - x) }
}

function Hours({ clockText, offsetAtMs, size, widthPx, fromMs, toMs }: Sized) {
  const span = { fromMs, toMs, widthPx, fontPx: size.fontPx }
  const xOf = scale(span, widthPx)
  const numbers = hourMarks(span, offsetAtMs, (ms) => clockText(ms).split(':')[0] ?? '')
  return (
    <g class="ruler-hours" font-size={size.fontPx} text-anchor="middle">
      {numbers.map(({ atMs, text }) => (
        <g key={atMs}>
          <rect x={xOf(atMs) - 1} y={size.barBottom} width="2" height={size.fontPx * 0.22} />
          <text x={xOf(atMs)} y={size.barBottom + size.hourBaseline}>
            {text}
          </text>
        </g>
      ))}
    </g>
  )
}

function Marks({ fromMs, toMs, nowMs, lastDip, lastLoad, orders, size, widthPx }: Sized) {
  const xOf = scale({ fromMs, toMs }, widthPx)
  const thick = Math.max(3, Math.round(size.fontPx * 0.15))
  const over = size.fontPx * 0.32
  const half = size.fontPx * 0.3
  return (
    <>
      {lastDip !== undefined && (
        <rect
          class="ruler-last-load"
          x={xOf(lastDip.atMs) - thick / 3}
          y={size.barTop}
          width={(thick * 2) / 3}
          height={size.bar}
        />
      )}
      {lastLoad !== undefined && (
        <rect
          class="ruler-last-load"
          x={xOf(lastLoad.atMs) - thick / 3}
          y={size.barTop - over}
          width={(thick * 2) / 3}
          height={size.bar + over}
        />
      )}
      {orders.map(({ key, atMs, trouble }) => (
        <path
          key={key}
          class={
            trouble === true ? 'ruler-order ruler-trouble' : atMs < nowMs ? 'ruler-order ruler-done' : 'ruler-order'
          }
          d={`M${xOf(atMs)} ${size.barTop}l${-half} ${-half * 1.5}h${2 * half}Z`}
        />
      ))}
      <rect
        class="ruler-now"
        x={xOf(nowMs) - thick / 2}
        y={size.barTop - over}
        width={thick}
        height={size.bar + 2 * over}
        rx={thick / 2}
      />
    </>
  )
}

function Labels(props: Sized) {
  const { size, widthPx, moreText } = props
  const { labels, more } = rulerView(props, { widthPx, fontPx: size.fontPx, lines: size.lines }, moreText)
  const baseline = (line: number) => size.linePx * (size.lines - line) - size.fontPx * 0.32
  return (
    <g font-size={size.fontPx}>
      {labels.map((label) => (
        <Label key={label.key} label={label} baseline={baseline(label.line)} size={size} />
      ))}
      {more !== '' && (
        <text class="ruler-more" x={widthPx} y={baseline(size.lines - 1)} text-anchor="end">
          {more}
        </text>
      )}
    </g>
  )
}

/** A label in the upper line is tied to its mark by a thin leader. */
function Label({ label, baseline, size }: { label: RulerLabel; baseline: number; size: RulerSize }) {
  const { markX, leftX, widthPx, line, tone, text } = label
  const footX = Math.min(Math.max(markX, leftX), leftX + widthPx)
  return (
    <g class={`ruler-label ruler-${tone}`}>
      <text x={leftX} y={baseline}>
        {text}
      </text>
      {line === 1 && (
        <path
          class="ruler-leader"
          d={`M${footX} ${baseline + size.fontPx * 0.3}L${markX} ${size.barTop - size.fontPx * 0.5}`}
        />
      )}
    </g>
  )
}
