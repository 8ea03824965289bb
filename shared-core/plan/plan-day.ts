import type { LastLoads, Plan } from '../live/plan.ts'
import { problemOf } from './bake-off-of.ts'
import { bottleneckOf } from './bottleneck.ts'
import { changedFrom } from './changed.ts'
import { lastLoads } from './last-loads.ts'
import type { PlanAsked } from './plan-asked.ts'
import type { Steadied } from './steady.ts'
import { steadied } from './steady.ts'
import { toldPlan } from './told-plan.ts'

/** What else the day could have is asked anew so often while the plan stays: it costs more than the plan itself. */
const ASKED_AGAIN_MS = 10 * 60_000

/**
 * Which loads when, for a day or for what is left of it, as screens are told. What has started is never moved, and what
 * people set stands as they set it; the plan before is kept unless another one gains what the shop asks for a change.
 * @param before the plan that people work by; null: none
 * @param seq of the entry on which this rests, for the ids of loads that are new
 */
export function planDay(asked: PlanAsked, before: Plan | null, seq: number): Plan {
  const problem = problemOf(asked, before)
  const steady = asked.line.isOver ? NOTHING : steadied(asked, problem, before)
  const plan = toldPlan({ asked, problem, before, seq }, steady.loads)
  const again = before !== null && steady.isKept && isSameWhile(before.atMs, plan.atMs) ? before : null
  return {
    ...plan,
    changed: changedFrom(asked, before, plan, steady.gainCents),
    last: again === null ? lastLoads(asked, problem, steady.loads, plan.loads) : lastAgain(again.last, plan),
    figures: {
      ...plan.figures,
      bottleneck: again === null ? bottleneckOf(problem.given, steady.loads) : again.figures.bottleneck,
    },
  }
}

const NOTHING: Steadied = { loads: [], gainCents: null, isKept: false }

function isSameWhile(oneMs: number, otherMs: number): boolean {
  return Math.floor(oneMs / ASKED_AGAIN_MS) === Math.floor(otherMs / ASKED_AGAIN_MS)
}

function lastAgain(last: LastLoads | null, { loads }: Plan): LastLoads | null {
  return last === null ? null : { ...last, loadIds: loads.filter(({ isLast }) => isLast).map(({ id }) => id) }
}
