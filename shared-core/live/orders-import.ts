import type { OrderWay } from '../orders/order.ts'
import type { AskedItem, AskedLine } from '../orders/order-commands.ts'
import type { EpochMs } from '../units.ts'
import type { Mapping, Told } from './sales-import.ts'

/** What the server's API says of orders that come in a file: `/api/v1/orders/import`. */

/** What a column of a file of orders may hold. */
export const ORDER_COLUMNS = [
  /** What the sender calls the order; rows of one are one order, which is taken once. */
  'ref',
  'mark',
  'name',
  'phone',
  'dueDate',
  'dueTime',
  'way',
  'variety',
  'dozens',
  'pieces',
  'item',
  'sliced',
  'bagged',
  'paid',
  'note',
] as const
export type OrderColumn = (typeof ORDER_COLUMNS)[number]

/** How a file of orders is laid out and which column holds what, counted from 0; null: none does. */
export interface OrderMapping
  extends Pick<Mapping, 'skip' | 'hasHeader' | 'delimiter' | 'quote' | 'decimal' | 'dateForm'> {
  readonly columns: { readonly [column in OrderColumn]: number | null }
  /** A time without am or pm that lies before the oven is ready is one of the afternoon. */
  readonly isAfternoonMeant: boolean
}

export const ORDER_FAULTS = [
  /** {text, column, example} */
  'no-date',
  /** {text, column}; the column is 0 where no column has it. */
  'no-time',
  /** {text}: it is due before now, or too far ahead. */
  'not-to-come',
  /** {text, column}: pick-up or delivery */
  'no-way',
  /** {text, column, near}: no variety, and nothing like it */
  'no-variety',
  'no-item',
  /** {text, item}: which bagel the item is made on */
  'no-bagel',
  /** {text, column} */
  'no-dozens',
  'no-pieces',
  'no-yes',
  /** {text, column, most}: a mark is a number or initials */
  'mark-too-long',
  'too-long',
  /** {most} */
  'too-many-lines',
  'too-many-pieces',
  /** {}: nothing says what is ordered */
  'nothing-ordered',
  /** {line, column}: that row of the order says it otherwise */
  'rows-differ',
  /** {} */
  'open-quote',
  /** {refusal}: the shop's rules refused the order */
  'refused',
] as const
export type OrderFault = (typeof ORDER_FAULTS)[number]

export const ORDER_DOUBTS = [
  /** {text, one, other}: both readings of a date; a day after the 12th would decide. */
  'day-or-month',
  /** {text}: a time without am or pm, before the oven is ready if it is of the morning */
  'am-or-pm',
  /** {}: each row is an order of its own */
  'no-ref',
  /** {bad, of} */
  'many-bad',
] as const
export type OrderDoubt = (typeof ORDER_DOUBTS)[number]

/** Something wrong in a row: its order is not taken, the others are. */
export interface OrderRowFault {
  readonly line: number
  /** The row as it stands in the file. */
  readonly cells: readonly string[]
  readonly fault: Told<OrderFault>
}

/** An order as it was understood. */
export interface ReadOrder {
  /** Rows of the file that are this order. */
  readonly rows: readonly number[]
  readonly ref: string | null
  /** Null: the next slip's number. */
  readonly mark: string | null
  readonly name: string
  readonly phone: string
  readonly note: string
  readonly dueAtMs: EpochMs
  readonly way: OrderWay
  readonly lines: readonly AskedLine[]
  readonly items: readonly AskedItem[]
  readonly isPaid: boolean
  /** Names of the file that were matched by their words: somebody looks at them. */
  readonly guessed: readonly { readonly text: string; readonly meant: string }[]
  /** `new`: not taken yet. `known`: an earlier file or a till brought it. `taken`: by this request. */
  readonly state: 'new' | 'known' | 'taken'
}

/** Of `POST /api/v1/orders/import`: how the file would be understood, and with `take=1` what came of it. */
export interface OrdersRead {
  readonly encoding: 'utf-8' | 'utf-16le' | 'windows-1252'
  readonly mapping: OrderMapping
  /** Said for an earlier file with this header. */
  readonly isRemembered: boolean
  readonly columns: readonly { readonly name: string; readonly samples: readonly string[] }[]
  /** Rows below the header. */
  readonly rows: number
  readonly orders: readonly ReadOrder[]
  readonly faults: readonly OrderRowFault[]
  readonly doubts: readonly Told<OrderDoubt>[]
}

/** What is remembered of headers: `GET` and `PUT /api/v1/orders/import/mappings`. */
export interface RememberedMapping {
  /** Names of the columns, in their order. */
  readonly header: readonly string[]
  readonly mapping: OrderMapping
}

/** Of `POST /api/v1/orders/calendar`: a link that shows when orders are due, and nothing else. Told this once. */
export interface CalendarLink {
  /** With its secret where the shop is closed; to be put behind the address of the server. */
  readonly path: string
  /** The device by which it is ended (`DELETE /api/v1/devices/:id`); null: the shop is open, and nobody joins. */
  readonly deviceId: string | null
}
