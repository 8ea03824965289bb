import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { RodAhead } from './prospect.ts'

/** Run-out times are compared in steps of five minutes, so that rods do not change places at every second's estimate. */
const RUN_OUT_STEP_MS = 5 * 60_000
/** Further ahead a pace of two hours says nothing: such a rod is judged by its count. */
const RUN_OUT_SOON_MS = 2 * 3_600_000

export interface RodsShown<Some extends RodAhead> {
  /** At most as many as asked for, most urgent first. */
  readonly rods: readonly Some[]
  /** Varieties with pieces for sale that are not among them, and until when none of them may be gone, as far as is known. */
  readonly othersFine: { readonly count: number; readonly untilMs: EpochMs | null }
}

/**
 * The few rods that change a decision: gone; then what runs out before more comes, within two hours, soonest first; then
 * what rather lasts but may not, in the same way; then the lowest counts, of equal ones first those with something on the
 * way. Ties stay in the rods' own order, which is the set-up's.
 * A variety of which there is nothing, nothing comes and nothing was sold today changes no decision and is not counted.
 * @param most how many rods there is room for
 */
export function rodsThatMatter<Some extends RodAhead>(
  rods: readonly Some[],
  nowMs: EpochMs,
  most: number,
): RodsShown<Some> {
  const alive = rods.filter((rod) => rod.likely > 0 || rod.onTheWay.length > 0 || rod.soldToday > 0)
  const ranked = alive
    .map((rod) => ({ rod, urgency: urgencyOf(rod, nowMs) }))
    .sort((one, other) => byUrgency(one.urgency, other.urgency))
    .map(({ rod }) => rod)
  const others = ranked.slice(most).filter((rod) => rod.likely > 0)
  const ends = others.flatMap((rod) => [rod.ahead.goneAtMs, doubtAtMs(rod)].filter((atMs) => atMs !== null))
  const untilMs = ends.length === 0 ? null : epochMs(Math.min(...ends))
  return { rods: ranked.slice(0, most), othersFine: { count: others.length, untilMs } }
}

/** Compared number by number: smaller is more urgent. */
type Urgency = readonly [rank: number, within: number, comes: number]

function urgencyOf(rod: RodAhead, nowMs: EpochMs): Urgency {
  const comes = rod.onTheWay.length === 0 ? 1 : 0
  if (rod.likely === 0) return [0, 0, comes]
  const { goneAtMs } = rod.ahead
  if (isShort(rod) && goneAtMs !== null && goneAtMs - nowMs < RUN_OUT_SOON_MS)
    return [1, stepOf(goneAtMs - nowMs), comes]
  const doubtMs = doubtAtMs(rod)
  if (doubtMs !== null && doubtMs - nowMs < RUN_OUT_SOON_MS) return [2, stepOf(doubtMs - nowMs), comes]
  return [3, rod.likely, comes]
}

/** There will be none as far as anybody can tell, and nothing comes before. */
export function isShort({ ahead, onTheWay }: Pick<RodAhead, 'ahead' | 'onTheWay'>): boolean {
  return ahead.goneAtMs !== null && (ahead.isGap || onTheWay.length === 0)
}

function doubtAtMs({ ahead: { doubt }, onTheWay }: RodAhead): EpochMs | null {
  if (doubt === null) return null
  return doubt.before === 'more' ? (onTheWay[0]?.readyAtMs ?? null) : doubt.fromMs
}

function stepOf(inMs: number): number {
  return Math.floor(inMs / RUN_OUT_STEP_MS)
}

function byUrgency(one: Urgency, other: Urgency): number {
  return one[0] - other[0] || one[1] - other[1] || one[2] - other[2]
}
