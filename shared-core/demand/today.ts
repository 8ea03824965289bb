import type { DoughId } from '../ids.ts'
import { purchases, spans } from './day-text.ts'
import type { ItemDay, SalesDay } from './sales-day.ts'

/**
 * The day that is open, as far as it has come: what the rest of it is reckoned from. It goes from one thread to another
 * with every sale, so that purchases and spans are flat. Minutes are after local midnight of its date, as in `SalesDay`.
 */
export interface Today {
  readonly date: string
  readonly openMinute: number
  readonly closeMinute: number
  readonly nowMinute: number
  /** From when the oven must be empty of bagels, today's slip in it; null: such a shop bakes until it closes. */
  readonly changeoverMinute: number | null
  /** The latest at which a load goes in that is out by then; null: as above. */
  readonly lastLoadInMinute: number | null
  /** No more is baked today. */
  readonly bakingIsOver: boolean
  /** Pieces of each dough before the kettle that no planned load takes; null: the board knows of no dough. */
  readonly chilled: ReadonlyMap<DoughId, number> | null
  /** Varieties on the menu, and those of which there is something. */
  readonly items: readonly TodayItem[]
}

export interface TodayItem {
  readonly id: string
  /** Minute, pieces, minute, pieces …: sold, used in the kitchen, and its share of what was sold without a name. */
  readonly sold: readonly number[]
  /** What counts found gone beside that, and what probably left unseen since; signed, may have a fraction. */
  readonly unseen: number
  /** From, to, from, to …: while customers could buy there was none. */
  readonly gone: readonly number[]
  /** For sale now: expected pieces and their standard deviation. */
  readonly stock: { readonly mean: number; readonly doubt: number }
  /** On the way, soonest first: cooling, in the oven, on boards and planned. */
  readonly more: readonly { readonly minute: number; readonly pieces: number }[]
  /** Kept for orders, apart from what is for sale. */
  readonly kept: number
}

/** Today as far as it has come, as a day of sales. */
export function soFarOf({ date, openMinute, closeMinute, items }: Today): SalesDay {
  return {
    date,
    openMinute,
    closeMinute,
    specials: [],
    items: new Map(
      items.map(({ id, sold, unseen, gone }): [string, ItemDay] => [
        id,
        { sold: purchases(sold), unseen, gone: spans(gone), offered: true },
      ]),
    ),
  }
}
