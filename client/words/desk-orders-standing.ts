import type { Recurrence } from '../../shared-core/orders/recurrence.ts'

/** What the desk says of standing orders. */
export interface StandingWords {
  readonly lead: string
  readonly none: string
  readonly add: string
  readonly newTitle: string
  title(mark: string): string
  readonly columns: { readonly [column in 'mark' | 'when' | 'what' | 'next']: string }
  /** A recurrence in words. @example "every Tue and Fri", "every 2 weeks on Mon", "the last Fri of the month" */
  rule(recurrence: Recurrence): string
  /** @example "from Nov 2", "until Dec 31" */
  bounds(recurrence: Recurrence, today: string): string
  readonly freq: string
  readonly freqs: { readonly [freq in Recurrence['freq']]: string }
  readonly interval: string
  /** After the field. @example "weeks" */
  unit(freq: Recurrence['freq'], count: number): string
  readonly weekdays: string
  /** By ISO number, 1 Monday to 7 Sunday. */
  weekday(iso: number): string
  readonly inMonth: string
  readonly onDate: (from: string) => string
  readonly everyWeekday: string
  /** @example "the 2nd", "the last" */
  nth(nth: number): string
  readonly from: string
  readonly until: string
  readonly untilHint: string
  readonly exceptions: string
  readonly exceptHint: string
  readonly exceptDate: string
  readonly addExcept: string
  readonly addAlso: string
  /** @example "not on Thu, Dec 24" */
  except(date: string): string
  also(date: string): string
  takeAway(told: string): string
  readonly onHolidays: string
  readonly onHolidaysHint: string
  readonly next: string
  readonly nextNone: string
  readonly holiday: string
  readonly closed: string
  readonly save: string
  readonly end: string
  endOf(mark: string): string
  sureToEnd(mark: string): string
  readonly yesEnd: string
  readonly no: string
  readonly missing: { readonly [what in StandingMissing]: string }
  readonly unknown: string
}

export type StandingMissing = 'mark' | 'time' | 'pieces' | 'from' | 'until' | 'weekdays' | 'never'
