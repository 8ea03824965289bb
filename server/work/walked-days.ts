import { dateAfter } from '../../shared-core/day/label.ts'
import type { WalkedDay } from '../../shared-core/demand/backtest.ts'
import { walkForward } from '../../shared-core/demand/backtest.ts'
import type { Work } from './work.ts'

/** A year of days is judged: what was said two years ago says little of the forecasts of today. */
const JUDGED_DAYS = 365
/** The rest of a day is forecast at several times: four times the work. */
const REST_DAYS = 84
/** Times at which the rest of the day is judged, after opening: two hours apart, as loads are decided. */
const REST_EVERY_MIN = 120
const REST_LAST_MIN = 60

/** All days walked forward, made when somebody looks at past sales and kept until the days change. */
export class WalkedDays {
  readonly #work: Work
  #made: { readonly version: number; readonly days: Promise<readonly WalkedDay[]> } | null = null

  constructor(work: Work) {
    this.#work = work
  }

  days(): Promise<readonly WalkedDay[]> {
    const { version } = this.#work.book
    if (this.#made?.version !== version) {
      const days = this.#walk()
      this.#made = { version, days }
      // Whoever asks next tries again.
      days.catch(() => {
        this.#made = null
      })
    }
    return this.#made?.days ?? this.#walk()
  }

  async #walk(): Promise<readonly WalkedDay[]> {
    const { book, breathe } = this.#work
    const days = await book.days()
    const last = days.at(-1)
    if (last === undefined) return []
    const walk = walkForward(days, {
      guesses: book.guesses(),
      judgedFrom: dateAfter(last.date, 1 - JUDGED_DAYS),
      restFrom: dateAfter(last.date, 1 - REST_DAYS),
      restMinutes: this.#restMinutes(last.date),
    })
    const walked: WalkedDay[] = []
    for (const day of walk) {
      walked.push(day)
      await breathe()
    }
    return walked
  }

  /** Full hours. */
  #restMinutes(date: string): readonly number[] {
    const { openMinute, closeMinute } = this.#work.book.asked(date)
    const minutes: number[] = []
    const first = Math.ceil((openMinute + REST_EVERY_MIN) / 60) * 60
    for (let minute = first; minute <= closeMinute - REST_LAST_MIN; minute += REST_EVERY_MIN) minutes.push(minute)
    return minutes
  }
}
