import type { ItemDay } from './sales-day.ts'

/**
 * The day that is open, as far as it has come: what the rest of it is reckoned from. Minutes are after local midnight of
 * its date, as in `SalesDay`.
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
  /** Varieties on the menu, and those of which there is something. */
  readonly items: readonly TodayItem[]
}

export interface TodayItem {
  readonly id: string
  /** So far, kitchen use and unnamed sales' shares in it; `unseen` is what counts found and what probably left unseen since. */
  readonly soFar: ItemDay
  /** For sale now: an estimate and its standard deviation. */
  readonly stock: { readonly mean: number; readonly doubt: number }
  /** On the way, soonest first: in the oven, on boards and planned. */
  readonly more: readonly { readonly minute: number; readonly pieces: number }[]
  /** Kept for orders, apart from what is for sale. */
  readonly kept: number
}
