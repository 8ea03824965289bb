import type { State } from '../day/state.ts'
import type { Shop } from '../shop/shop.ts'
import type { NoonOf } from './dates.ts'
import type { DayPlan } from './day-plan.ts'

/** What planning looks at. */
export interface Looked {
  readonly state: State
  readonly shop: Shop
  readonly noonOf: NoonOf
}

export function planDays(_looked: Looked, date: string): DayPlan {
  return { date, isClosed: false, doughs: [], formulas: [], mixes: [], decideAtMs: null }
}
