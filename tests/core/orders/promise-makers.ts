import type { Line, State } from '../../../shared-core/day/state.ts'
import { keepId, orderId, varietyId } from '../../../shared-core/ids.ts'
import type { Outlook } from '../../../shared-core/live/outlook.ts'
import type { Order, OrderLine } from '../../../shared-core/orders/order.ts'
import type { PromiseAsked, SupplyAsked } from '../../../shared-core/orders/promise.ts'
import type { OrderRules } from '../../../shared-core/shop/rules.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { at, lot, stock } from '../support/make.ts'
import { lookingAt, outlookWith } from '../support/outlook.ts'
import { shopWith } from '../support/shop.ts'

export const DATE = '2026-11-24'
export const noonOf = (isoDate: string): EpochMs => epochMs(at('12:00') + Date.parse(isoDate) - Date.parse(DATE))

/** The test shop that leaves walk-ins nothing, unless said otherwise. */
export function promiseShop(rules: Partial<OrderRules> = {}, parts: Partial<Shop> = {}): Shop {
  const plain = shopWith(parts)
  return { ...plain, orders: { ...plain.orders, walkInPercent: 0, walkInLeast: 0, ...rules } }
}

/** Six of a variety; null: a mixed line. */
export function orderLine(variety: string | null, pieces = 6, parts: Partial<OrderLine> = {}): OrderLine {
  const id = variety === null ? null : varietyId(variety)
  return { varietyId: id, without: [], pieces, dozens: 0, sliced: false, bagged: false, ...parts }
}

/** Fetched at a clock time of the test day. */
export function order(id: string, due: string, lines: readonly OrderLine[], parts: Partial<Order> = {}): Order {
  return {
    id: orderId(id),
    mark: id,
    takenAtMs: at('5:00'),
    dueAtMs: at(due),
    way: 'pickUp',
    runId: null,
    stop: 0,
    lines,
    items: [],
    isPaid: false,
    details: 0,
    standing: null,
    ref: null,
    isRisk: false,
    ...parts,
  }
}

export function keepFor(order: string, keptLines: readonly Line[], id = `keep-${order}`) {
  const [outAtMs, readyAtMs] = [at('6:30'), at('6:45')]
  return { id: keepId(id), lines: keptLines, keptAtMs: at('6:50'), outAtMs, readyAtMs, orderId: orderId(order) }
}

/** So many that are for sale since a clock time. */
export function onRod(variety: string, pieces: number, since = '6:45') {
  const ready = at(since)
  return stock(variety, {
    lots: [lot({ id: `lot-${variety}-${since}`, pieces, outAt: epochMs(ready - 15 * 60_000), readyAt: ready })],
    counted: { atMs: at('6:59'), pieces, within: 0 },
    seen: { atMs: at('6:59'), sold: 0, shopSold: 0 },
  })
}

/** At 7:00 of the test day, which closes at 15:00. */
export function asking(state: State, parts: Partial<SupplyAsked> = {}): SupplyAsked {
  return { state, nowMs: at('7:00'), date: DATE, noonOf, closesAtMs: at('15:00'), outlook: null, plan: null, ...parts }
}

export function promising(state: State, lines: readonly OrderLine[], parts: Partial<PromiseAsked> = {}): PromiseAsked {
  return { ...asking(state), lines, ...parts }
}

/** Walk-ins will ask for so many until the close, evenly. */
export function walkIns(...namesAndPieces: readonly (string | number)[]): Outlook {
  const varieties = []
  for (let i = 0; i < namesAndPieces.length; i += 2) {
    const pieces = Number(namesAndPieces[i + 1])
    varieties.push(lookingAt(String(namesAndPieces[i]), { rest: { q10: pieces, q50: pieces, q90: pieces } }))
  }
  return outlookWith(varieties, { atMs: at('7:00') })
}
