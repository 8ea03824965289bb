import type { Plan } from '../live/plan.ts'
import { problemOf } from './bake-off-of.ts'
import type { PlanAsked } from './plan-asked.ts'
import { solved } from './solved.ts'
import { toldPlan } from './told-plan.ts'

/**
 * Which loads when, for a day or for what is left of it: the planner's answer, with reasons, as screens are told.
 * @param before the plan that people work by; null: none
 * @param seq of the entry on which this rests, for the ids of loads that are new
 */
export function planDay(asked: PlanAsked, before: Plan | null, seq: number): Plan {
  const problem = problemOf(asked, before)
  const loads = asked.line.isOver ? [] : solved(problem.given)
  return toldPlan({ asked, problem, before, seq }, loads)
}
