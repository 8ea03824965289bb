import type { Stock } from '../../../shared-core/day/state.ts'
import { varietyId } from '../../../shared-core/ids.ts'
import type { Plan } from '../../../shared-core/live/plan.ts'
import type { Order, OrderLine } from '../../../shared-core/orders/order.ts'
import type { SupplyAsked } from '../../../shared-core/orders/promise.ts'
import type { OrderRules } from '../../../shared-core/shop/rules.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { Draw } from '../support/draw.ts'
import { drawer } from '../support/draw.ts'
import { at, loadOf, lot, stateWith, stock } from '../support/make.ts'
import { lookingAt, outlookWith } from '../support/outlook.ts'
import { planLoad, planWith } from '../support/plan.ts'
import { table, variety } from '../support/shop.ts'
import { asking, order, orderLine, promiseShop } from './promise-makers.ts'

export interface BusyKind {
  readonly varieties: number
  readonly orders: number
  readonly loads: number
  /** Pieces of a load at most; of a line of an order a quarter. */
  readonly pieces: number
  readonly rules?: Partial<OrderRules>
  /** Lines are sliced now and then. */
  readonly sliced?: boolean
}

const MINUTE_MS = 60_000

/** A drawn morning at seven: rods, pieces that cool, a load in the oven, loads that are planned, walk-ins and orders. */
export function busyDay(seed: number, kind: BusyKind): SupplyAsked {
  const draw = drawer(seed)
  const names = Array.from({ length: kind.varieties }, (_, n) => `v${n}`)
  const shop = promiseShop(kind.rules, { varieties: table(names.map((id, n) => variety({ id, order: n + 1 }))) })
  const some = () => draw.upTo(kind.pieces)
  const lines = (few: number) =>
    names.filter(() => draw.upTo(names.length) < few).map((id) => ({ varietyId: varietyId(id), pieces: 1 + some() }))
  const stocks = names.map((id) => rodOf(id, draw, some))
  const oven = loadOf({}, lines(3), shop)
  const loads = Array.from({ length: kind.loads }, (_, n) => {
    const inAtMs = epochMs(at('7:05') + draw.upTo(400) * MINUTE_MS)
    const [outAtMs, readyAtMs] = [epochMs(inAtMs + 16 * MINUTE_MS), epochMs(inAtMs + 31 * MINUTE_MS)]
    return planLoad('7:05', n, { inAtMs, outAtMs, readyAtMs, lines: lines(3) })
  })
  const orders = Array.from({ length: kind.orders }, (_, n) => drawnOrder(`o${n}`, draw, names, kind))
  const outlook = outlookWith(names.map((id) => lookingAt(id, { rest: { q10: 0, q50: some(), q90: 99 } })))
  const state = stateWith({ shop, stock: stocks, loaded: oven.batches.length > 0 ? [oven] : [], orders })
  return asking(state, { outlook, plan: planWith(loads, { atMs: at('7:00') }) satisfies Plan })
}

function rodOf(id: string, draw: Draw, some: () => number): Stock {
  const seen = { seen: { atMs: at('7:00'), sold: 0, shopSold: 0 } }
  const lots = [lot({ id: `${id}-old`, pieces: 1 + some(), outAt: at('5:30'), readyAt: at('5:45') })]
  if (draw.upTo(2) === 0)
    lots.push(lot({ id: `${id}-new`, pieces: 1 + some(), outAt: at('6:40'), readyAt: at('6:55') }))
  if (draw.upTo(3) === 0)
    lots.push(lot({ id: `${id}-hot`, pieces: 1 + some(), outAt: at('6:55'), readyAt: at('7:10') }))
  return stock(id, { lots, ...seen }, promiseShop({}, { varieties: table([variety({ id })]) }))
}

export function drawnOrder(id: string, draw: Draw, names: readonly string[], kind: BusyKind): Order {
  const dueAtMs = epochMs(at('7:00') + draw.upTo(470) * MINUTE_MS)
  return order(id, '9:00', drawnLines(draw, names, kind), { dueAtMs })
}

/** One to three lines, a third of them mixed. */
export function drawnLines(draw: Draw, names: readonly string[], kind: BusyKind): OrderLine[] {
  return Array.from({ length: 1 + draw.upTo(2) }, () => {
    const pieces = 1 + draw.upTo(Math.ceil(kind.pieces / 4))
    const sliced = kind.sliced === true && draw.upTo(4) === 0
    if (draw.upTo(2) > 0) return orderLine(draw.oneOf(names), pieces, { sliced })
    const without = names.filter(() => draw.upTo(names.length) === 0).map(varietyId)
    return orderLine(null, pieces, { without: without.length === names.length ? [] : without, sliced })
  })
}
