import type { EpochMs } from '../../../shared-core/units.ts'

/** A line of readings as it is drawn. */
export interface Chart {
  /** Of an SVG polyline; "" without readings. */
  readonly points: string
  readonly dots: readonly { readonly x: number; readonly y: number }[]
  /** Where the value that is reckoned with lies. */
  readonly nowY: number
  readonly lowestMilliCelsius: number
  readonly highestMilliCelsius: number
}

interface Reading {
  readonly atMs: EpochMs
  readonly milliCelsius: number
}

export interface ChartOn {
  readonly fromMs: number
  readonly toMs: number
  readonly widthPx: number
  readonly heightPx: number
}

/** A line that hardly moves is drawn as such, and not stretched to the full height. */
const SPAN_MILLI_CELSIUS_MIN = 4_000

/**
 * Readings since `fromMs`, the last one before it reaching in, and on to now at the value that is reckoned with.
 * @param reckoned thousandths of a °C
 */
export function chartOf(
  readings: readonly Reading[],
  reckoned: number,
  { fromMs, toMs, widthPx, heightPx }: ChartOn,
): Chart {
  const within = readings.filter(({ atMs }) => atMs >= fromMs && atMs <= toMs)
  const earlier = readings.filter(({ atMs }) => atMs < fromMs)
  const before = earlier[earlier.length - 1]
  const line = [
    ...(before === undefined ? [] : [{ atMs: fromMs, milliCelsius: before.milliCelsius }]),
    ...within,
    { atMs: toMs, milliCelsius: reckoned },
  ]
  const values = line.map(({ milliCelsius }) => milliCelsius)
  const [lowest, highest] = [Math.min(...values), Math.max(...values)]
  const margin = Math.max(0, SPAN_MILLI_CELSIUS_MIN - (highest - lowest)) / 2
  const spread = highest - lowest + 2 * margin
  const x = (atMs: number) => round(((atMs - fromMs) / (toMs - fromMs)) * widthPx)
  const y = (milliCelsius: number) => round(heightPx - ((milliCelsius - lowest + margin) / spread) * heightPx)
  return {
    points: line.length < 2 ? '' : line.map(({ atMs, milliCelsius }) => `${x(atMs)},${y(milliCelsius)}`).join(' '),
    dots: within.map(({ atMs, milliCelsius }) => ({ x: x(atMs), y: y(milliCelsius) })),
    nowY: y(reckoned),
    lowestMilliCelsius: lowest,
    highestMilliCelsius: highest,
  }
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
