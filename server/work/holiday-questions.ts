import type { Country, HolidaysOf } from '../../shared-core/live/holidays.ts'
import type { Question } from './questions.ts'

export interface HolidayQuestions {
  /** Null: nothing is known of that country. */
  readonly holidays: Question<HolidaysAsked, HolidaysOf | null>
  readonly holidayRegions: Question<null, readonly Country[]>
}

export interface HolidaysAsked {
  /** As ISO 3166 writes it: "US", "US-IL". */
  readonly region: string
  /** First and last date, YYYY-MM-DD. */
  readonly from: string
  readonly to: string
}
