import type { Short } from '../../shared-core/day/events.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { RunId } from '../../shared-core/ids.ts'
import type { OrderWay } from '../../shared-core/orders/order.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { CounterWords } from './counter.ts'
import type { SlipWords } from './counter-slip-orders.ts'
import { enCounterOrders } from './en-counter-orders.ts'
import { enSlipOrders } from './en-counter-slip-orders.ts'
import { esCounterOrders } from './es-counter-orders.ts'
import { esSlipOrders } from './es-counter-slip-orders.ts'
import type { OrderWords } from './orders.ts'
import { orderWords } from './orders.ts'
import type { PromiseWords } from './promise.ts'
import { promiseWords } from './promise.ts'

/** What the counter says of orders; fetched with their sheets. */
export interface CounterOrderWords extends CounterWords {
  /** How all screens tell an order. */
  readonly said: OrderWords
  readonly promise: PromiseWords
  readonly list: OrderListWords
  readonly one: OneOrderWords
  readonly take: TakeWords
  readonly slip: SlipWords
}

/** The words of one language beside those that are shared. */
export interface OrdersSentences extends Pick<CounterOrderWords, 'list' | 'one' | 'take'> {}

export interface OrderListWords {
  readonly title: string
  /** @example "12 open, 2 at risk" */
  summary(orders: number, atRisk: number): string
  readonly search: string
  readonly nothing: string
  readonly notFound: string
  /** What is kept for nobody that the board knows. @example "Kept, no order" */
  readonly keptOther: string
  /** @example "kept 9 of 26" */
  keptOf(kept: number, of: number): string
  readonly ready: string
  /** @example "made 2 of 3" */
  madeOf(made: number, of: number): string
  readonly atRisk: string
  /** Over what would save it. @example "at risk: 4 Sesame" */
  missing(what: string): string
  /** Due on another day. @example "Sat, Nov 28 7:30" */
  onDay(label: string, atMs: EpochMs): string
}

export interface OneOrderWords {
  /** @example "Order AB" */
  title(mark: string): string
  /** Its way, and by which run. @example "delivered, North" */
  way(way: OrderWay, runId: RunId | null): string
  /** Of pieces that lie there: one touch keeps them. @example "Keep 17" */
  keep(pieces: number): string
  readonly keepNothing: string
  readonly allKept: string
  readonly handOver: string
  readonly asOrdered: string
  /** @example "17 of 26" */
  part(pieces: number, of: number): string
  readonly missed: string
  readonly missedDetail: string
  readonly change: string
  readonly cancel: string
  readonly nowPaid: string
  readonly nowUnpaid: string
  readonly back: string
  kept(pieces: number): string
  there(pieces: number): string
  missing(pieces: number): string
  filledWith(lines: readonly Line[]): string
  /** @example "Missing: 4 Sesame. Give 4 Poppy in their place?" */
  replaceAsk(missing: readonly Short[], instead: readonly Line[]): string
  shortAsk(missing: readonly Short[]): string
  readonly replaceYes: string
  readonly shortYes: string
  readonly waitNo: string
  readonly sureMissed: string
  readonly sureCancelled: string
  readonly yes: string
  readonly no: string
  readonly gone: string
  readonly detailsLater: string
  readonly isRisk: string
  taken(atMs: EpochMs): string
  readonly waiting: string
  readonly begun: string
  readonly made: string
}

export interface TakeWords {
  readonly title: string
  /** @example "Change AB" */
  changeTitle(mark: string): string
  readonly steps: { readonly [step in TakeStep]: string }
  readonly touchVarieties: string
  readonly one: string
  readonly half: string
  /** @example "Dozen (13)" */
  dozen(pieces: number): string
  readonly fewer: string
  readonly sliced: string
  readonly bagged: string
  readonly without: string
  readonly notIn: string
  readonly earliest: string
  readonly noEarliest: string
  readonly nextDay: string
  readonly split: string
  /** @example "12 at 8:30, the rest at 9:10" */
  splitDetail(nowPieces: number, nowMs: EpochMs, restAtMs: EpochMs): string
  holds(when: string): string
  /** @example "8:30 is too early: earliest 8:45" */
  holdsNot(when: string): string
  readonly dayBack: string
  readonly dayOn: string
  /** @example "+1 h", "−5 min" */
  step(minutes: number): string
  readonly mark: string
  readonly markHint: string
  readonly name: string
  readonly phone: string
  readonly note: string
  readonly detailsHint: string
  readonly take: string
  readonly takeRisk: string
  readonly save: string
  readonly needsPieces: string
  readonly needsTime: string
  /** @example "bagel for Egg and cheese" */
  needsBagel(item: string): string
  /** @example "stop 2" */
  stop(stop: number): string
}
export type TakeStep = 'what' | 'made' | 'when' | 'who'

export function counterOrderWords(words: CounterWords): CounterOrderWords {
  const shared = { ...words, said: orderWords(words), promise: promiseWords(words) }
  return words.language === 'en'
    ? { ...shared, ...enCounterOrders(words), slip: enSlipOrders(words) }
    : { ...shared, ...esCounterOrders(words), slip: esSlipOrders(words) }
}
