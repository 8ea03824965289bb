/**
 * One open day of a shop as demand sees it, whatever its sales were known by: the till's rows, taps on the counter, or
 * counts. Minutes are after local midnight of the day's date and may have a fraction; past midnight they go on.
 */
export interface SalesDay {
  /** Local date, YYYY-MM-DD. */
  readonly date: string
  /** When customers could buy. */
  readonly openMinute: number
  readonly closeMinute: number
  /** Ids of what was special about it (`special-days.ts`); most days have none. */
  readonly specials: readonly string[]
  /** By item: a variety of the shop, or a name of a till. An item left out was offered, and nobody asked for it. */
  readonly items: ReadonlyMap<string, ItemDay>
}

export interface ItemDay {
  /** Purchases in order of time. */
  readonly sold: readonly Purchase[]
  /** Pieces that went without anybody saying when, signed: what a count or the close found beside `sold`. */
  readonly unseen: number
  /** When there was none to sell, in order, without overlap; a span that lasts ends at `closeMinute`. */
  readonly gone: readonly Span[]
  /** Not on the menu that day at all: such a day says nothing of demand. */
  readonly offered: boolean
}

export interface Purchase {
  readonly minute: number
  /** At least 1. */
  readonly pieces: number
}

export interface Span {
  readonly fromMinute: number
  readonly toMinute: number
}

/** A day to come, as far as it is known. */
export type DayAsked = Omit<SalesDay, 'items'>

/** Pieces that went of an item, by whatever they are known; never below none. */
export function soldOf({ sold, unseen }: Pick<ItemDay, 'sold' | 'unseen'>): number {
  let pieces = unseen
  for (const purchase of sold) pieces += purchase.pieces
  return Math.max(0, pieces)
}
