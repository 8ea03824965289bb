import type { HistoryOfDayJson, SalesHistoryJson } from '../../shared-core/live/sales-history.ts'
import type { TrustJson } from '../../shared-core/live/trust.ts'
import type { Question } from './questions.ts'

export interface HistoryQuestions {
  /** Sales by day, weekday and hour; `of` as in the answer. Null: the shop has no such dough or variety. */
  readonly history: Question<HistoryAsked, SalesHistoryJson | null>
  /** A day of which nothing is known has no items. */
  readonly historyDay: Question<{ readonly date: string }, HistoryOfDayJson>
  /** Of so many days at most, the newest. */
  readonly trust: Question<{ readonly days: number }, TrustJson>
}

export interface HistoryAsked {
  readonly of: string
  /** Dates, both belong to it; null: from the first, to the last one. */
  readonly from: string | null
  readonly to: string | null
}
