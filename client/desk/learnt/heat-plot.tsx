import { useMemo } from 'preact/hooks'
import type uPlot from 'uplot'
import type { OvenHeat } from '../../../shared-core/live/oven-heat.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { LearntTimesWords } from '../../words/desk-learnt.ts'
import { PlotCanvas } from '../history/plot-canvas.tsx'
import type { PlotTheme } from '../history/plot-theme.ts'

const HEIGHT_PX = 260
/** Eight times in ten, for a normal law. */
const EIGHT_IN_TEN = 1.2816

interface HeatPlotProps {
  readonly told: LearntTimesWords
  readonly words: DeskWords
  readonly shop: Shop
  readonly heat: OvenHeat
}

/** Readings as dots, the course that is expected as a line with its 8-in-10 band. */
export function HeatPlot({ told, words, shop, heat }: HeatPlotProps) {
  const unit = shop.profile.temperature
  const data = useMemo(() => dataOf(heat, unit), [heat, unit])
  const drawn = useMemo(
    () => (theme: PlotTheme) => optionsOf(theme, (atMs) => words.times.clock(epochMs(atMs)), unit),
    [words, unit],
  )
  return (
    <>
      <h3>{told.heat.plot}</h3>
      <PlotCanvas data={data} heightPx={HEIGHT_PX} drawn={drawn} spoken={told.heat.spoken(heat.readings.length)} />
    </>
  )
}

function dataOf({ readings, course }: OvenHeat, unit: 'C' | 'F'): uPlot.AlignedData {
  const degrees = (milli: number) => (unit === 'C' ? milli / 1_000 : (milli * 1.8) / 1_000 + 32)
  const curve = course?.curve ?? []
  const points = [
    ...readings.map(({ atMs, milliCelsius }) => ({
      atMs,
      read: degrees(milliCelsius),
      mean: null,
      low: null,
      high: null,
    })),
    ...curve.map(([atMs, mean, spread]) => ({
      atMs,
      read: null,
      mean: degrees(mean),
      low: degrees(mean - EIGHT_IN_TEN * spread),
      high: degrees(mean + EIGHT_IN_TEN * spread),
    })),
  ].sort((one, other) => one.atMs - other.atMs)
  return [
    points.map(({ atMs }) => atMs),
    points.map(({ high }) => high),
    points.map(({ low }) => low),
    points.map(({ mean }) => mean),
    points.map(({ read }) => read),
  ]
}

function optionsOf(
  theme: PlotTheme,
  clock: (atMs: number) => string,
  unit: 'C' | 'F',
): Omit<uPlot.Options, 'width' | 'height'> {
  const axis = { stroke: theme.quiet, font: theme.font, grid: { stroke: theme.line, width: 1 }, ticks: { show: false } }
  const line = { stroke: theme.crust, points: { show: false }, spanGaps: true }
  return {
    scales: { x: { time: false } },
    axes: [
      {
        ...axis,
        space: theme.printPx * 7,
        size: theme.printPx * 2.4,
        grid: { show: false },
        incrs: MINUTES.map((n) => n * 60_000),
        values: (_, at) => at.map(clock),
      },
      { ...axis, size: theme.printPx * 5, values: (_, at) => at.map((one) => `${one} °${unit}`) },
    ],
    bands: [{ series: [1, 2], fill: theme.line }],
    series: [
      {},
      { ...line, width: 0 },
      { ...line, width: 0 },
      { ...line, width: 2 },
      {
        stroke: theme.text,
        paths: () => null,
        points: { show: true, size: 9, width: 2, stroke: theme.text, fill: theme.ground },
      },
    ],
  }
}

const MINUTES = [5, 10, 15, 30, 60, 120, 240]
