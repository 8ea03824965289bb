import { dateAfter } from '../../shared-core/day/label.ts'
import { joinedDay } from '../../shared-core/demand/join-days.ts'
import type { JournalDay } from '../../shared-core/demand/journal-day.ts'
import { mergedDay, wentOf } from '../../shared-core/demand/merge-days.ts'
import type { SalesDay } from '../../shared-core/demand/sales-day.ts'
import { specialsOn } from '../../shared-core/demand/special-days.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'

/** Past sales as the till's files have them. */
export interface TillDays {
  /** First and last date that have rows; null: there are none. */
  range(): { readonly from: string; readonly to: string } | null
  /** Days that have rows, in order of date, unnamed pieces spread; both dates belong to it. */
  salesDays(from: string, to: string): readonly SalesDay[]
}

/** Days of the till that are read at once, some ten thousand rows. */
const READ_DAYS = 14

/** The shop's days out of till and journal, each put together once and again only when one of the two has changed. */
export class MergedDays {
  readonly #breathe: () => Promise<unknown>
  #till: TillDays | null = null
  #tillDays: Promise<ReadonlyMap<string, SalesDay>> | null = null
  #merged: ReadonlyMap<string, Merged> = new Map()

  constructor(breathe: () => Promise<unknown>) {
    this.#breathe = breathe
  }

  setTill(till: TillDays): void {
    this.#till = till
    this.#tillDays = null
  }

  tillChanged(): void {
    this.#tillDays = null
  }

  /** The till's unnamed pieces are spread by what the journal's day knows. */
  journalChanged(dates: readonly string[]): void {
    const range = this.#till?.range() ?? null
    if (range !== null && dates.some((date) => range.from <= date && date <= range.to)) this.#tillDays = null
  }

  /** In order of date; a day that says the same stays the same object. */
  async of(shop: Shop, journal: Iterable<JournalDay>, now: Now): Promise<readonly SalesDay[]> {
    const byDate = new Map<string, JournalDay[]>()
    for (const day of journal) byDate.set(day.date, [...(byDate.get(day.date) ?? []), day])
    const till = await this.#readTill()
    const menu = [...shop.varieties.values()].flatMap(({ id, retired }) => (retired ? [] : [id]))
    const merged = new Map<string, Merged>()
    for (const date of [...new Set([...till.keys(), ...byDate.keys()])].sort()) {
      if (!isOver(date, byDate.has(date), now)) continue
      const from: Sources = [till.get(date) ?? null, ...(byDate.get(date) ?? [])]
      const specials = specialsOn(shop, date)
      const key = [...specials, ...menu].join(' ')
      const before = this.#merged.get(date)
      const isSame = before?.key === key && sameItems(before.from, from)
      merged.set(
        date,
        isSame ? before : { from, key, day: sameAs(before?.day ?? null, mergedOf(from, specials, menu)) },
      )
      await this.#breathe()
    }
    this.#merged = merged
    return [...merged.values()].flatMap(({ day }) => day ?? [])
  }

  /** What changes while it is read takes the place of it, and is read again then. */
  #readTill(): Promise<ReadonlyMap<string, SalesDay>> {
    this.#tillDays ??= this.#readAll()
    this.#tillDays.catch(() => {
      this.#tillDays = null
    })
    return this.#tillDays
  }

  async #readAll(): Promise<ReadonlyMap<string, SalesDay>> {
    const read = new Map<string, SalesDay>()
    const range = this.#till?.range() ?? null
    for (let from = range?.from; range !== null && from !== undefined && from <= range.to; ) {
      const to = dateAfter(from, READ_DAYS - 1)
      for (const day of this.#till?.salesDays(from, to) ?? []) read.set(day.date, day)
      from = dateAfter(to, 1)
      await this.#breathe()
    }
    return read
  }
}

/** How far the shop has come. */
export interface Now {
  readonly openDate: string | null
  readonly today: string | null
}

/**
 * A till that goes on selling, or that one wrong date is in, must not make today and days to come days of the past: none
 * of them could be forecast any more. Today is over when the journal has closed it.
 */
function isOver(date: string, isClosed: boolean, { openDate, today }: Now): boolean {
  if (openDate !== null && date >= openDate) return false
  return isClosed || today === null || date < today
}

type Sources = readonly [SalesDay | null, ...JournalDay[]]

/** A day as it was put together, and of what. */
interface Merged {
  readonly from: Sources
  readonly key: string
  /** Null: nothing is known of it. */
  readonly day: SalesDay | null
}

/** A day on which nobody said what went teaches nothing: that nothing was tapped is not that nobody came. */
function saysSomething({ items }: JournalDay): boolean {
  return items.some((item) => wentOf(item) > 0)
}

function mergedOf([till, ...journal]: Sources, specials: readonly string[], menu: readonly string[]): SalesDay | null {
  const ours = joinedDay(journal)
  const known = ours !== null && saysSomething(ours) ? ours : null
  return known === null && till === null ? null : { ...mergedDay(till, known, menu), specials }
}

function sameAs(before: SalesDay | null, day: SalesDay | null): SalesDay | null {
  return before !== null && day !== null && textOf(before) === textOf(day) ? before : day
}

function textOf(day: SalesDay): string {
  return JSON.stringify([day, [...day.items]])
}

function sameItems(some: readonly unknown[], others: readonly unknown[]): boolean {
  return some.length === others.length && some.every((one, at) => one === others[at])
}
