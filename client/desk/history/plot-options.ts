import type uPlot from 'uplot'
import type { PlotTheme } from './plot-theme.ts'

const STEP_DAYS = [1, 2, 7, 14, 28, 56, 112, 224]

/** Dates below, pieces from nought at the left. @param dateText of a day's number (`days-view.ts`) */
export function daysAxes(theme: PlotTheme, dateText: (day: number) => string): Pick<uPlot.Options, 'scales' | 'axes'> {
  const axis = { stroke: theme.quiet, font: theme.font, grid: { stroke: theme.line, width: 1 }, ticks: { show: false } }
  return {
    scales: {
      // Room for half a bar at both ends.
      x: { time: false, range: (_, least, most) => [least - 1, most + 1] },
      y: { range: (_, _least, most) => [0, Math.max(1, most) * 1.08] },
    },
    axes: [
      {
        ...axis,
        space: theme.printPx * 9,
        size: theme.printPx * 2.4,
        grid: { show: false },
        incrs: [...STEP_DAYS],
        values: (_, days) => days.map(dateText),
      },
      { ...axis, size: theme.printPx * 4 },
    ],
  }
}
