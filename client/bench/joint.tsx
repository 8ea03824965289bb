import { Drawing } from '../parts/drawing.tsx'
import { jointPaths } from './joint-paths.ts'
import type { BenchLayout } from './layout.ts'

export interface JointProps {
  readonly layout: BenchLayout
  /** Where the way to the oven begins, from the top of the line. */
  readonly fromPx: number
  /** Height of the oven's heading, 0 where it has none. */
  readonly headingPx: number
  readonly shelves: number
  /** How far left of the joint the way begins. */
  readonly leadPx: number
}

/** The way of the pieces from the kettle and the boards to the shelves. */
export function Joint({ layout, fromPx, headingPx, shelves, leadPx }: JointProps) {
  if (layout.form === 'stacked') return null
  const { jointWidthPx: widthPx, lineHeightPx: heightPx } = layout
  const paths = jointPaths({ layout, fromPx, headingPx, shelves, leadPx })
  return (
    <div class="bench-joint" style={{ width: `${widthPx}px` }}>
      <Drawing
        class="bench-joint-drawing"
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        width={`${widthPx}px`}
        height={`${heightPx}px`}
      >
        {paths.map((d) => (
          <path key={d} d={d} stroke-width={Math.round(layout.gapPx * 0.75)} />
        ))}
      </Drawing>
    </div>
  )
}
