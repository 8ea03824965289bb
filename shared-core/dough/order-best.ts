import { ContactsAhead, fewestContacts, inOne } from './order-contacts.ts'
import { improved } from './order-improve.ts'
import { lineAfter } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'
import { searched } from './order-search.ts'

/** Up to so many mixes the search is given the steps to come to its end. */
export const EXACT_MIXES = 12
/** Steps of some microseconds each; then what is best till then counts, and is said to be no more than that. */
const STEPS_MOST = { exact: 30_000, more: 10_000 } as const

export interface BestOrder {
  readonly order: readonly Item[]
  readonly isExact: boolean
}

export function bestOrder(problem: Problem): BestOrder {
  const ahead = new ContactsAhead(problem)
  const known = improved(problem, fewestContacts(problem, ahead))
  const { latenessMs, ...rest } = lineAfter(problem, known)
  const isFewest = inOne(rest) === ahead.least(ahead.whole, null)
  const steps = problem.items.length <= EXACT_MIXES ? STEPS_MOST.exact : STEPS_MOST.more
  const { order, isWhole } = searched(problem, ahead, isFewest ? latenessMs : Number.POSITIVE_INFINITY, steps)
  return { order: order ?? known, isExact: isWhole }
}
