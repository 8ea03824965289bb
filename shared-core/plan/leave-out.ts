import type { Act } from '../day/commands.ts'
import type { Forbid, State } from '../day/state.ts'
import type { PlannedId } from '../ids.ts'
import type { Plan } from '../live/plan.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** A load that is left out stays out so long before and after its time, or it would come back a minute later. */
export const LEFT_OUT_MS = 10 * 60_000

/**
 * The act that leaves an advised load out: nothing goes onto its shelf around its time. What is forbidden already stays
 * so, as the list is set whole.
 * @returns null when the plan has no such load
 */
export function leaveOut({ forbids }: Pick<State, 'forbids'>, plan: Plan, id: PlannedId): Act | null {
  const load = plan.loads.find((one) => one.id === id)
  return load === undefined ? null : { type: 'forbidLoads', forbids: [...forbids, leftOut(load)] }
}

/** What is forbidden where a load is left out. */
export function leftOut({ shelfId, inAtMs }: Pick<Plan['loads'][number], 'shelfId' | 'inAtMs'>): Forbid {
  const [fromMs, toMs]: readonly [EpochMs, EpochMs] = [epochMs(inAtMs - LEFT_OUT_MS), epochMs(inAtMs + LEFT_OUT_MS)]
  return { shelfId, varietyId: null, fromMs, toMs }
}
