import { useMemo, useState } from 'preact/hooks'
import uPlot from 'uplot'
import type { HistoryDayJson, SaidJson } from '../../../shared-core/live/sales-history.ts'
import { dateOf, dayNumber } from '../history/days-view.ts'
import { PlotCanvas } from '../history/plot-canvas.tsx'
import { daysAxes } from '../history/plot-options.ts'
import type { PlotTheme } from '../history/plot-theme.ts'
import type { TrustParts } from './parts.ts'

interface ForecastPlotProps extends TrustParts {
  readonly name: string
  readonly days: readonly HistoryDayJson[]
}

interface Compared {
  readonly date: string
  readonly asked: number
  readonly isEstimated: boolean
  readonly said: SaidJson
}

const HEIGHT_PX = 260
const DOT_PX = 6

/** The range that was said for each day as a bar, what was asked for as a dot: full, or a ring where it is estimated. */
export function ForecastPlot({ name, days, told, words }: ForecastPlotProps) {
  const [over, setOver] = useState<number | null>(null)
  const compared = useMemo(() => days.flatMap(comparedOf), [days])
  const data = useMemo(() => dataOf(compared), [compared])
  const drawn = useMemo(() => {
    return (theme: PlotTheme) => optionsOf(theme, compared, (date) => words.times.date(date))
  }, [compared, words])
  if (compared.length === 0) return <p>{told.one.noDays}</p>
  const one = over === null ? undefined : compared[over]
  const inside = compared.filter(({ asked, said }) => said.q10 <= asked && asked <= said.q90).length
  return (
    <>
      <p class="history-readout">
        {one === undefined
          ? `${told.one.hint} ${told.one.spoken(name, inside, compared.length)}`
          : told.one.readout(one.date, one.asked, one.said.q10, one.said.q90, one.isEstimated)}
      </p>
      <PlotCanvas
        data={data}
        heightPx={HEIGHT_PX}
        drawn={drawn}
        spoken={told.one.spoken(name, inside, compared.length)}
        onOver={setOver}
      />
      <ul class="history-key">
        <li>
          <span class="trust-range" /> {told.one.range}
        </li>
        <li>
          <span class="trust-dot" /> {told.one.asked}
        </li>
        <li>
          <span class="history-ring" /> {told.one.estimated}
        </li>
      </ul>
    </>
  )
}

function comparedOf({ date, sold, lost, said }: HistoryDayJson): Compared[] {
  return said === null ? [] : [{ date, asked: Math.round(sold + lost), isEstimated: lost > 0, said }]
}

/** The low end is drawn by hand, so that a bar hangs between two numbers. */
function dataOf(compared: readonly Compared[]): uPlot.AlignedData {
  return [
    compared.map(({ date }) => dayNumber(date)),
    compared.map(({ said }) => said.q90),
    compared.map(({ asked, isEstimated }) => (isEstimated ? null : asked)),
    compared.map(({ asked, isEstimated }) => (isEstimated ? asked : null)),
  ]
}

function optionsOf(theme: PlotTheme, compared: readonly Compared[], dateText: (date: string) => string) {
  const dots = { show: true, size: DOT_PX, width: 2, stroke: theme.text }
  return {
    padding: [12, theme.printPx * 2, 0, 0] as [number, number, number, number],
    ...daysAxes(theme, (day) => dateText(dateOf(day))),
    series: [
      {},
      { paths: () => null, points: { show: false } },
      { paths: () => null, points: { ...dots, fill: theme.text } },
      { paths: () => null, points: { ...dots, fill: theme.ground } },
    ],
    hooks: { drawAxes: [(plot: uPlot) => drawRanges(plot, theme, compared)] },
  }
}

function drawRanges(plot: uPlot, theme: PlotTheme, compared: readonly Compared[]): void {
  const { ctx } = plot
  const gapPx = plot.bbox.width / Math.max(1, compared.length)
  ctx.save()
  ctx.strokeStyle = theme.edge
  ctx.lineWidth = Math.max(2, Math.min(gapPx * 0.6, 14 * uPlot.pxRatio))
  for (const { date, said } of compared) {
    const x = plot.valToPos(dayNumber(date), 'x', true)
    ctx.beginPath()
    ctx.moveTo(x, plot.valToPos(said.q10, 'y', true))
    // A range of one number is still to be seen.
    ctx.lineTo(x, Math.min(plot.valToPos(said.q90, 'y', true), plot.valToPos(said.q10, 'y', true) - 3 * uPlot.pxRatio))
    ctx.stroke()
  }
  ctx.restore()
}
