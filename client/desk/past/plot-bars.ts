export interface PlotBars {
  readonly bars: readonly PlotBar[]
  /** Where nought is, from the top. */
  readonly zeroY: number
  readonly highest: number
  readonly lowest: number
}

export interface PlotBar {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly isNegative: boolean
}

/** A bar that says "a little" can still be seen. */
const BAR_PX_MIN = 1.5
const GAP_PART = 0.25

/** Bars from nought up and down, one a day, on one scale; days without a value leave their place empty. */
export function plotBars(
  values: readonly (number | null)[],
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): PlotBars {
  const known = values.filter((value) => value !== null)
  const highest = Math.max(0, ...known)
  const lowest = Math.min(0, ...known)
  const scale = highest === lowest ? 0 : heightPx / (highest - lowest)
  const zeroY = highest === lowest ? heightPx : highest * scale
  const stepPx = widthPx / Math.max(1, values.length)
  const bars = values.flatMap((value, place): PlotBar[] => {
    if (value === null || value === 0) return []
    const height = Math.max(BAR_PX_MIN, Math.abs(value) * scale)
    const x = (place + GAP_PART / 2) * stepPx
    return [{ x, y: value > 0 ? zeroY - height : zeroY, width: stepPx * (1 - GAP_PART), height, isNegative: value < 0 }]
  })
  return { bars, zeroY, highest, lowest }
}
