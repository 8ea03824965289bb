import { plotBars } from './plot-bars.ts'

interface PlotProps {
  readonly title: string
  /** Oldest first; null: not known. */
  readonly values: readonly (number | null)[]
  readonly spoken: string
  readonly first: string
  readonly last: string
}

const WIDTH_PX = 300
const HEIGHT_PX = 84

/** One figure by day as bars from a line at nought, the highest and the lowest told in numbers. */
export function Plot({ title, values, spoken, first, last }: PlotProps) {
  const { bars, zeroY, highest, lowest } = plotBars(values, { widthPx: WIDTH_PX, heightPx: HEIGHT_PX })
  return (
    <figure class="desk-plot">
      <figcaption>{title}</figcaption>
      <svg role="img" aria-label={spoken} viewBox={`0 0 ${WIDTH_PX} ${HEIGHT_PX}`} width="100%">
        {bars.map(({ x, y, width, height, isNegative }) => (
          <rect
            key={x}
            class={isNegative ? 'desk-plot-under' : 'desk-plot-bar'}
            x={x}
            y={y}
            width={width}
            height={height}
          />
        ))}
        <line class="desk-plot-zero" x1={0} x2={WIDTH_PX} y1={zeroY} y2={zeroY} />
      </svg>
      <p class="desk-quiet desk-small desk-plot-foot">
        <span>{first}</span>
        <span>
          {lowest < 0 ? `−${-lowest} … ` : ''}
          {highest}
        </span>
        <span>{last}</span>
      </p>
    </figure>
  )
}
