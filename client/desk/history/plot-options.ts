import type uPlot from 'uplot'
import type { PlotTheme } from './plot-theme.ts'

const DAY_S = 86_400
const STEP_DAYS = [1, 2, 7, 14, 28, 56, 112, 224]

/** Dates below, pieces from nought at the left. @param dateText of a date's instant in seconds */
export function daysAxes(
  theme: PlotTheme,
  dateText: (seconds: number) => string,
): Pick<uPlot.Options, 'scales' | 'axes'> {
  const axis = { stroke: theme.quiet, font: theme.font, grid: { stroke: theme.line, width: 1 }, ticks: { show: false } }
  return {
    scales: {
      // Room for half a bar at both ends.
      x: { time: true, range: (_, least, most) => [least - DAY_S, most + DAY_S] },
      y: { range: (_, _least, most) => [0, Math.max(1, most) * 1.08] },
    },
    axes: [
      {
        ...axis,
        space: theme.printPx * 9,
        size: theme.printPx * 2.4,
        grid: { show: false },
        incrs: STEP_DAYS.map((count) => count * DAY_S),
        values: (_, seconds) => seconds.map(dateText),
      },
      { ...axis, size: theme.printPx * 4 },
    ],
  }
}
