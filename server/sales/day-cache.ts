import type { DatabaseSyncInstance } from '@photostructure/sqlite'
import type { JournalDay } from '../../shared-core/demand/journal-day.ts'
import type { SalesDay } from '../../shared-core/demand/sales-day.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { dayRows } from './day-rows.ts'
import { dateOf, dayOf } from './local-times.ts'
import type { NameMeaning } from './sales-names.ts'
import { firstDaysOf, RECENT_DAYS, TillDayMaker } from './till-days.ts'

export interface DayCacheParts {
  readonly db: DatabaseSyncInstance
  readonly meanings: () => ReadonlyMap<number, NameMeaning>
  readonly shop: () => Shop | null
  readonly journalDay: (date: string) => JournalDay | null
}

interface Made {
  /** Null: no row of it means pieces. */
  readonly sales: SalesDay | null
  /** The journal's day that it was spread by. */
  readonly journal: JournalDay | null
}

/** Days of a till as they come out of its rows, made again where rows, names or the set-up have changed. */
export class DayCache {
  readonly #parts: DayCacheParts
  readonly #made = new Map<number, Made>()
  /** Days to be made, those without any row among them. */
  readonly #toMake = new Set<number>()
  #shopKey: string | null = null
  /** Goes through the days to be made; what changes meanwhile ends it. */
  #running: Generator<void> | null = null

  constructor(parts: DayCacheParts) {
    this.#parts = parts
  }

  /** Rows of these days came or went. A day's unnamed pieces go by the weeks before it. */
  rowsChanged(fromDay: number, toDay: number): void {
    this.#running = null
    for (let day = fromDay; day <= toDay + RECENT_DAYS; day += 1) {
      this.#made.delete(day)
      this.#toMake.add(day)
    }
  }

  /** Names mean something else, or the shop has other hours. */
  allChanged(): void {
    this.#running = null
    this.#made.clear()
    const range = this.#range()
    if (range !== null) this.rowsChanged(range.from, range.to)
  }

  /** First and last date that have rows; null: there are none. */
  range(): { readonly from: string; readonly to: string } | null {
    const range = this.#range()
    return range === null ? null : { from: dateOf(range.from), to: dateOf(range.to) }
  }

  /** In order of date; both dates belong to it. */
  days(from: string, to: string): readonly SalesDay[] {
    const shop = this.#lookAgain()
    if (shop === null) return []
    const [first, last] = [dayOf(from), dayOf(to)]
    const wanted = [...this.#toMake].filter((day) => day >= first && day <= last)
    for (const _day of this.#make(shop, wanted));
    const made = [...this.#made].sort(([one], [other]) => one - other)
    return made.flatMap(([day, { sales }]) => (sales !== null && day >= first && day <= last ? [sales] : []))
  }

  /** Makes one more day of what has changed, so that others can have a turn. @returns whether all are made */
  step(): boolean {
    const shop = this.#lookAgain()
    if (shop === null || this.#toMake.size === 0) return true
    this.#running ??= this.#make(shop, [...this.#toMake])
    if (this.#running.next().done) this.#running = null
    return this.#toMake.size === 0
  }

  /** What the set-up, files taken since or the journal say anew of days that are made. Without a shop a row has no day: null. */
  #lookAgain(): Shop | null {
    const shop = this.#parts.shop()
    if (shop === null || this.#running !== null) return shop
    const key = keyOf(shop, firstDaysOf(this.#parts.meanings()))
    if (key !== this.#shopKey) this.allChanged()
    this.#shopKey = key
    for (const [day, { sales, journal }] of this.#made) {
      if (sales === null || isSame(this.#parts.journalDay(sales.date), journal)) continue
      this.#made.delete(day)
      this.#toMake.add(day)
    }
    return shop
  }

  /** @param days in any order; those of a stretch are made in one go, from the weeks before it on */
  *#make(shop: Shop, days: readonly number[]): Generator<void> {
    const { db, meanings, journalDay } = this.#parts
    const sorted = [...days].sort((one, other) => one - other)
    for (const { from, to } of stretchesOf(sorted)) {
      const maker = new TillDayMaker({ shop, meanings: meanings(), journalDay })
      for (const rows of dayRows(db, from - RECENT_DAYS, to)) {
        const sales = maker.next(rows)
        const journal = sales === null ? null : journalDay(sales.date)
        if (this.#toMake.delete(rows.day)) this.#made.set(rows.day, { sales, journal })
        yield
      }
      for (let day = from; day <= to; day += 1) this.#toMake.delete(day)
    }
  }

  #range(): { readonly from: number; readonly to: number } | null {
    const row = this.#parts.db
      .prepare('SELECT (SELECT min(day) FROM rows) AS a, (SELECT max(day) FROM rows) AS b')
      .get()
    return row?.a == null ? null : { from: Number(row.a), to: Number(row.b) }
  }
}

/** Days that are nearer to each other than the weeks that each needs are made together. */
function stretchesOf(sorted: readonly number[]): readonly { from: number; to: number }[] {
  const stretches: { from: number; to: number }[] = []
  for (const day of sorted) {
    const last = stretches.at(-1)
    if (last !== undefined && day - last.to <= RECENT_DAYS) last.to = day
    else stretches.push({ from: day, to: day })
  }
  return stretches
}

function isSame(one: JournalDay | null, other: JournalDay | null): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other)
}

function keyOf({ hours, weekdays, varieties }: Shop, firstDays: ReadonlyMap<string, number>): string {
  const menu = [...varieties.values()].map(({ id, retired }) => [id, retired])
  const first = [...firstDays].sort(([one], [other]) => (one < other ? -1 : 1))
  return JSON.stringify([hours, [...weekdays.values()], menu, first])
}
