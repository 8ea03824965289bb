import type { Plan, PlanLoad } from '../live/plan.ts'
import { isAdvised } from '../live/plan.ts'
import type { PlanAsked } from './plan-asked.ts'

/** Who loads a shelf about then, whatever it is, has done what was advised for it. */
const DONE_WITHIN_MS = 15 * 60_000

/**
 * Advised loads of a plan that are still to come: none that has gone in, by its id or because its shelf was loaded about
 * then, and none that would be out by now. Empty for the plan of another day.
 */
export function standingLoads({ line, date }: PlanAsked, before: Plan | null): readonly PlanLoad[] {
  if (before === null || before.date !== date) return []
  const loaded = new Set(line.loads.map(({ plannedId }) => plannedId))
  const isDone = ({ shelfId, inAtMs }: PlanLoad) =>
    line.loads.some(
      (load) =>
        load.shelfId === shelfId &&
        (load.plannedId === null || !isAdvised(load.plannedId)) &&
        load.inAtMs >= before.atMs &&
        Math.abs(load.inAtMs - inAtMs) <= DONE_WITHIN_MS,
    )
  return before.loads.filter((load) => {
    const isAhead = !loaded.has(load.id) && (!line.isOpen || load.outAtMs > line.nowMs)
    return isAdvised(load.id) && isAhead && !isDone(load)
  })
}
