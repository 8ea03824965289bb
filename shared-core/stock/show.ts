import type { EpochMs } from '../units.ts'
import type { Rod } from './left.ts'

/** Run-out times are compared in steps of five minutes, so that rods do not change places at every second's estimate. */
const RUN_OUT_STEP_MS = 5 * 60_000
/** Further ahead a pace of two hours says nothing: such a rod is judged by its count. */
const RUN_OUT_SOON_MS = 2 * 3_600_000

export interface RodsShown {
  /** At most as many as asked for, most urgent first. */
  readonly rods: readonly Rod[]
  /** Varieties with pieces for sale that are not among them, and until when the first of them is known to last. */
  readonly othersFine: { readonly count: number; readonly untilMs: EpochMs | null }
}

/**
 * The few rods that change a decision: gone; then what runs out before more comes, within two hours, soonest first; then
 * the lowest counts, of equal ones first those with something on the way. Ties stay in the rods' own order, which is the set-up's.
 * A variety of which there is nothing, nothing comes and nothing was sold today changes no decision and is not counted.
 * @param most how many rods there is room for
 */
export function rodsThatMatter(rods: readonly Rod[], nowMs: EpochMs, most: number): RodsShown {
  const alive = rods.filter((rod) => rod.likely > 0 || rod.onTheWay.length > 0 || rod.soldToday > 0)
  const ranked = alive
    .map((rod) => ({ rod, urgency: urgencyOf(rod, nowMs) }))
    .sort((one, other) => byUrgency(one.urgency, other.urgency))
    .map(({ rod }) => rod)
  const others = ranked.slice(most).filter((rod) => rod.likely > 0)
  const untilMs = others.reduce<EpochMs | null>(
    (soonest, { goneAtMs }) => (goneAtMs !== null && (soonest === null || goneAtMs < soonest) ? goneAtMs : soonest),
    null,
  )
  return { rods: ranked.slice(0, most), othersFine: { count: others.length, untilMs } }
}

/** Compared number by number: smaller is more urgent. */
type Urgency = readonly [rank: number, within: number, comes: number]

function urgencyOf(rod: Rod, nowMs: EpochMs): Urgency {
  const moreAtMs = rod.onTheWay[0]?.readyAtMs ?? null
  const comes = moreAtMs === null ? 1 : 0
  if (rod.likely === 0) return [0, 0, comes]
  const { goneAtMs } = rod
  const runsOut = goneAtMs !== null && (moreAtMs === null || goneAtMs < moreAtMs)
  if (runsOut && goneAtMs - nowMs < RUN_OUT_SOON_MS) {
    return [1, Math.floor((goneAtMs - nowMs) / RUN_OUT_STEP_MS), comes]
  }
  return [2, rod.likely, comes]
}

function byUrgency(one: Urgency, other: Urgency): number {
  return one[0] - other[0] || one[1] - other[1] || one[2] - other[2]
}
