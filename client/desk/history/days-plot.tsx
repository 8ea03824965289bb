import { useMemo, useState } from 'preact/hooks'
import uPlot from 'uplot'
import { specialDayId } from '../../../shared-core/ids.ts'
import type { HistoryDayJson } from '../../../shared-core/live/sales-history.ts'
import { addressOf } from '../place.ts'
import type { NamedSpan } from './days-view.ts'
import { dateOf, dayNumber, namedSpans } from './days-view.ts'
import { withinOf } from './pages.ts'
import type { HistoryParts } from './parts.ts'
import { PlotCanvas } from './plot-canvas.tsx'
import { daysAxes } from './plot-options.ts'
import type { PlotTheme } from './plot-theme.ts'
import { stripes } from './plot-theme.ts'

const HEIGHT_PX = 300
/** Room over the bars for the names of special days. */
const NAMES_PX = 26
const BAR_PX_MAX = 36

/** Sales by day as bars, what was probably lost on top of them in stripes, rings over days with something sold out. */
export function DaysPlot({ days, ...parts }: HistoryParts & { readonly days: readonly HistoryDayJson[] }) {
  const { say, shop, words } = parts
  const [over, setOver] = useState<number | null>(null)
  const data = useMemo(() => dataOf(days), [days])
  const drawn = useMemo(() => {
    const spans = namedSpans(days, (id) => shop.specialDays.get(specialDayId(id))?.name ?? id)
    return (theme: PlotTheme) => optionsOf({ theme, days, spans, dateText: (date) => words.times.date(date) })
  }, [days, shop, words])
  const day = over === null ? undefined : days[over]
  const sum = (key: 'sold' | 'lost') => days.reduce((so, one) => so + one[key], 0)
  return (
    <>
      <p class="history-readout">{day === undefined ? say.days.hint : readout(day, parts)}</p>
      <PlotCanvas
        data={data}
        heightPx={HEIGHT_PX}
        drawn={drawn}
        spoken={say.days.spoken(days.length, sum('sold'), sum('lost'))}
        onOver={setOver}
        onPick={(place) => {
          const picked = days[place]
          if (picked !== undefined)
            window.location.hash = addressOf('history', withinOf({ page: 'day', date: picked.date }))
        }}
      />
      <ul class="history-key">
        <li>
          <span class="history-sold" /> {say.days.sold}
        </li>
        <li>
          <span class="history-lost" /> {say.days.lost}
        </li>
        <li>
          <span class="history-ring" /> {say.days.soldOut}
        </li>
      </ul>
    </>
  )
}

function readout({ date, sold, lost, soldOut, specials }: HistoryDayJson, { say, shop }: HistoryParts): string {
  const names = specials.map((id) => shop.specialDays.get(specialDayId(id))?.name ?? id)
  return [say.days.readout(date, sold, lost, soldOut), ...names].join(' · ')
}

function dataOf(days: readonly HistoryDayJson[]): uPlot.AlignedData {
  return [
    days.map(({ date }) => dayNumber(date)),
    days.map(({ sold, lost }) => sold + lost),
    days.map(({ sold }) => sold),
    days.map(({ sold, lost, soldOut }) => (soldOut > 0 ? sold + lost : null)),
  ]
}

interface Drawn {
  readonly theme: PlotTheme
  readonly days: readonly HistoryDayJson[]
  readonly spans: readonly NamedSpan[]
  readonly dateText: (date: string) => string
}

function optionsOf({ theme, days, spans, dateText }: Drawn): Omit<uPlot.Options, 'width' | 'height'> {
  const bars = uPlot.paths.bars?.({ size: [0.8, BAR_PX_MAX] })
  const lost = stripes(theme.crust, theme.ground)
  return {
    padding: [spans.length === 0 ? 12 : NAMES_PX, theme.printPx * 2, 0, 0],
    ...daysAxes(theme, (day) => dateText(dateOf(day))),
    series: [
      {},
      {
        ...(bars && { paths: bars }),
        stroke: theme.crust,
        width: 1,
        fill: () => lost as string,
        points: { show: false },
      },
      { ...(bars && { paths: bars }), stroke: theme.crust, width: 1, fill: theme.crust, points: { show: false } },
      {
        paths: () => null,
        points: { show: true, size: 7, width: 2, stroke: theme.text, fill: theme.ground },
      },
    ],
    hooks: { draw: [(plot) => drawNames(plot, { theme, days, spans })] },
  }
}

/** Names stand over their days; one that would run into another leaves only its stroke, and its name to the readout. */
function drawNames(plot: uPlot, { theme, days, spans }: Pick<Drawn, 'theme' | 'days' | 'spans'>): void {
  const { ctx, bbox } = plot
  const ratio = uPlot.pxRatio
  const at = (place: number) => plot.valToPos(dayNumber(days[place]?.date ?? ''), 'x', true)
  ctx.save()
  ctx.font = `${theme.printPx * ratio}px ${theme.font.replace(/^\S+ /, '')}`
  ctx.textAlign = 'left'
  ctx.textBaseline = 'alphabetic'
  ctx.fillStyle = theme.text
  ctx.strokeStyle = theme.coming
  ctx.lineWidth = 3 * ratio
  let free = 0
  for (const { name, from, to } of spans) {
    const [left, right] = [at(from) - 4 * ratio, at(to) + 4 * ratio]
    const y = bbox.top - 3 * ratio
    ctx.beginPath()
    ctx.moveTo(left, y)
    ctx.lineTo(right, y)
    ctx.stroke()
    const width = ctx.measureText(name).width
    const start = Math.min(left, bbox.left + bbox.width - width)
    if (start < free) continue
    ctx.fillText(name, start, y - 6 * ratio)
    free = start + width + 10 * ratio
  }
  ctx.restore()
}
