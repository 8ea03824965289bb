import type { Line } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { Plan, PlanChange, PlanLoad } from '../live/plan.ts'
import { isAdvised } from '../live/plan.ts'
import { causeOf } from './cause.ts'
import type { PlanAsked } from './plan-asked.ts'
import { standingLoads } from './standing-loads.ts'

/** A load that goes in so much sooner or later is moved; less is the line's own give. */
const MOVED_MS = 5 * 60_000
/** So long a change is told, unless another one comes. */
const TOLD_MS = 10 * 60_000

/**
 * What is another than in the plan before, as far as somebody must know: the soonest load that is, and why. A change is
 * told for some minutes while nothing else changes.
 */
export function changedFrom(
  asked: PlanAsked,
  before: Plan | null,
  plan: Plan,
  gainCents: number | null,
): PlanChange | null {
  if (before === null || before.date !== plan.date) return null
  const told = before.changed !== null && plan.atMs - before.changed.atMs < TOLD_MS ? before.changed : null
  const stood = standingLoads(asked, before)
  const now = plan.loads.filter(({ id }) => isAdvised(id))
  const what = whatChanged(stood, now)
  if (what === null) return told
  const [next, nextNow] = [stood[0], now[0]]
  const isNext = next?.id !== nextNow?.id || (what.kind !== 'order-of-loads' && what.load.id === nextNow?.id)
  return { atMs: plan.atMs, cause: causeOf(asked, before, plan, what), next: isNext, gainCents, what }
}

type What = PlanChange['what']

function whatChanged(stood: readonly PlanLoad[], now: readonly PlanLoad[]): What | null {
  const [was, is] = [byId(stood), byId(now)]
  const found: { atMs: number; what: What }[] = []
  for (const load of now) {
    const before = was.get(load.id)
    const what = before === undefined ? ({ kind: 'load-added', load, wasAtMs: null } as const) : differs(before, load)
    if (what !== null) found.push({ atMs: load.inAtMs, what })
  }
  for (const load of stood)
    if (!is.has(load.id)) found.push({ atMs: load.inAtMs, what: { kind: 'load-dropped', load, wasAtMs: load.inAtMs } })
  const [first] = found.sort((one, other) => one.atMs - other.atMs)
  if (first !== undefined) return first.what
  const both = (loads: readonly PlanLoad[]) => loads.map(({ id }) => id).join()
  return both(stood) === both(now) ? null : { kind: 'order-of-loads' }
}

function differs(before: PlanLoad, load: PlanLoad): What | null {
  const [more, fewer] = [linesOver(load.lines, before.lines), linesOver(before.lines, load.lines)]
  if (more.length + fewer.length > 0) return { kind: 'contents', load, more, fewer }
  const isMoved = Math.abs(load.inAtMs - before.inAtMs) >= MOVED_MS || load.shelfId !== before.shelfId
  return isMoved ? { kind: 'load-moved', load, wasAtMs: before.inAtMs } : null
}

/** What one list of lines has over another. */
function linesOver(one: readonly Line[], other: readonly Line[]): readonly Line[] {
  const there = new Map<VarietyId, number>(other.map(({ varietyId, pieces }) => [varietyId, pieces]))
  return one.flatMap(({ varietyId, pieces }) => {
    const over = pieces - (there.get(varietyId) ?? 0)
    return over > 0 ? [{ varietyId, pieces: over }] : []
  })
}

function byId(loads: readonly PlanLoad[]): ReadonlyMap<PlanLoad['id'], PlanLoad> {
  return new Map(loads.map((load) => [load.id, load]))
}
