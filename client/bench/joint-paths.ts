import type { BenchLayout } from './layout.ts'

export interface JointShape {
  readonly layout: Pick<BenchLayout, 'jointWidthPx' | 'lineHeightPx' | 'gapPx' | 'rows' | 'shelfHeightPx'>
  readonly fromPx: number
  readonly headingPx: number
  readonly shelves: number
  readonly leadPx: number
}

/**
 * One curve to each shelf of the first column, from where the pieces come: `d` of an SVG path in the joint's own
 * pixels, whose right edge touches the keys.
 */
export function jointPaths({ layout, fromPx, headingPx, shelves, leadPx }: JointShape): readonly string[] {
  const { jointWidthPx: width, gapPx, rows, shelfHeightPx } = layout
  const bend = Math.round(width / 2)
  return Array.from({ length: Math.min(rows, shelves) }, (_, row) => {
    const to = Math.round(headingPx + row * (shelfHeightPx + gapPx) + shelfHeightPx / 2)
    return `M${-Math.round(leadPx)} ${Math.round(fromPx)}H0C${bend} ${Math.round(fromPx)} ${width - bend} ${to} ${width} ${to}`
  })
}
