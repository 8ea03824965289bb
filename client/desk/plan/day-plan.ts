import type { State } from '../../../shared-core/day/state.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import type { Got } from '../get-json.ts'
import { useGot } from '../use-got.ts'
import type { PlanParts } from './parts.ts'

/** The answer of `GET /api/v1/plan?date=`; null: nothing is known of what will be asked for. */
export interface PlanTold {
  readonly plan: Plan | null
}

/** Sales come in meanwhile: so often a coming day is planned anew. */
const ANEW_MS = 2 * 60_000
/** A row of taps asks once. */
const WAIT_MS = 200

/** A day's plan: today's as it is told to all screens, another day's asked for again when what it rests on changes. */
export function useDayPlan({ date, live, shop, state }: PlanParts): Got<PlanTold> {
  const told = live.plan?.date === date ? live.plan : null
  const isAsked = told === null && shop.baking.advice
  const version = `${Math.floor(live.nowMs / ANEW_MS)} ${standsNow(live.asSet ?? state)}`
  const got = useGot<PlanTold>(isAsked ? `/api/v1/plan?date=${date}` : null, version, WAIT_MS)
  return told === null ? got : { kind: 'got', value: { plan: told } }
}

/** Whatever changes a plan that is not told by itself: dough, lists, what is forbidden, how the shop bakes. */
function standsNow({ batches, planned, forbids, wanted, lastDay, shop }: State): string {
  const stand = [...batches.values()].filter(({ stage }) => stage === 'proof' || stage === 'chill')
  const dough = stand.map(({ doughId, pieces }) => [doughId, pieces])
  return JSON.stringify([dough, [...planned.values()], forbids, [...wanted.values()], lastDay?.closedOn, shop?.baking])
}
