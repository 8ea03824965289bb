import type { Line, State } from '../day/state.ts'
import type { MenuItemId, RunId, VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import type { Run } from '../shop/kitchen.ts'
import type { Shop } from '../shop/shop.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import { durationMs, epochMs } from '../units.ts'
import type { OrdersAt } from './due-on.ts'
import { byDue, dueOn } from './due-on.ts'
import type { Order, OrderLine } from './order.ts'
import { assigned, keptByOrder } from './spoken-for.ts'

/** What leaves with the van on a date, or what leaves without one. */
export interface PackList {
  /** Null: what is on no run. */
  readonly runId: RunId | null
  /** Null: no run. */
  readonly leavesAtMs: EpochMs | null
  /** Packing begins by then, so that all is loaded when the van leaves; null: no run, or nothing on it. */
  readonly packFromMs: EpochMs | null
  /** What is sliced or bagged must be out of the oven by then; null: nothing is, or no run. */
  readonly outByMs: EpochMs | null
  /** In the order of their stops, those without one last; without a run by due time. */
  readonly stops: readonly PackStop[]
  /** Of all stops: boxes, pieces by variety in the set-up's order, and pieces of mixed lines that nothing is kept for. */
  readonly boxes: number
  readonly pieces: readonly Line[]
  readonly mixedPieces: number
  readonly packMs: DurationMs
}

export interface PackStop {
  readonly order: Order
  /** When the van is there; without a run when it is due. */
  readonly atMs: EpochMs
  /** It should be out of the door before the van leaves. */
  readonly isLate: boolean
  readonly pieces: number
  readonly keptPieces: number
  readonly boxes: number
  /** What is handed over as it is: tubs, bottles. In the order's order. */
  readonly tubs: readonly Tubs[]
}

export interface Tubs {
  readonly itemId: MenuItemId
  readonly count: number
}

const MINUTE_MS = 60_000
const NOON_MINUTE = 720

/**
 * Who gets what on a run, in how many boxes, and when the work begins.
 *
 *   van leaves = the run's minute       packing from = leaves − loading − packing (`packingMs`)
 *   out of the oven by = packing from − `sliceCoolMs`       at the nth stop = leaves + n × `stopMs`
 *
 * @param runId null: orders on no run, by due time
 */
export function packList(state: State, runId: RunId | null, at: OrdersAt): PackList {
  const { shop } = state
  const run = runId === null ? null : (shop?.runs.get(runId) ?? null)
  const orders = dueOn(state, at)
    .filter((order) => order.runId === runId && order.way !== 'here')
    .sort((one, other) => (run === null ? byDue(one, other) : byStop(one, other)))
  const leavesAtMs = run === null ? null : leavesOn(run, at)
  const kept = keptByOrder(state)
  const places = placesOf(orders)
  const stops = orders.map((order, at) =>
    stopOf(shop, { order, run, leavesAtMs, n: places[at] ?? at, kept: kept.get(order.id) ?? [] }),
  )
  const packMs = shop === null ? durationMs(0) : packingMs(shop, orders)
  const packFromMs =
    run === null || leavesAtMs === null || orders.length === 0 ? null : back(leavesAtMs, run.loadMs + packMs)
  const isCooled = orders.some(({ lines }) => lines.some(isPacked))
  return {
    runId,
    leavesAtMs,
    packFromMs,
    outByMs: packFromMs === null || !isCooled ? null : back(packFromMs, shop?.orders.sliceCoolMs ?? 0),
    stops,
    boxes: stops.reduce((sum, { boxes }) => sum + boxes, 0),
    ...piecesAlong(shop, orders, kept),
    packMs,
  }
}

/** When the van leaves on a date. */
function leavesOn({ leavesMinute }: Pick<Run, 'leavesMinute'>, { noonMs }: Pick<OrdersAt, 'noonMs'>): EpochMs {
  return epochMs(Math.max(0, noonMs + (leavesMinute - NOON_MINUTE) * MINUTE_MS))
}

/** What slicing, bagging and boxing of orders takes: `OrderRules.packMs` for each dozen begun. */
function packingMs(shop: Pick<Shop, 'orders'>, orders: readonly Pick<Order, 'lines'>[]): DurationMs {
  return durationMs(packMsOf(shop, piecesOf(orders.flatMap(({ lines }) => lines))))
}

/** The same for so many pieces. */
export function packMsOf({ orders }: Pick<Shop, 'orders'>, pieces: number): number {
  return Math.ceil(pieces / 12) * orders.packMs
}

export function isPacked({ sliced, bagged }: Pick<OrderLine, 'sliced' | 'bagged'>): boolean {
  return sliced || bagged
}

interface StopOf {
  readonly order: Order
  readonly run: Run | null
  readonly leavesAtMs: EpochMs | null
  /** Counts the stops from 0. */
  readonly n: number
  readonly kept: readonly Line[]
}

function stopOf(shop: Shop | null, { order, run, leavesAtMs, n, kept }: StopOf): PackStop {
  const pieces = piecesOf(order.lines)
  const boxPieces = Math.max(1, shop?.orders.boxPieces ?? 1)
  return {
    order,
    atMs: run === null || leavesAtMs === null ? order.dueAtMs : epochMs(leavesAtMs + (n + 1) * run.stopMs),
    isLate: leavesAtMs !== null && order.dueAtMs < leavesAtMs,
    pieces,
    keptPieces: piecesOf(assigned(order, kept).flatMap((one) => one.kept)),
    boxes: Math.ceil(pieces / boxPieces),
    tubs: tubsOf(order),
  }
}

/** Where the van is for each, counted from 0: orders of one stop are brought there together. */
function placesOf(orders: readonly Order[]): readonly number[] {
  let place = -1
  return orders.map(({ stop }, at) => {
    if (stop === 0 || stop !== orders[at - 1]?.stop) place += 1
    return place
  })
}

function tubsOf({ items }: Order): readonly Tubs[] {
  const counts = new Map<MenuItemId, number>()
  for (const { itemId, steps } of items) if (steps.length === 0) counts.set(itemId, (counts.get(itemId) ?? 0) + 1)
  return [...counts].map(([itemId, count]) => ({ itemId, count }))
}

function piecesAlong(
  shop: Shop | null,
  orders: readonly Order[],
  keptFor: ReadonlyMap<string, readonly Line[]>,
): Pick<PackList, 'pieces' | 'mixedPieces'> {
  const sums = new Map<VarietyId, number>()
  let mixedPieces = 0
  const add = ({ varietyId, pieces }: Line) => sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  for (const order of orders) {
    for (const { line, kept } of assigned(order, keptFor.get(order.id) ?? [])) {
      if (line.varietyId !== null) add({ varietyId: line.varietyId, pieces: line.pieces })
      else {
        kept.forEach(add)
        mixedPieces += line.pieces - piecesOf(kept)
      }
    }
  }
  return { pieces: shop === null ? [] : linesOf(sums, shop), mixedPieces }
}

/** The van's stops count from 1; an order without one comes last. */
function byStop(one: Order, other: Order): number {
  const place = ({ stop }: Order) => (stop === 0 ? Number.MAX_SAFE_INTEGER : stop)
  return place(one) - place(other) || byDue(one, other)
}

function back(atMs: EpochMs, byMs: number): EpochMs {
  return epochMs(Math.max(0, atMs - byMs))
}
