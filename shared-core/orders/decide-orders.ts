import type { Case, Decision } from '../day/decision.ts'
import { happen, happenedAt, refuse, take } from '../day/decision.ts'
import type { OrderId } from '../ids.ts'
import { orderId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { later } from '../units.ts'
import { askedRefusal, orderItems, orderLines } from './asked-order.ts'
import { handOver } from './hand-over.ts'
import { itemIsBegun } from './item-steps.ts'
import { keepsOf, releasedLots } from './kept-for.ts'
import type { Order } from './order.ts'
import type { AskedOrder, OrderCommand } from './order-commands.ts'
import { nextSlip } from './slip-number.ts'

type Of<Type extends OrderCommand['type']> = Case<Extract<OrderCommand, { type: Type }>>

/** Open orders of a shop that caters to a town; more are a script gone wrong. */
export const ORDERS_MAX = 2_000
/** Who orders earlier than that, has a standing order. */
const AHEAD_MS_MAX = 400 * 86_400_000
/** A tap that waited on a screen without contact may bring an order that is due already. */
const BEHIND_MS_MAX = 36 * 3_600_000

export function decideTakeOrder(oneCase: Of<'takeOrder'>): Decision {
  const { command, state } = oneCase
  const atMs = happenedAt(oneCase)
  const refusal = state.orders.size >= ORDERS_MAX ? refuse('too-many', { most: ORDERS_MAX }) : refusalOf(oneCase, atMs)
  if (refusal !== null) return refusal
  const { ref = null } = command
  const known = ref === null ? undefined : [...state.orders.values()].find((order) => order.ref === ref)
  if (known !== undefined) return refuse('order-known', { mark: known.mark })
  const slip = command.mark === null ? nextSlip(state) : null
  const order: Order = {
    id: orderId(oneCase.newId()),
    takenAtMs: atMs,
    ...said(oneCase, command, { atMs, mark: command.mark ?? String(slip) }),
    items: orderItems(oneCase, command.items, 1),
    details: command.details === undefined ? 0 : 1,
    standing: null,
    ref,
    isRisk: command.isRisk ?? false,
  }
  happen(oneCase, atMs, { type: 'orderTaken', order, slip })
  return take(oneCase, { mark: order.mark, pieces: countOf(order) })
}

export function decideChangeOrder(oneCase: Of<'changeOrder'>): Decision {
  const { command, state } = oneCase
  const before = state.orders.get(command.orderId)
  if (before === undefined) return refuse('unknown-order')
  const atMs = happenedAt(oneCase, before.takenAtMs)
  const begun = command.keepsItems === true ? before.items : before.items.filter(itemIsBegun)
  const refusal = refusalOf(oneCase, atMs, begun.length > 0)
  if (refusal !== null) return refusal
  const last = before.items.reduce((most, { no }) => Math.max(most, no), 0)
  const more = command.keepsItems === true ? [] : orderItems(oneCase, command.items, last + 1)
  const order: Order = {
    ...before,
    ...said(oneCase, command, { atMs: before.takenAtMs, mark: command.mark ?? before.mark }),
    items: [...begun, ...more],
    details: command.details === undefined ? before.details : before.details + 1,
  }
  happen(oneCase, atMs, { type: 'orderChanged', order })
  return take(oneCase, { mark: order.mark, pieces: countOf(order) })
}

/** @param hasItems whether it has things made to order besides those that it asks for */
function refusalOf(
  { shop, command }: Case<Extract<OrderCommand, AskedOrder>>,
  atMs: EpochMs,
  hasItems = false,
): Decision | null {
  const { dueAtMs, way, runId } = command
  if (dueAtMs === null && way !== 'here') return refuse('order-when')
  if (dueAtMs !== null && dueAtMs < atMs - BEHIND_MS_MAX) return refuse('date-over')
  if (dueAtMs !== null && dueAtMs > atMs + AHEAD_MS_MAX) return refuse('date-too-far')
  if (runId !== null && !shop.runs.has(runId)) return refuse('unknown-run', { runId })
  return hasItems && command.lines.length + command.items.length === 0 ? null : askedRefusal(shop, command)
}

function said(oneCase: Case, asked: AskedOrder, { atMs, mark }: { readonly atMs: EpochMs; readonly mark: string }) {
  const { way, runId, stop, isPaid } = asked
  const onRun = way === 'delivery' && runId !== null
  return {
    mark,
    dueAtMs: asked.dueAtMs ?? later(atMs, oneCase.shop.orders.madeInMs),
    way,
    runId: onRun ? runId : null,
    stop: onRun ? stop : 0,
    lines: orderLines(oneCase, asked.lines),
    isPaid,
  }
}

/** Pieces and things made to order. */
function countOf({ lines, items }: Order): number {
  return lines.reduce((sum, { pieces }) => sum + pieces, items.length)
}

export function decideCancelOrder(oneCase: Of<'cancelOrder'>): Decision {
  return endUnfetched(oneCase, oneCase.command.orderId, 'cancelled')
}

export function decideMissOrder(oneCase: Of<'missOrder'>): Decision {
  return endUnfetched(oneCase, oneCase.command.orderId, 'noShow')
}

function endUnfetched(oneCase: Case, id: OrderId, how: 'cancelled' | 'noShow'): Decision {
  const order = oneCase.state.orders.get(id)
  if (order === undefined) return refuse('unknown-order')
  const keeps = keepsOf(oneCase, id)
  const atMs = happenedAt(oneCase, order.takenAtMs, ...keeps.map(({ keptAtMs }) => keptAtMs))
  endOrder(oneCase, order, how, atMs)
  return take(oneCase, { mark: order.mark, pieces: countOf(order) })
}

/** An order ends without being fetched: what was kept for it goes back for sale. */
export function endOrder(oneCase: Case, order: Order, how: 'cancelled' | 'noShow', atMs: EpochMs): void {
  for (const keep of keepsOf(oneCase, order.id)) {
    const lots = releasedLots(oneCase, keep)
    happen(oneCase, atMs, { type: 'released', keepId: keep.id, lots })
  }
  happen(oneCase, atMs, { type: 'orderEnded', orderId: order.id, how })
}

/** Into somebody's hands: as ordered, or as it really was; what is missing then is on record. */
export function decideHandOverOrder(oneCase: Of<'handOverOrder'>): Decision {
  const { command, state, shop } = oneCase
  const order = state.orders.get(command.orderId)
  if (order === undefined) return refuse('unknown-order')
  const unknown = command.lines?.find((line) => !shop.varieties.has(line.varietyId))
  if (unknown !== undefined) return refuse('unknown-variety', { varietyId: unknown.varietyId })
  const keeps = keepsOf(oneCase, order.id)
  const atMs = happenedAt(oneCase, order.takenAtMs, ...keeps.map(({ keptAtMs }) => keptAtMs))
  const lines = handOver(oneCase, { order, keeps, lines: command.lines, atMs })
  happen(oneCase, atMs, { type: 'orderEnded', orderId: order.id, how: 'handedOver' })
  return take(oneCase, { mark: order.mark, lines, pieces: countOf(order) })
}
