import { dayOfText } from '../../shared-core/demand/day-text.ts'
import type { ItemGuess } from '../../shared-core/demand/demand.ts'
import { joinedDay } from '../../shared-core/demand/join-days.ts'
import type { JournalDay } from '../../shared-core/demand/journal-day.ts'
import { KITCHEN_DAYS, kitchenParts } from '../../shared-core/demand/kitchen-parts.ts'
import { Learner } from '../../shared-core/demand/learner.ts'
import type { DayAsked, SalesDay } from '../../shared-core/demand/sales-day.ts'
import { specialsOn } from '../../shared-core/demand/special-days.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import type { LineDay } from '../../shared-core/line/line-tally.ts'
import { closesAtMinute, hoursOn } from '../../shared-core/shop/hours.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { JournalDaysTold } from './feed-questions.ts'
import type { TillDays } from './merged-days.ts'
import { MergedDays } from './merged-days.ts'

/** Days from which the line's times are learnt: an oven is mended, people come and go. */
const LINE_DAYS_MAX = 60

/** What the thread knows of the shop: its set-up, its days, and what these taught. */
export class DayBook {
  readonly #breathe: () => Promise<unknown>
  readonly #journal = new Map<number, JournalDay>()
  readonly #merged: MergedDays
  /** Of the newest days, by number. */
  readonly #lines = new Map<number, LineDay>()
  #shop: Shop | null = null
  #openDate: string | null = null
  #today: string | null = null
  #kitchen: ReadonlyMap<VarietyId, number> | null = null
  #version = 1
  #learnt: Learnt | null = null
  #learning: Promise<void> | null = null

  constructor(breathe: () => Promise<unknown>) {
    this.#breathe = breathe
    this.#merged = new MergedDays(breathe)
  }

  /** Null until the server has told it. */
  get shop(): Shop | null {
    return this.#shop
  }

  /** Goes up whenever days, special days or guesses change: what was reckoned from them is then of yesterday. */
  get version(): number {
    return this.#version
  }

  /** The date of the day that is open; null: none is. */
  get openDate(): string | null {
    return this.#openDate
  }

  /** The shop's date; null: not told. */
  get today(): string | null {
    return this.#today
  }

  setShop(shop: Shop): void {
    const isNews = this.#shop === null || whatTeaches(this.#shop) !== whatTeaches(shop)
    this.#shop = shop
    if (!isNews) return
    // The till's days take the shop's hours.
    this.#merged.tillChanged()
    this.#changed()
  }

  setTill(till: TillDays): void {
    this.#merged.setTill(till)
    this.#changed()
  }

  /** Rows came, went, or mean something else: once for a file, not once for each of its chunks. */
  tillChanged(): void {
    this.#merged.tillChanged()
    this.#changed()
  }

  tellDays({ days, openDate, today, isWhole }: JournalDaysTold): void {
    const dates = isWhole ? [...this.#journal.values()].map(({ date }) => date) : []
    if (isWhole) this.#journal.clear()
    if (isWhole) this.#lines.clear()
    for (const { number, texts } of days) {
      const day = texts === null ? null : dayOfText(texts.sales)
      if (texts === null) this.#lines.delete(number)
      else this.#keepLine(number, JSON.parse(texts.line))
      dates.push(...[this.#journal.get(number), day].flatMap((one) => one?.date ?? []))
      if (day === null) this.#journal.delete(number)
      else this.#journal.set(number, day)
    }
    this.#merged.journalChanged(dates)
    const isNews = days.length > 0 || isWhole || openDate !== this.#openDate || today !== this.#today
    this.#openDate = openDate
    this.#today = today
    if (isNews) this.#changed()
  }

  /** A closed day of the journal by its date; both, where the shop closed twice. Null: there is none. */
  journalDay(date: string): JournalDay | null {
    return joinedDay([...this.#journal.values()].filter((day) => day.date === date))
  }

  /** What the newest closed days' taps say of the line, oldest first. */
  lineDays(): readonly LineDay[] {
    return [...this.#lines].sort(([one], [other]) => one - other).map(([, day]) => day)
  }

  #keepLine(number: number, line: LineDay): void {
    this.#lines.set(number, line)
    if (this.#lines.size > LINE_DAYS_MAX) this.#lines.delete(Math.min(...this.#lines.keys()))
  }

  /** All days that are over and of which something is known, in order of date. The same day stays the same object. */
  async days(): Promise<readonly SalesDay[]> {
    for (;;) {
      const version = this.#version
      const days = this.#shop === null ? [] : await this.#merged.of(this.#shop, [...this.#journal.values()], this)
      // What changed meanwhile is in the next one.
      if (version === this.#version) return days
    }
  }

  /** A date as it can be asked about: on a weekday on which the shop is closed it has the usual hours. */
  asked(date: string): DayAsked {
    const shop = this.#shop
    if (shop === null) throw new Error('the shop has not been told yet')
    const hours = hoursOn(shop, date) ?? shop.hours
    return { date, openMinute: hours.openMinute, closeMinute: closesAtMinute(hours), specials: specialsOn(shop, date) }
  }

  /** Of each variety's demand what the kitchen uses, by the journal's newest days. */
  kitchenParts(): ReadonlyMap<VarietyId, number> {
    if (this.#kitchen === null) {
      const days = [...this.#journal.values()].sort((one, other) => (one.date < other.date ? -1 : 1))
      this.#kitchen = kitchenParts(days.slice(-KITCHEN_DAYS))
    }
    return this.#kitchen
  }

  guesses(): readonly ItemGuess[] {
    return guessesOf(this.#shop)
  }

  /**
   * What all days taught. While new ones are learnt, what was known before: a counter does not wait for a file of years.
   * @param isWaiting true: all of them, however long it takes
   */
  async learner(isWaiting = false): Promise<Learner> {
    for (;;) {
      const learnt = this.#learnt
      if (learnt?.version === this.#version) return learnt.learner
      this.#learning ??= this.#learn().finally(() => {
        this.#learning = null
      })
      if (learnt !== null && !isWaiting) {
        // Told where it is waited for.
        this.#learning.catch(() => undefined)
        return learnt.learner
      }
      await this.#learning
    }
  }

  /** Of the days that the learner knows: it goes on with new ones, so that it stays the same and says something else. */
  get learntVersion(): number {
    return this.#learnt?.version ?? 0
  }

  #changed(): void {
    this.#version += 1
    this.#kitchen = null
  }

  async #learn(): Promise<void> {
    const version = this.#version
    const days = await this.days()
    const from = this.#learnt
    const key = this.#shop === null ? '' : whatTeaches(this.#shop)
    const goesOn = from !== null && from.key === key && isBeginningOf(from.days, days)
    const learner = goesOn ? from.learner : new Learner(this.guesses())
    // One that goes on and fails is half of something: what comes next begins afresh.
    if (goesOn) this.#learnt = { ...from, days: [], key: '' }
    for (const day of goesOn ? days.slice(from.days.length) : days) {
      learner.learn(day)
      await this.#breathe()
    }
    this.#learnt = { learner, days, key, version }
  }
}

interface Learnt {
  readonly learner: Learner
  readonly days: readonly SalesDay[]
  /** What of the set-up it was made from. */
  readonly key: string
  readonly version: number
}

function guessesOf(shop: Shop | null): readonly ItemGuess[] {
  return [...(shop?.varieties.values() ?? [])]
    .filter(({ retired }) => !retired)
    .map(({ id, doughId, usual }) => ({ id, group: doughId, usual }))
}

function whatTeaches(shop: Shop): string {
  return JSON.stringify([guessesOf(shop), [...shop.specialDays.values()], shop.hours, [...shop.weekdays.values()]])
}

function isBeginningOf(some: readonly SalesDay[], all: readonly SalesDay[]): boolean {
  return some.length <= all.length && some.every((day, at) => day === all[at])
}
