import { ContactsAhead, fewestContacts, inOne } from './order-contacts.ts'
import { improved } from './order-improve.ts'
import { lineAfter } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'
import { searched } from './order-search.ts'

/** Up to so many mixes most of the work goes into proving that there is no better order. */
export const EXACT_MIXES = 12
/**
 * Orders tried to find a good one, and steps to prove that it is the best, of some microseconds each (measured: see
 * `npm run bench -- mixing-order`). When they are used up, what is best till then is said to be no more than that.
 */
const EFFORT = { upToExact: { tries: 3_000, steps: 12_000 }, above: { tries: 3_500, steps: 900 } } as const
/** More classes than that, of one day in one mixer, and the fewest contacts are looked for only, not known. */
const CLASSES_MOST = 12

export interface BestOrder {
  readonly order: readonly Item[]
  readonly isExact: boolean
}

export function bestOrder(problem: Problem): BestOrder {
  const { items, classes } = problem
  const { tries, steps } = items.length <= EXACT_MIXES ? EFFORT.upToExact : EFFORT.above
  if (classes.length > CLASSES_MOST) return { order: improved(problem, items, 0, tries), isExact: false }
  const ahead = new ContactsAhead(problem)
  const goal = ahead.least(ahead.whole, null)
  const known = improved(problem, fewestContacts(problem, ahead), goal, tries)
  const cost = lineAfter(problem, known)
  const boundMs = inOne(cost) === goal ? cost.latenessMs : Number.POSITIVE_INFINITY
  const { order, isWhole } = searched(problem, ahead, boundMs, steps)
  return { order: order ?? known, isExact: isWhole || (inOne(cost) === goal && cost.latenessMs === 0) }
}
