import { dateAfter } from '../day/label.ts'
import type { NoonOf } from '../dough/dates.ts'
import { boilingOn } from '../dough/dates.ts'
import type { Wanted } from '../dough/mix.ts'
import { demandOn, firstDate, openingDemand } from '../dough/need-demand.ts'
import type { BoilingDay, Supply } from '../dough/need-supply.ts'
import { fitting, suppliesNow, takeFor } from '../dough/need-supply.ts'
import type { Looked } from '../dough/plan-days.ts'
import type { DoughId } from '../ids.ts'
import type { DoughOrdered } from '../orders/mixed-spread.ts'
import { doughOrdered } from '../orders/mixed-spread.ts'
import type { OrderedLine } from '../orders/ordered-on.ts'
import { piecesOn } from '../orders/ordered-on.ts'
import type { Shop } from '../shop/shop.ts'

/** Dough that is there now, and what the first day still takes of it: plain values, for the thread that has no state. */
export interface CarryNow {
  /** The first date on which anything is boiled. */
  readonly first: string
  /** Null: nobody has said, so all that is chilled is presumed to be for that day. */
  readonly open: ReadonlyMap<DoughId, number> | null
  readonly supplies: readonly Supply[]
  /** What is typed for days from the first on. */
  readonly wanted: readonly Wanted[]
  /** What the board's orders come to on these days; nothing on the open one, which is baked by its loads. */
  readonly ordered: readonly { readonly date: string; readonly lines: readonly OrderedLine[] }[]
}

/** As the dough room's own plan sees it, so that advice and plan take off the same. */
export function carryNow(looked: Looked, date: string): CarryNow {
  const { state, shop, noonOf } = looked
  const first = firstDate(state, date)
  const isOver = state.recordedAtMs > boilingOn(shop, first, noonOf).toMs
  return {
    first,
    open: openingDemand(looked, first, isOver),
    supplies: suppliesNow(looked),
    wanted: [...state.wanted.values()].filter((one) => one.date >= first && one.date <= date),
    ordered: datesFrom(first, date).map((day) => ({
      date: day,
      lines: day === state.day?.label ? [] : piecesOn(state, { date: day, noonMs: noonOf(day) }),
    })),
  }
}

function datesFrom(first: string, last: string): readonly string[] {
  const dates: string[] = []
  for (let date = first; date <= last; date = dateAfter(date, 1)) dates.push(date)
  return dates
}

/**
 * Goes through days to come and takes from what is there what each will use, whose window closes first going first: what is
 * typed for it, else what is advised. What a day's own mixes may leave over is not counted: it is not known yet.
 */
export class Carry {
  readonly #shop: Shop
  readonly #noonOf: NoonOf
  readonly #now: CarryNow
  readonly #supplies: readonly Supply[]

  constructor(shop: Shop, noonOf: NoonOf, now: CarryNow) {
    this.#shop = shop
    this.#noonOf = noonOf
    this.#now = now
    this.#supplies = now.supplies.map((supply) => ({ ...supply }))
  }

  /** Pieces of each dough that are there for a date, inside their window, less what the days before took. */
  on(date: string): ReadonlyMap<DoughId, number> {
    const carried = new Map<DoughId, number>()
    for (const id of this.#shop.doughs.keys()) {
      const pieces = fitting(this.#supplies, id, this.#day(date)).reduce((sum, { left }) => sum + left, 0)
      if (pieces > 0) carried.set(id, pieces)
    }
    return carried
  }

  /** What is typed as ordered for a date, and the board's orders; mixed ones in the shares in which varieties are asked for. */
  orders(date: string, means: ReadonlyMap<string, number>): readonly DoughOrdered[] {
    const lines = this.#now.wanted.find((one) => one.date === date)?.lines ?? []
    const typed = lines
      .filter(({ ordered }) => ordered > 0)
      .map(({ doughId, varietyId, ordered }) => ({ doughId, varietyId, pieces: ordered }))
    return [...typed, ...doughOrdered(this.#shop, this.#lines(date), means)]
  }

  /** A day before the one that is asked about uses what it will. */
  pass(date: string, advised: ReadonlyMap<DoughId, number>): void {
    const { first, open, wanted } = this.#now
    const typed = demandOn({ wanted: new Map(wanted.map((one) => [one.date, one])) }, date)
    const board = new Map<DoughId, number>()
    for (const { doughId, pieces } of doughOrdered(this.#shop, this.#lines(date)))
      board.set(doughId, (board.get(doughId) ?? 0) + pieces)
    for (const id of this.#shop.doughs.keys()) {
      const { counter, orders } = typed.get(id) ?? { counter: 0, orders: 0 }
      const said = typed.size > 0 ? counter + orders + (board.get(id) ?? 0) : (advised.get(id) ?? 0)
      const takes = date !== first ? said : open === null ? Number.POSITIVE_INFINITY : (open.get(id) ?? 0)
      takeFor(this.#supplies, id, this.#day(date), takes)
    }
  }

  #lines(date: string): readonly OrderedLine[] {
    return this.#now.ordered.find((one) => one.date === date)?.lines ?? []
  }

  #day(date: string): BoilingDay {
    return { date, ...boilingOn(this.#shop, date, this.#noonOf) }
  }
}
