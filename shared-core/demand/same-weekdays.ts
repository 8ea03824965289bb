import { dateAfter } from '../day/label.ts'
import { isoWeekday } from '../shop/hours.ts'

/** What a shop without a board goes by, and what a forecast must be better than to be worth anything. */
export interface Simple {
  /** What was sold on the same weekday the last time. */
  readonly lastWeek: number
  /** The mean of the last four times, or of as many as there are. */
  readonly lastFour: number
}

/** Nobody goes by what was sold two months ago: that item was off the menu since. Common practice, no source. */
const DAYS_AGO_MAX = 56

/** What somebody wrote down of a day: pieces sold in all, and after some minutes. */
export interface Noted {
  readonly sold: number
  /** In the order of the minutes that are asked for. */
  readonly soldAfter: readonly number[]
}

const REMEMBERED = 4

/** The last four of each weekday, by item. A day that is not open, or on which an item was not offered, is passed over. */
export class SameWeekdays {
  readonly #noted = new Map<string, readonly (readonly (Noted & { readonly date: string })[])[]>()

  note(itemId: string, date: string, day: Noted): void {
    const weekdays = this.#noted.get(itemId) ?? Array.from({ length: 7 }, () => [])
    const place = isoWeekday(date) - 1
    const next = weekdays.map((days, other) =>
      other === place ? [...days, { ...day, date }].slice(-REMEMBERED) : days,
    )
    this.#noted.set(itemId, next)
  }

  /**
   * @param afterPlace which of the minutes; null: the whole day
   * @returns null when the item was not sold on such a weekday, or only long ago
   */
  simple(itemId: string, date: string, afterPlace: number | null = null): Simple | null {
    const since = dateAfter(date, -DAYS_AGO_MAX)
    const days = (this.#noted.get(itemId)?.[isoWeekday(date) - 1] ?? []).filter((day) => day.date >= since)
    const pieces = days.map(({ sold, soldAfter }) => (afterPlace === null ? sold : (soldAfter[afterPlace] ?? 0)))
    const lastWeek = pieces[pieces.length - 1]
    if (lastWeek === undefined) return null
    return { lastWeek, lastFour: pieces.reduce((sum, one) => sum + one, 0) / pieces.length }
  }
}
