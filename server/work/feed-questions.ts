import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Question } from './questions.ts'

/** What the thread is told of the shop, as it has no journal of its own. */
export interface FeedQuestions {
  /** The set-up: at the start and whenever it has changed. */
  readonly shop: Question<Shop, void>
  readonly journalDays: Question<JournalDaysTold, void>
}

/** Days of the journal, new and changed ones. */
export interface JournalDaysTold {
  readonly days: readonly DayText[]
  /** The date of the day that is open, which teaches nothing yet; null: none is. */
  readonly openDate: string | null
  /** The shop's date: what a till says of it and of days to come is no day yet. Null: it has no zone so far. */
  readonly today: string | null
  /** Days told before are forgotten first. */
  readonly isWhole: boolean
}

/** A day of the journal as its store has it; see `shared-core/demand/day-text.ts`. */
export interface DayText {
  /** Counts the shop's days from 1. */
  readonly number: number
  /** Null: it goes on after all. */
  readonly text: string | null
}
