import type { State } from '../../../shared-core/day/state.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import type { Got } from '../get-json.ts'
import { useGot } from '../use-got.ts'

/** The answer of `GET /api/v1/plan?date=`; null: nothing is known of what will be asked for. */
export interface PlanTold {
  readonly plan: Plan | null
}

/** Sales come in meanwhile: so often a coming day is planned anew. */
const ANEW_MS = 2 * 60_000
/** A row of taps asks once. */
const WAIT_MS = 200

/** A day's plan, asked for again when what it rests on changes. @param address null: nobody asks */
export function useDayPlan(date: string | null, state: State, nowMs: number): Got<PlanTold> {
  const version = `${Math.floor(nowMs / ANEW_MS)} ${standsNow(state)}`
  return useGot<PlanTold>(date === null ? null : `/api/v1/plan?date=${date}`, version, WAIT_MS)
}

/** Whatever changes a plan that is not told by itself: dough, lists, what is forbidden, how the shop bakes. */
function standsNow({ batches, planned, forbids, wanted, lastDay, shop }: State): string {
  const stand = [...batches.values()].filter(({ stage }) => stage === 'proof' || stage === 'chill')
  const dough = stand.map(({ doughId, pieces }) => [doughId, pieces])
  return JSON.stringify([dough, [...planned.values()], forbids, [...wanted.values()], lastDay?.closedOn, shop?.baking])
}
