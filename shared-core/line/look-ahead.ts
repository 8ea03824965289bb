import type { Line, State } from '../day/state.ts'
import type { BatchId, PlannedId } from '../ids.ts'
import type { LineAct, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Allotment } from './allot.ts'
import { allot, becoming, boardedAt } from './allot.ts'
import { isBoiled } from './dips.ts'
import { expectedLoads } from './planned.ts'
import { tappedActs } from './stations.ts'

/** What several views of the line share at an instant: what is planned, what it is made of, and who taps what. */
export interface LookAhead {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly tapped: ReadonlySet<LineAct>
  /** Soonest planned first. */
  readonly allotments: readonly Allotment[]
  readonly becomes: ReadonlyMap<BatchId, readonly Line[]>
}

/** @returns null without a set-up */
export function lookAhead(state: State, nowMs: EpochMs): LookAhead | null {
  const { shop } = state
  if (shop === null) return null
  const allotments = allot(state, shop, expectedLoads(state, nowMs))
  return { state, shop, nowMs, tapped: tappedActs(shop), allotments, becomes: becoming(allotments) }
}

/**
 * When planned loads may be called for, of those for which there is room now. One with a time is called for at that
 * time: somebody may have forgotten a tap on the way. One without a time is called for when all of it is on boards, or
 * when no station taps what comes before the oven and nobody can know; never before the day is open.
 */
export function loadCalls(ahead: LookAhead): ReadonlyMap<PlannedId, EpochMs> {
  const calls = new Map<PlannedId, EpochMs>()
  for (const allotment of ahead.allotments) {
    const { planned, open, inAtMs } = allotment.expected
    if (!open) continue
    if (planned.inAtMs === null && (ahead.state.day === null || !isBoarded(allotment, ahead))) continue
    calls.set(planned.id, epochMs(Math.max(inAtMs, boardedAt(allotment) ?? 0)))
  }
  return calls
}

function isBoarded({ short }: Allotment, { shop, tapped }: LookAhead): boolean {
  const boilIsTapped = tapped.has('dip') || tapped.has('lift') || tapped.has('board')
  return !boilIsTapped || short.every(({ doughId }) => !isBoiled(shop, doughId))
}
