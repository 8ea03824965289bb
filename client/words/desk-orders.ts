import type { DeskWords } from './desk.ts'
import type { FilesWords, NamesWords } from './desk-orders-files.ts'
import type { OrderFormWords } from './desk-orders-form.ts'
import type { StandingWords } from './desk-orders-standing.ts'
import { enDeskOrders } from './en-desk-orders.ts'
import { enOrdersFiles } from './en-desk-orders-files.ts'
import { enOrderForm } from './en-desk-orders-form.ts'
import { enStanding } from './en-desk-orders-standing.ts'
import { esDeskOrders } from './es-desk-orders.ts'
import { esOrdersFiles } from './es-desk-orders-files.ts'
import { esOrderForm } from './es-desk-orders-form.ts'
import { esStanding } from './es-desk-orders-standing.ts'
import type { OrderWords } from './orders.ts'
import { orderWords } from './orders.ts'
import type { PromiseWords } from './promise.ts'
import { promiseWords } from './promise.ts'

/** What the desk says of orders; fetched with their place. */
export interface DeskOrderWords extends DeskOrderSentences {
  /** How all screens tell an order. */
  readonly said: OrderWords
  readonly promise: PromiseWords
  readonly form: OrderFormWords
  readonly standing: StandingWords
  readonly names: NamesWords
  readonly files: FilesWords
}

/** Those of the day's list, of packing and of picking. */
export interface DeskOrderSentences {
  readonly pagesName: string
  readonly pages: { readonly [page in 'day' | 'standing' | 'packing' | 'names' | 'files']: string }
  readonly waiting: string
  readonly noContact: string
  /** Of several pages: a date, and the key that goes there. */
  readonly dates: { readonly name: string; readonly goTo: string; readonly go: string }
  readonly day: DayOrderWords
  readonly risk: RiskWords
  readonly packing: PackingWords
  readonly picking: PickingWords
}

export interface DayOrderWords {
  readonly take: string
  readonly search: string
  readonly show: string
  readonly filter: { readonly [filter in OrderFilter]: string }
  none(date: string): string
  readonly noneSuch: string
  /** @example "12 orders, 214 pieces" */
  total(orders: number, pieces: number): string
  more(orders: number): string
  readonly columns: { readonly [column in OrderColumn]: string }
  /** Of pieces that are kept for it already. @example "9 of 24" */
  keptOf(kept: number, pieces: number): string
  /** @example "made 1 of 3" */
  madeOf(made: number, items: number): string
  readonly standing: string
  readonly isRisk: string
  readonly overdue: string
  readonly change: string
  readonly cancel: string
  readonly handedOver: string
  /** An act with the order that it is of, for those who listen. @example "Change 41" */
  actOf(act: string, mark: string): string
  sureToCancel(mark: string): string
  readonly yesCancel: string
  readonly noCancel: string
  /** A standing order's day that is still to come is left out there. */
  readonly leaveOut: string
  readonly sums: string
  readonly sumsHint: string
  readonly sumColumns: { readonly [column in 'variety' | 'ordered' | 'kept']: string }
  /** Under a short list of what must be known at once. @example "run North" */
  run(name: string): string
}

export type OrderFilter = 'all' | 'risk' | 'pickUp' | 'delivery' | 'here'
export type OrderColumn = 'due' | 'mark' | 'what' | 'way' | 'paid' | 'kept'

export interface RiskWords {
  title(orders: number): string
  readonly hint: string
  /** @example "41, due 9:30: 6 Sesame missing" */
  missing(mark: string, due: string, what: string): string
  readonly nothingSaves: string
}

export interface PackingWords {
  readonly print: string
  readonly lead: string
  none(date: string): string
  /** Deliveries that are on no run. */
  readonly noRun: string
  leaves(clock: string): string
  packFrom(clock: string): string
  boxes(boxes: number): string
  /** Of what is sliced or bagged, as it must be cool by then. */
  outBy(clock: string): string
  /** The van is there later than the order is due. */
  readonly isLate: string
  arrives(clock: string): string
  readonly columns: { readonly [column in 'done' | 'stop' | 'mark' | 'what' | 'boxes']: string }
  readonly together: string
  readonly signed: string
}

export interface PickingWords {
  readonly title: string
  readonly print: string
  readonly lead: string
  readonly columns: { readonly [column in 'done' | 'due' | 'mark' | 'what' | 'way']: string }
}

export function deskOrderWords(words: DeskWords): DeskOrderWords {
  const shared = { said: orderWords(words), promise: promiseWords(words) }
  if (words.language === 'es')
    return {
      ...shared,
      ...esDeskOrders(words),
      ...esOrdersFiles(words),
      form: esOrderForm(),
      standing: esStanding(words),
    }
  return {
    ...shared,
    ...enDeskOrders(words),
    ...enOrdersFiles(words),
    form: enOrderForm(),
    standing: enStanding(words),
  }
}
