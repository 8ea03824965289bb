import type { OrderColumn, OrderDoubt, OrderFault } from '../../shared-core/live/orders-import.ts'
import type { Told } from '../../shared-core/live/sales-import.ts'

/** What the desk says of who ordered, beside the orders. */
export interface NamesWords {
  readonly lead: string
  forgotten(days: number): string
  readonly search: string
  readonly columns: { readonly [column in 'name' | 'phone' | 'note' | 'of']: string }
  ofStanding(mark: string): string
  /** @param mark null: it has ended */
  ofOrder(mark: string | null, date: string): string
  readonly none: string
  readonly noneSuch: string
  readonly remove: string
  removeOf(name: string): string
  sure(name: string): string
  readonly yes: string
  readonly no: string
  removed(name: string): string
  readonly notRemoved: string
  /** So many were left out. */
  more(names: number): string
}

/** Orders that come in files, and the calendar that shows them elsewhere. */
export interface FilesWords {
  readonly title: string
  readonly lead: string
  readonly choose: string
  readonly orDrop: string
  readonly dropNow: string
  readonly reading: string
  columnsTitle(name: string): string
  readonly columnsHint: string
  readonly remembered: string
  readonly column: { readonly [column in OrderColumn | 'none']: string }
  readonly afternoon: string
  doubt(doubt: Told<OrderDoubt>, date: (iso: string) => string): string
  fault(fault: Told<OrderFault>): string
  understood(orders: number): string
  readonly rowColumns: { readonly [column in 'rows' | 'due' | 'mark' | 'name' | 'what' | 'way' | 'state']: string }
  readonly state: { readonly new: string; readonly known: string; readonly taken: string }
  guessed(text: string, meant: string): string
  faults(rows: number): string
  readonly faultsHint: string
  line(line: number): string
  lines(lines: readonly number[]): string
  readonly nothing: string
  take(orders: number): string
  readonly nothingNew: string
  taken(orders: number): string
  readonly putAway: string
  readonly failed: string
  readonly calendar: CalendarWords
}

export interface CalendarWords {
  readonly title: string
  readonly lead: string
  readonly name: string
  readonly make: string
  readonly once: string
  readonly openShop: string
  readonly copy: string
  readonly copied: string
  readonly done: string
  readonly end: string
  /** Links of earlier days are ended at the screens. */
  readonly older: string
  readonly ended: string
  readonly failed: string
}
