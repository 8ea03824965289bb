/** Bounds of what comes in of orders; screens hold their fields to them too. */

export const MARK_CHARACTERS_MAX = 8
export const ORDER_LINES_MAX = 40
export const ORDER_ITEMS_MAX = 40
/** So many of the same thing in one line of an order. */
export const TIMES_MAX = 50
/** Things made to order in one order: each tap on one of them writes the order down anew, for every screen. */
export const ORDER_THINGS_MAX = 200
export const STOPS_MAX = 99
export const DETAIL_CHARACTERS_MAX = { name: 60, phone: 30, note: 300 } as const
