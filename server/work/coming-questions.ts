import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { CarryNow } from '../../shared-core/plan/carried.ts'
import type { ComingDay } from '../../shared-core/plan/coming-day.ts'
import type { Question } from './questions.ts'

export interface ComingQuestions {
  /** How much dough and how many pieces for a day to come; null while the thread knows of no set-up. */
  readonly coming: Question<ComingAsked, ComingDay | null>
}

/** What the thread has not: the state, and the shop's zone. */
export interface ComingAsked {
  readonly date: string
  readonly clock: ShopClock
  readonly carry: CarryNow
}
