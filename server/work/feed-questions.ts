import type { Shop } from '../../shared-core/shop/shop.ts'
import type { ClosedDayTexts } from '../history/history.ts'
import type { Question } from './questions.ts'

/** What the thread is told of the shop, as it has no journal of its own. */
export interface FeedQuestions {
  /** The set-up: at the start and whenever it has changed. */
  readonly shop: Question<Shop, void>
  readonly journalDays: Question<JournalDaysTold, void>
}

/** Days of the journal, new and changed ones. */
export interface JournalDaysTold {
  readonly days: readonly ClosedDayTexts[]
  /** The date of the day that is open, which teaches nothing yet; null: none is. */
  readonly openDate: string | null
  /** The shop's date: what a till says of it and of days to come is no day yet. Null: it has no zone so far. */
  readonly today: string | null
  /** Days told before are forgotten first. */
  readonly isWhole: boolean
}
