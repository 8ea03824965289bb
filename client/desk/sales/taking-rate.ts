interface Look {
  /** By a clock that never goes back. */
  readonly atMs: number
  readonly rows: number
}

/** Rows a second between the first and the last look, to two digits; null while that says nothing yet. */
export function ratePerSecond(looks: readonly Look[]): number | null {
  const [first, last] = [looks[0], looks[looks.length - 1]]
  if (first === undefined || last === undefined || last.atMs <= first.atMs || last.rows <= first.rows) return null
  const rate = ((last.rows - first.rows) * 1_000) / (last.atMs - first.atMs)
  const step = 10 ** Math.max(0, Math.floor(Math.log10(rate)) - 1)
  return Math.round(rate / step) * step
}
