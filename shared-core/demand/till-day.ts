import type { JournalDay } from './journal-day.ts'
import { isKept, wentOf } from './merge-days.ts'
import type { ItemDay, Purchase, SalesDay, Span } from './sales-day.ts'

/** Pieces that a till sold, as far as it says of which variety. */
export interface TillSale {
  /** Minutes after midnight; null: nobody says when. */
  readonly minute: number | null
  /** At least 1. */
  readonly pieces: number
}

export interface NamedSale extends TillSale {
  readonly varietyId: string
}

export interface UnnamedSale extends TillSale {
  /** Of which it can be; null: of all. */
  readonly among: readonly string[] | null
}

/** A day of the till before its unnamed pieces are spread. */
export interface TillDay {
  readonly date: string
  readonly openMinute: number
  readonly closeMinute: number
  /** In order of time, what is without a time last. */
  readonly named: readonly NamedSale[]
  readonly unnamed: readonly UnnamedSale[]
  /** Pieces that came back and of which no sale is known, by variety; null: of no known one. */
  readonly back: ReadonlyMap<string | null, number>
}

/** What is known beside the day itself. */
export interface SpreadBy {
  /** Varieties of the shop, in order of id. */
  readonly menu: readonly string[]
  /** Those of them that the till has names for, in order of id: of these it sells, as far as anybody knows. Empty: nobody does. */
  readonly named: readonly string[]
  /** Named pieces of the weeks before, by variety. */
  readonly recent: ReadonlyMap<string, number>
  /** Null: the journal has no such day. */
  readonly journal: JournalDay | null
}

/**
 * Named pieces for which a day's own shares count as much as the weeks before, and an hour's own as much as the day's.
 * Of a dozen pieces a share of one in ten is known to a half; common sense, no source.
 */
const WORTH_OF_PRIOR = 24

/**
 * A day whose unnamed pieces ("a dozen", "bagel with spread") have varieties: by the shares of what was sold by name in
 * that hour, drawn towards those of the day and of the weeks before. Where the journal counted what went of each
 * variety, what it says is left over after the named ones decides instead; what was gone takes nothing. Pieces stay
 * whole: each goes to the variety that is furthest behind its share, so over a day none is off by more than one or two.
 * Nothing depends on the order of rows of the same minute.
 */
export function spreadDay(till: TillDay, by: SpreadBy): SalesDay {
  const named = itemsOf(till.named)
  const spread = new Spread(till, by)
  const unnamed = till.unnamed.flatMap((sale) => spread.of(sale))
  const items = new Map<string, ItemDay>()
  for (const [id, sales] of itemsOf([...till.named, ...unnamed])) {
    const sold = sales.flatMap(({ minute, pieces }): Purchase[] => (minute === null ? [] : [{ minute, pieces }]))
    const untimed = sales.reduce((sum, { minute, pieces }) => sum + (minute === null ? pieces : 0), 0)
    items.set(id, { sold: sold.sort(byTime), unseen: untimed, gone: [], offered: true })
  }
  for (const [id, pieces] of backOf(till.back, named)) {
    const item = items.get(id) ?? { sold: [], unseen: 0, gone: [], offered: true }
    items.set(id, { ...item, unseen: item.unseen - pieces })
  }
  const { date, openMinute, closeMinute } = till
  const inOrder = new Map([...items].sort(([one], [other]) => (one < other ? -1 : 1)))
  return { date, openMinute, closeMinute, specials: [], items: inOrder }
}

/** Hands out the unnamed pieces of one day, in order. */
class Spread {
  readonly #day: ReadonlyMap<string, number>
  readonly #hours = new Map<number, ReadonlyMap<string, number>>()
  readonly #till: TillDay
  readonly #gone = new Map<string, readonly Span[]>()
  readonly #isCounted: boolean
  /** By variety, how many pieces it is behind its share. */
  readonly #behind = new Map<string, number>()

  constructor(till: TillDay, by: SpreadBy) {
    const { journal } = by
    this.#till = till
    const sold = sumsOf(till.named)
    for (const { id, gone } of journal?.items ?? []) this.#gone.set(id, gone)
    const counted = journal === null ? null : leftOver(journal, till, sold)
    this.#isCounted = counted !== null
    this.#day = counted ?? drawn(sold, sharesOf(by))
  }

  of({ minute, pieces, among }: UnnamedSale): readonly NamedSale[] {
    const shares = this.#sharesAt(minute, among)
    for (const [id, share] of shares) this.#behind.set(id, (this.#behind.get(id) ?? 0) + share * pieces)
    const given = new Map<string, number>()
    for (let piece = 0; piece < pieces; piece += 1) {
      const id = this.#furthestBehind([...shares.keys()])
      if (id === null) break
      this.#behind.set(id, (this.#behind.get(id) ?? 0) - 1)
      given.set(id, (given.get(id) ?? 0) + 1)
    }
    return [...given].map(([varietyId, some]) => ({ varietyId, minute, pieces: some }))
  }

  #furthestBehind(ids: readonly string[]): string | null {
    let best: string | null = null
    let most = Number.NEGATIVE_INFINITY
    for (const id of ids) {
      const behind = this.#behind.get(id) ?? 0
      if (behind > most + TINY) {
        best = id
        most = behind
      }
    }
    return best
  }

  #sharesAt(minute: number | null, among: readonly string[] | null): ReadonlyMap<string, number> {
    const all = minute === null || this.#isCounted ? this.#day : this.#hour(Math.floor(minute / 60))
    const able = [...all].filter(([id]) => among === null || among.includes(id))
    const there = minute === null ? able : able.filter(([id]) => !isGone(this.#gone.get(id), minute))
    const weighed = [there, able].find((some) => some.some(([, share]) => share > 0)) ?? []
    const ids = weighed.length > 0 ? weighed : [...(among ?? all.keys())].map((id) => [id, 1] as const)
    const sum = ids.reduce((total, [, share]) => total + share, 0)
    return new Map(ids.map(([id, share]) => [id, share / sum]))
  }

  #hour(hour: number): ReadonlyMap<string, number> {
    let shares = this.#hours.get(hour)
    if (shares === undefined) {
      const inHour = this.#till.named.filter(({ minute }) => minute !== null && Math.floor(minute / 60) === hour)
      shares = drawn(sumsOf(inHour), this.#day)
      this.#hours.set(hour, shares)
    }
    return shares
  }
}
/** Sums of fractions that should be the same may differ in the last place. */
const TINY = 1e-9

/** What went by the journal's account beyond what the till sold by name; null: it says nothing, or there is nothing. */
function leftOver(
  journal: JournalDay,
  till: TillDay,
  sold: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> | null {
  const all = [...till.named, ...till.unnamed].reduce((sum, { pieces }) => sum + pieces, 0)
  const asDay = { ...till, specials: [], items: new Map([['all', { sold: [], unseen: all, gone: [], offered: true }]]) }
  if (!journal.isClosed || !isKept(journal, asDay)) return null
  const over = journal.items.map((item) => [item.id, Math.max(0, wentOf(item) - (sold.get(item.id) ?? 0))] as const)
  const sum = over.reduce((total, [, pieces]) => total + pieces, 0)
  return sum === 0 ? null : new Map(over.map(([id, pieces]) => [id, pieces / sum]))
}

/** Shares of what was counted, drawn towards a prior that counts as some pieces. */
function drawn(counts: ReadonlyMap<string, number>, prior: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const ids = [...new Set([...prior.keys(), ...counts.keys()])].sort()
  const total = [...counts.values()].reduce((sum, pieces) => sum + pieces, 0) + WORTH_OF_PRIOR
  return new Map(ids.map((id) => [id, ((counts.get(id) ?? 0) + (prior.get(id) ?? 0) * WORTH_OF_PRIOR) / total]))
}

/**
 * Of the weeks before; where nothing was sold by name, of each variety that the till has a name for as much. The shares
 * of later days would be nearer, but a day would then be made of what came after it, and so would the forecasts be that
 * are judged by it.
 */
function sharesOf({ menu, named, recent }: SpreadBy): ReadonlyMap<string, number> {
  const sum = menu.reduce((total, id) => total + (recent.get(id) ?? 0), 0)
  if (sum > 0) return new Map(menu.map((id) => [id, (recent.get(id) ?? 0) / sum]))
  const some = named.length > 0 ? named : menu
  return new Map(some.map((id) => [id, 1 / some.length]))
}

/** What came back of no known variety is shared out by whole pieces, the most sold first. */
function backOf(back: TillDay['back'], named: ReadonlyMap<string, readonly NamedSale[]>): ReadonlyMap<string, number> {
  const all = new Map<string, number>()
  const sold = [...named].map(([id, sales]) => [id, sales.reduce((sum, { pieces }) => sum + pieces, 0)] as const)
  const most = sold.sort(([a, one], [b, other]) => other - one || (a < b ? -1 : 1))[0]?.[0]
  for (const [id, pieces] of back) {
    const of = id ?? most
    if (of !== undefined) all.set(of, (all.get(of) ?? 0) + pieces)
  }
  return all
}

function itemsOf(sales: readonly NamedSale[]): ReadonlyMap<string, NamedSale[]> {
  const items = new Map<string, NamedSale[]>()
  for (const sale of sales) {
    const of = items.get(sale.varietyId)
    if (of === undefined) items.set(sale.varietyId, [sale])
    else of.push(sale)
  }
  return items
}

function sumsOf(sales: readonly NamedSale[]): ReadonlyMap<string, number> {
  const sums = new Map<string, number>()
  for (const { varietyId, pieces } of sales) sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  return sums
}

function isGone(gone: readonly Span[] | undefined, minute: number): boolean {
  return gone?.some(({ fromMinute, toMinute }) => minute >= fromMinute && minute < toMinute) === true
}

function byTime(one: Purchase, other: Purchase): number {
  return one.minute - other.minute || one.pieces - other.pieces
}
