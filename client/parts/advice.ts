import type { Line, State } from '../../shared-core/day/state.ts'
import type { PlannedId, VarietyId } from '../../shared-core/ids.ts'
import type { Plan, PlanChange, PlanLoad, PlanWhy } from '../../shared-core/live/plan.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { LiveState } from '../live/shop-store.ts'

/** A change of the plan stands so long where people look, unless it is over sooner. */
const CHANGE_SHOWN_MS = 5 * 60_000

/** So long before the last dip it is counted down. */
const LAST_AHEAD_MS = 60 * 60_000

/** The plan as far as a screen may speak of it: of the day that is open. Null while loads are not advised. */
export function planNow({ plan }: Pick<LiveState, 'plan'>, { day }: State): Plan | null {
  return plan !== null && plan.date === day?.label ? plan : null
}

/** What the plan says of a load in the list; null for one that it does not know. */
export function planLoad(plan: Plan | null, id: PlannedId | null): PlanLoad | null {
  return plan?.loads.find((load) => load.id === id) ?? null
}

/**
 * What is another about the next load, for some minutes.
 * @returns null once its load is in, or its time has gone by: then nobody needs to know any more
 */
export function changeNow(plan: Plan | null, { loads }: State, nowMs: EpochMs): PlanChange | null {
  const changed = plan?.changed ?? null
  if (changed === null || !changed.next || nowMs - changed.atMs >= CHANGE_SHOWN_MS) return null
  const { what } = changed
  if (what.kind === 'order-of-loads') return changed
  if (nowMs > what.load.inAtMs) return null
  return [...loads.values()].some(({ plannedId }) => plannedId === what.load.id) ? null : changed
}

/** The latest first dip in the hour before it; null at other times, and where the shop bakes until it closes. */
export function lastDipNear(plan: Plan | null, nowMs: EpochMs): EpochMs | null {
  const atMs = plan?.last?.kettleByMs ?? null
  return atMs !== null && atMs >= nowMs && atMs - nowMs <= LAST_AHEAD_MS ? atMs : null
}

/** Kinds of the last loads that are named. */
const NAMED_MOST = 3

/** What the last loads that have not gone in carry to the close, the most pieces first, and how many kinds more. */
export function lastLines(plan: Plan | null): { readonly lines: readonly Line[]; readonly others: number } {
  const ids = new Set(plan?.last?.loadIds ?? [])
  const sums = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of (plan?.loads ?? []).flatMap((load) => (ids.has(load.id) ? load.lines : [])))
    sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  const all = [...sums]
    .map(([varietyId, pieces]) => ({ varietyId, pieces }))
    .sort((one, other) => other.pieces - one.pieces)
  const lines = all.slice(0, NAMED_MOST)
  return { lines, others: all.length - lines.length }
}

/** What a promise stands behind first, then what would be missed. */
const FIRST: readonly PlanWhy['kind'][] = [
  'order',
  'runsOut',
  'opening',
  'show',
  'afternoon',
  'room',
  'fresh',
  'pinned',
]

/** The reason of a load that is said where there is room for one: of equals the soonest. */
export function mainWhy({ why }: Pick<PlanLoad, 'why'>): PlanWhy | null {
  const rank = ({ kind }: PlanWhy) => FIRST.indexOf(kind)
  const atMs = (one: PlanWhy) => (one.kind === 'runsOut' ? one.atMs : one.kind === 'order' ? one.dueAtMs : 0)
  return [...why].sort((one, other) => rank(one) - rank(other) || atMs(one) - atMs(other))[0] ?? null
}
