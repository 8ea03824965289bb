import type { PlannedLoad, State } from '../day/state.ts'
import type { Plan } from '../live/plan.ts'
import { isAdvised } from '../live/plan.ts'

/**
 * The shop as screens show it while loads are advised: the advised loads stand in the list of planned ones, so that
 * every view of the line follows them as it follows a list that people typed. What people set themselves stays as it is.
 * For showing only: it is never folded, hashed or decided on.
 * @param plan null: no advice, or it is switched off
 */
export function withPlan(state: State, plan: Plan | null): State {
  if (plan === null || state.day === null || state.day.label !== plan.date) return state
  const taken = new Set([...state.loads.values()].map(({ plannedId }) => plannedId))
  const planned = new Map(state.planned)
  let order = [...planned.values()].reduce((most, one) => Math.max(most, one.order), 0)
  for (const load of plan.loads) {
    if (!isAdvised(load.id) || taken.has(load.id)) continue
    order += 1
    planned.set(load.id, advisedLoad(load, order))
  }
  return { ...state, planned }
}

function advisedLoad({ id, shelfId, inAtMs, lines }: Plan['loads'][number], order: number): PlannedLoad {
  return { id, order, shelfId, inAtMs, lines, done: false }
}
