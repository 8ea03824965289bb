import { epochMs } from '../../../shared-core/units.ts'
import type { KitchenLayout } from './kitchen-layout.ts'
import type { KitchenParts } from './kitchen-parts.ts'
import { rodHead } from './rod-head.ts'
import { RodAxis, RodRow } from './rod-row.tsx'
import type { RodRing, RodView } from './rods-view.ts'

export interface RodsProps extends KitchenParts {
  readonly rods: readonly RodView[]
  readonly layout: KitchenLayout
  /** Of the rings that were chosen for the oven. */
  readonly chosen: ReadonlySet<string>
  readonly onPress: (ring: RodRing) => void
}

/** The ruler moves on in steps: what stands is not painted anew at every tick. */
const AXIS_STEP_MS = 15_000
const BEHIND_MS = 8 * 60_000
const AHEAD_MS = 22 * 60_000

/** Rods below each other along one ruler, on which now is a line across all of them. */
export function Rods(props: RodsProps) {
  const { rods, words, sizes, room, nowMs, layout, open } = props
  if (rods.length === 0) return <div class="bench-nothing bench-quiet">{words.kitchen.nothingHere}</div>
  const axisMs = nowMs - (nowMs % AXIS_STEP_MS)
  const span = { fromMs: axisMs - BEHIND_MS, toMs: axisMs + AHEAD_MS }
  return (
    <>
      <RodAxis
        span={span}
        nowMs={axisMs}
        layout={layout}
        minPx={sizes.minPx}
        nowText={words.kitchen.now}
        clockText={(ms) => words.times.clock(epochMs(ms))}
        heightPx={rods.reduce(
          (sum, rod) => sum + rodHead(rod, layout, sizes.minPx).length * layout.headPx + layout.ringPx,
          0,
        )}
      />
      {rods.map((rod) => (
        <RodRow
          key={rod.key}
          {...props}
          rod={rod}
          span={span}
          gapPx={room.gapPx}
          onMore={({ key }) => open({ kind: 'rod', key })}
        />
      ))}
    </>
  )
}
