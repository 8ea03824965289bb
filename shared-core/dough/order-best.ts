import { ContactsAhead, fewestContacts, inOne } from './order-contacts.ts'
import { beginningsOf } from './order-graph.ts'
import { improved } from './order-improve.ts'
import { layered } from './order-layers.ts'
import { lineAfter } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'
import { searched } from './order-search.ts'

/** Up to so many mixes most of the work goes into proving that there is no better order. */
export const EXACT_MIXES = 12
/**
 * Orders tried to find a good one, and steps to prove that it is the best, of some microseconds each (measured: see
 * `npm run bench -- mixing-order`). When they are used up, what is best till then is said to be no more than that.
 */
const EFFORT = {
  upToExact: { tries: 3_000, steps: 400 },
  /** Where trays' room is limited the search over sets of mixes does not help. */
  withRoom: { tries: 3_000, steps: 12_000 },
  above: { tries: 3_500, steps: 900 },
} as const
/** Steps over sets of mixes, where the search one mix after another has not come to its end. */
const LAYER_STEPS = 22_000
/** More classes than that, of one day in one mixer, and the fewest contacts are looked for only, not known. */
const CLASSES_MOST = 12

export interface BestOrder {
  readonly order: readonly Item[]
  readonly isExact: boolean
}

export function bestOrder(problem: Problem): BestOrder {
  const { items, classes } = problem
  const hasRoom = problem.rules.proofTrays !== null
  const upTo = hasRoom ? EFFORT.withRoom : EFFORT.upToExact
  const { tries, steps } = items.length <= EXACT_MIXES ? upTo : EFFORT.above
  if (classes.length > CLASSES_MOST) return { order: improved(problem, items, 0, tries), isExact: false }
  const ahead = new ContactsAhead(problem)
  const goal = ahead.least(ahead.whole, null)
  const known = improved(problem, fewestContacts(problem, ahead), goal, tries)
  const cost = lineAfter(problem, known)
  const boundMs = inOne(cost) === goal ? cost.latenessMs : Number.POSITIVE_INFINITY
  const quick = searched(problem, ahead, boundMs, steps)
  const best = quick.order ?? known
  const isBest = quick.isWhole || (inOne(cost) === goal && lineAfter(problem, best).latenessMs === 0)
  if (isBest || hasRoom || items.length > EXACT_MIXES) return { order: best, isExact: isBest }
  return proved(problem, ahead, best, goal)
}

/** By sets of mixes: first a glance at the most promising, so that the whole search has less to go through. */
function proved(problem: Problem, ahead: ContactsAhead, known: readonly Item[], goal: number): BestOrder {
  const start = beginningsOf(problem, ahead)
  const latenessMs = (order: readonly Item[]) => {
    const cost = lineAfter(problem, order)
    return inOne(cost) === goal ? cost.latenessMs : Number.POSITIVE_INFINITY
  }
  const glance = layered(problem, start, latenessMs(known), 0).order ?? known
  const { order, isWhole } = layered(problem, start, latenessMs(glance), LAYER_STEPS)
  return { order: order ?? glance, isExact: isWhole }
}
