/** Heights of a ruler in whole CSS pixels, counted from its top: labels, marks, the bar, hour numbers. */
export interface RulerSize {
  readonly fontPx: number
  readonly lines: 1 | 2
  readonly linePx: number
  readonly barTop: number
  readonly bar: number
  readonly barBottom: number
  /** Baseline of the hour numbers below the bar's bottom. */
  readonly hourBaseline: number
  /** All of it: what a layout must leave room for. */
  readonly height: number
}

/** The ruler's heights follow from its text size and the lines of labels above it. */
export function rulerSize(fontPx: number, lines: 1 | 2): RulerSize {
  const whole = (ems: number) => Math.round(ems * fontPx)
  const barTop = whole(lines * 1.2 + 0.55)
  const bar = whole(0.62)
  const barBottom = barTop + bar
  return {
    fontPx,
    lines,
    linePx: whole(1.2),
    barTop,
    bar,
    barBottom,
    hourBaseline: 1.02 * fontPx,
    height: barBottom + Math.ceil(1.36 * fontPx),
  }
}
