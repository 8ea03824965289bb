import type { LastLoads, Plan } from '../live/plan.ts'
import { problemOf } from './bake-off-of.ts'
import { bottleneckOf } from './bottleneck.ts'
import { changedFrom } from './changed.ts'
import { lastIds, lastLoads } from './last-loads.ts'
import { emptyByOf } from './oven-given.ts'
import type { PlanAsked } from './plan-asked.ts'
import { instantOf } from './plan-asked.ts'
import type { Steadied } from './steady.ts'
import { steadied } from './steady.ts'
import { toldPlan } from './told-plan.ts'

/** What else the day could have is asked anew so often: it costs more than the plan itself. */
const LAST_AGAIN_MS = 10 * 60_000
const BOTTLENECK_AGAIN_MS = 30 * 60_000

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
  const known = (everyMs: number) => (before !== null && isSameWhile(before, plan, everyMs) ? before : null)
  const again = steady.isKept ? sameEnd(known(LAST_AGAIN_MS), asked) : null
  const asBefore = known(BOTTLENECK_AGAIN_MS)
  return {
    ...plan,
    changed: changedFrom(asked, before, plan, steady.gainCents),
    last: again === null ? lastLoads(asked, problem, steady.loads, plan.loads) : lastAgain(again.last, plan),
    figures: {
      ...plan.figures,
      bottleneck:
        asBefore === null ? bottleneckOf(problem.given, steady.loads, asked.effort) : asBefore.figures.bottleneck,
    },
  }
}

const NOTHING: Steadied = { loads: [], gainCents: null, isKept: false }

function isSameWhile(one: Plan, other: Plan, everyMs: number): boolean {
  return one.date === other.date && Math.floor(one.atMs / everyMs) === Math.floor(other.atMs / everyMs)
}

/** Latest times are said anew at once when the oven is to be empty at another time. */
function sameEnd(before: Plan | null, asked: PlanAsked): Plan | null {
  const emptyBy = emptyByOf(asked)
  const emptyByMs = emptyBy === null ? null : instantOf(asked, emptyBy)
  return (before?.last?.emptyByMs ?? null) === emptyByMs ? before : null
}

function lastAgain(last: LastLoads | null, { loads }: Plan): LastLoads | null {
  return last === null ? null : { ...last, loadIds: lastIds(loads, last.emptyByMs) }
}
