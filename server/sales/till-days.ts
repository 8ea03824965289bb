import type { JournalDay } from '../../shared-core/demand/journal-day.ts'
import type { ItemDay, SalesDay } from '../../shared-core/demand/sales-day.ts'
import type { NamedSale, TillDay, TillSale, UnnamedSale } from '../../shared-core/demand/till-day.ts'
import { spreadDay } from '../../shared-core/demand/till-day.ts'
import type { Meaning } from '../../shared-core/live/sales-import.ts'
import { closesAtMinute, hoursOn } from '../../shared-core/shop/hours.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { unreachable } from '../../shared-core/support.ts'
import type { DayRows } from './day-rows.ts'
import { dateOf } from './local-times.ts'
import { NO_TIME } from './read-moment.ts'
import type { NameMeaning } from './sales-names.ts'

/** Days before a day whose named sales count for the shares of its unnamed ones. */
export const RECENT_DAYS = 28
/** A day that sold more than this part outside its hours had others then. */
const OUTSIDE_PART = 0.02
const QUARTER = 15

export interface TillDayParts {
  readonly shop: Shop
  readonly meanings: ReadonlyMap<number, NameMeaning>
  /** The journal's own day of a date; null: there is none. */
  readonly journalDay: (date: string) => JournalDay | null
}

/** What the rows of a till come to, by variety. */
export class TillDayMaker {
  readonly #parts: TillDayParts
  readonly #menu: readonly string[]
  /** First day of each variety that the till has a name for. */
  readonly #firstDays: ReadonlyMap<string, number>
  /** Named pieces of the days before, oldest first. */
  #recent: { readonly day: number; readonly pieces: ReadonlyMap<string, number> }[] = []

  constructor(parts: TillDayParts) {
    this.#parts = parts
    this.#menu = [...parts.shop.varieties.values()].flatMap(({ id, retired }) => (retired ? [] : [id as string])).sort()
    this.#firstDays = firstDaysOf(parts.meanings)
  }

  /** Days in order. Null: no row of it means pieces. */
  next(rows: DayRows): SalesDay | null {
    const till = this.#tillDay(rows)
    this.#recent = this.#recent.filter(({ day }) => day >= rows.day - RECENT_DAYS)
    const recent = new Map<string, number>()
    for (const { pieces } of this.#recent) for (const [id, some] of pieces) recent.set(id, (recent.get(id) ?? 0) + some)
    this.#recent.push({ day: rows.day, pieces: sumsOf(till.named) })
    if (till.named.length === 0 && till.unnamed.length === 0) return null
    const journal = this.#parts.journalDay(till.date)
    const spread = spreadDay(till, { menu: this.#menu, named: this.#namedOn(rows.day), recent, journal })
    const items = new Map<string, ItemDay>(spread.items)
    for (const id of this.#menu)
      if (!items.has(id) && (this.#firstDays.get(id) ?? rows.day) > rows.day) items.set(id, NOT_YET)
    return { ...spread, items }
  }

  /** Varieties that the till has sold by name up to a day; before the first such day those that it sells later. */
  #namedOn(day: number): readonly string[] {
    const known = this.#menu.filter((id) => this.#firstDays.has(id))
    const sold = known.filter((id) => (this.#firstDays.get(id) ?? day) <= day)
    return sold.length > 0 ? sold : known
  }

  #tillDay({ day, sales, back }: DayRows): TillDay {
    const date = dateOf(day)
    const named = new Map<string, Writable<NamedSale>>()
    const unnamed: UnnamedSale[] = []
    sales.forEach((sale, at) => {
      const minute = sale.second === NO_TIME ? null : sale.second / 60
      for (const part of partsOf(this.#meaningOf(sale.name), sale.pieces)) {
        if (part.varietyId === null) {
          unnamed.push({ minute, pieces: part.pieces, among: part.among })
          continue
        }
        // Rows of one purchase are bought together.
        const key = `${sale.purchase === '' ? at : `#${sale.purchase}`}\n${part.varietyId}`
        const before = named.get(key)
        if (before === undefined) named.set(key, { varietyId: part.varietyId, minute, pieces: part.pieces })
        else before.pieces += part.pieces
      }
    })
    const left = new Map<string | null, number>()
    for (const [name, pieces] of back)
      for (const { varietyId, pieces: some } of partsOf(this.#meaningOf(name), pieces))
        left.set(varietyId, (left.get(varietyId) ?? 0) + some)
    const all = [...named.values()]
    return { date, ...this.#hours(date, [...all, ...unnamed]), named: all, unnamed: unnamed.sort(inOrder), back: left }
  }

  #meaningOf(name: number): Meaning | null {
    return this.#parts.meanings.get(name)?.meaning ?? null
  }

  /** By the set-up, wider where much was sold outside: the shop had other hours then. */
  #hours(date: string, sales: readonly TillSale[]): Pick<TillDay, 'openMinute' | 'closeMinute'> {
    const hours = hoursOn(this.#parts.shop, date) ?? this.#parts.shop.hours
    const [openMinute, closeMinute] = [hours.openMinute, closesAtMinute(hours)]
    const minutes = sales.flatMap(({ minute }) => minute ?? []).sort((one, other) => one - other)
    const few = Math.ceil(minutes.length * OUTSIDE_PART)
    const first = minutes[few] ?? openMinute
    const last = minutes[minutes.length - 1 - few] ?? closeMinute
    return {
      openMinute: first < openMinute ? Math.floor(first / QUARTER) * QUARTER : openMinute,
      closeMinute: last >= closeMinute ? Math.ceil((last + 1) / QUARTER) * QUARTER : closeMinute,
    }
  }
}

interface Part {
  /** Null: one of `among`. */
  readonly varietyId: string | null
  readonly pieces: number
  readonly among: readonly string[] | null
}

/** What some of a name are; kitchen use is asked for like any other piece. */
function partsOf(meaning: Meaning | null, count: number): readonly Part[] {
  const part = (varietyId: string | null, pieces: number, among: Part['among'] = null) => ({
    varietyId,
    pieces: pieces * count,
    among,
  })
  switch (meaning?.kind) {
    case undefined:
    case 'nothing':
      return []
    case 'variety':
    case 'kitchen':
      return [part(meaning.varietyId, meaning.pieces)]
    case 'pack':
      return meaning.lines.map(({ varietyId, pieces }) => part(varietyId, pieces))
    case 'unnamed':
      return [part(null, meaning.pieces, meaning.among)]
    default:
      return unreachable(meaning)
  }
}

/** By what they are, not by where they stood: the order in which files were taken says nothing. */
function inOrder(one: UnnamedSale, other: UnnamedSale): number {
  const text = ({ among }: UnnamedSale) => among?.join(' ') ?? ''
  const minute = ({ minute: at }: UnnamedSale) => at ?? Number.MAX_SAFE_INTEGER
  return minute(one) - minute(other) || one.pieces - other.pieces || (text(one) < text(other) ? -1 : 1)
}

/** By variety, the day of the first row that names it. */
export function firstDaysOf(meanings: ReadonlyMap<number, NameMeaning>): ReadonlyMap<string, number> {
  const first = new Map<string, number>()
  for (const { meaning, firstDay } of meanings.values()) {
    if (firstDay === null) continue
    for (const { varietyId } of partsOf(meaning, 1))
      if (varietyId !== null) first.set(varietyId, Math.min(firstDay, first.get(varietyId) ?? firstDay))
  }
  return first
}

function sumsOf(sales: readonly NamedSale[]): ReadonlyMap<string, number> {
  const sums = new Map<string, number>()
  for (const { varietyId, pieces } of sales) sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  return sums
}

const NOT_YET: ItemDay = { sold: [], unseen: 0, gone: [], offered: false }

type Writable<T> = { -readonly [K in keyof T]: T[K] }
