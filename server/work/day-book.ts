import { dateAfter } from '../../shared-core/day/label.ts'
import { dayOfText } from '../../shared-core/demand/day-text.ts'
import type { ItemGuess } from '../../shared-core/demand/demand.ts'
import { joinedDay } from '../../shared-core/demand/join-days.ts'
import type { JournalDay } from '../../shared-core/demand/journal-day.ts'
import { KITCHEN_DAYS, kitchenParts } from '../../shared-core/demand/kitchen-parts.ts'
import { Learner } from '../../shared-core/demand/learner.ts'
import { mergedDay, wentOf } from '../../shared-core/demand/merge-days.ts'
import type { DayAsked, SalesDay } from '../../shared-core/demand/sales-day.ts'
import { specialsOn } from '../../shared-core/demand/special-days.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { closesAtMinute, hoursOn } from '../../shared-core/shop/hours.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { JournalDaysTold } from './feed-questions.ts'

/** Past sales as the till's files have them. */
export interface TillDays {
  /** First and last date that have rows; null: there are none. */
  range(): { readonly from: string; readonly to: string } | null
  /** Days that have rows, in order of date, unnamed pieces spread; both dates belong to it. */
  salesDays(from: string, to: string): readonly SalesDay[]
}

/** Learning lets others through after so long; a question of the counter's waits no longer than that. */
const CHUNK_MS = 12
/** Days of the till that are read at once, some ten thousand rows. */
const READ_DAYS = 14

/** What the thread knows of the shop: its set-up, its days, and what these taught. */
export class DayBook {
  readonly #breathe: () => Promise<unknown>
  readonly #journal = new Map<number, JournalDay>()
  #shop: Shop | null = null
  #till: TillDays | null = null
  #openDate: string | null = null
  #kitchen: ReadonlyMap<VarietyId, number> | null = null
  #tillDays: ReadonlyMap<string, SalesDay> | null = null
  #merged: ReadonlyMap<string, Merged> = new Map()
  #version = 1
  #learnt: Learnt | null = null
  #learning: Promise<void> | null = null

  constructor(breathe: () => Promise<unknown>) {
    this.#breathe = breathe
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

  setShop(shop: Shop): void {
    const isNews = this.#shop === null || whatTeaches(this.#shop) !== whatTeaches(shop)
    this.#shop = shop
    if (isNews) this.#changed()
  }

  useTill(till: TillDays): void {
    this.#till = till
    this.tillChanged()
  }

  /** Rows came, went, or mean something else: once for a file, not once for each of its chunks. */
  tillChanged(): void {
    this.#tillDays = null
    this.#changed()
  }

  tellDays({ days, openDate, isWhole }: JournalDaysTold): void {
    if (isWhole) this.#journal.clear()
    for (const { number, text } of days) {
      if (text === null) this.#journal.delete(number)
      else this.#journal.set(number, dayOfText(text))
    }
    const isNews = days.length > 0 || isWhole || openDate !== this.#openDate
    this.#openDate = openDate
    if (isNews) this.#changed()
  }

  /** A closed day of the journal by its date; both, where the shop closed twice. Null: there is none. */
  journalDay(date: string): JournalDay | null {
    return joinedDay([...this.#journal.values()].filter((day) => day.date === date))
  }

  /** All days that are over and of which something is known, in order of date. The same day stays the same object. */
  async days(): Promise<readonly SalesDay[]> {
    await this.#readTill()
    return this.#mergeAll()
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
    let atMs = performance.now()
    for (const day of goesOn ? days.slice(from.days.length) : days) {
      learner.learn(day)
      if (performance.now() - atMs < CHUNK_MS) continue
      await this.#breathe()
      atMs = performance.now()
    }
    this.#learnt = { learner, days, key, version }
  }

  async #readTill(): Promise<void> {
    while (this.#tillDays === null) {
      const version = this.#version
      const read = new Map<string, SalesDay>()
      const range = this.#till?.range() ?? null
      for (let from = range?.from; range !== null && from !== undefined && from <= range.to; ) {
        const to = dateAfter(from, READ_DAYS - 1)
        for (const day of this.#till?.salesDays(from, to) ?? []) read.set(day.date, day)
        from = dateAfter(to, 1)
        await this.#breathe()
      }
      // What changed meanwhile is read again.
      if (version === this.#version) this.#tillDays = read
    }
  }

  #mergeAll(): readonly SalesDay[] {
    const shop = this.#shop
    if (shop === null) return []
    const till = this.#tillDays ?? new Map<string, SalesDay>()
    const byDate = new Map<string, JournalDay[]>()
    for (const day of this.#journal.values()) byDate.set(day.date, [...(byDate.get(day.date) ?? []), day])
    const menu = [...shop.varieties.values()].flatMap(({ id, retired }) => (retired ? [] : [id]))
    const merged = new Map<string, Merged>()
    for (const date of [...new Set([...till.keys(), ...byDate.keys()])].sort()) {
      if (date === this.#openDate) continue
      const from: Sources = [till.get(date) ?? null, ...(byDate.get(date) ?? [])]
      const specials = specialsOn(shop, date)
      const key = [...specials, ...menu].join(' ')
      const before = this.#merged.get(date)
      const isSame = before?.key === key && sameItems(before.from, from)
      const one = isSame ? before : { from, key, day: mergedOf(from, specials, menu) }
      merged.set(date, one)
    }
    this.#merged = merged
    return [...merged.values()].flatMap(({ day }) => day ?? [])
  }
}

type Sources = readonly [SalesDay | null, ...JournalDay[]]

/** A day as it was put together, and of what. */
interface Merged {
  readonly from: Sources
  readonly key: string
  /** Null: nothing is known of it. */
  readonly day: SalesDay | null
}

interface Learnt {
  readonly learner: Learner
  readonly days: readonly SalesDay[]
  /** What of the set-up it was made from. */
  readonly key: string
  readonly version: number
}

/** A day on which nobody said what went teaches nothing: that nothing was tapped is not that nobody came. */
function saysSomething({ items }: JournalDay): boolean {
  return items.some((item) => wentOf(item) > 0)
}

function guessesOf(shop: Shop | null): readonly ItemGuess[] {
  return [...(shop?.varieties.values() ?? [])]
    .filter(({ retired }) => !retired)
    .map(({ id, doughId, usual }) => ({ id, group: doughId, usual }))
}

function whatTeaches(shop: Shop): string {
  return JSON.stringify([guessesOf(shop), [...shop.specialDays.values()]])
}

function mergedOf([till, ...journal]: Sources, specials: readonly string[], menu: readonly string[]): SalesDay | null {
  const ours = joinedDay(journal)
  const known = ours !== null && saysSomething(ours) ? ours : null
  return known === null && till === null ? null : { ...mergedDay(till, known, menu), specials }
}

function sameItems(some: readonly unknown[], others: readonly unknown[]): boolean {
  return some.length === others.length && some.every((one, at) => one === others[at])
}

/** By what they say, where they were put together anew. */
function isBeginningOf(some: readonly SalesDay[], all: readonly SalesDay[]): boolean {
  return some.length <= all.length && some.every((day, at) => day === all[at] || textOf(day) === textOf(all[at]))
}

function textOf(day: SalesDay | undefined): string {
  return JSON.stringify([day, [...(day?.items ?? [])]])
}
