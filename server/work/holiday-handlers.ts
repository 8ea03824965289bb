import type { HolidayQuestions } from './holiday-questions.ts'
import { holidayRegions, holidaysOf } from './holidays-of.ts'
import type { Handlers } from './questions.ts'

/** Holidays are answered beside the room: the library and its rules are more than the line should wait for. */
export function holidayHandlers(): Handlers<HolidayQuestions> {
  return { holidays: holidaysOf, holidayRegions }
}
