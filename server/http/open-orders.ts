import type { Express, Request, Response } from 'express'
import { isDate } from '../../shared-core/day/label.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { orderId } from '../../shared-core/ids.ts'
import { noonOf } from '../../shared-core/live/noon.ts'
import { dueOn } from '../../shared-core/orders/due-on.ts'
import { itemIsMade } from '../../shared-core/orders/item-steps.ts'
import type { Order } from '../../shared-core/orders/order.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Room } from '../live/room.ts'
import { shopClock } from '../live/shop-clock.ts'
import { submitOne } from './commands.ts'
import { deviceOf } from './device-headers.ts'
import { named } from './named.ts'
import { handedOverSchema } from './orders-schema.ts'
import { sendAnswer, sendProblem } from './problem.ts'
import { withRead } from './sales-files.ts'
import { NO_SET_UP } from './set-up.ts'

export interface OpenOrdersParts {
  readonly room: Room
  readonly localDate: () => string
  readonly now: () => EpochMs
}

/** Orders that are still to be handed over: of a date, one by one, and their end. */
export function openOrdersRoutes(app: Express, parts: OpenOrdersParts): void {
  app.get('/api/v1/orders', (request, response) => getOrders(request, response, parts))
  app.get('/api/v1/orders/:id', (request, response) => getOrder(request, response, parts))
  app.delete('/api/v1/orders/:id', (request, response) => deleteOrder(request, response, parts))
  app.post('/api/v1/orders/:id/handed-over', (request, response) => postHandedOver(request, response, parts))
}

/** Before it there was no board, and the zone tables know nothing of the year 0. */
const FIRST_DATE = '2000-01-01'

async function getOrders({ query }: Request, response: Response, parts: OpenOrdersParts): Promise<void> {
  const { room, localDate, now } = parts
  const { date = localDate() } = query
  if (typeof date !== 'string' || !isDate(date) || date < FIRST_DATE) {
    const detail = '"date" is the day that they are due on: /api/v1/orders?date=2026-11-25. Left out, it is today.'
    return sendProblem(response, { status: 400, title: 'Bad request', detail })
  }
  const { shop } = room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  const noonMs = noonOf(shopClock(shop.profile.zone, now()), date)
  const orders = await room.read((state) => dueOn(state, { date, noonMs }).map((order) => toldOf(state, order)))
  response.json({ date, orders })
}

async function getOrder({ params }: Request, response: Response, { room }: OpenOrdersParts): Promise<void> {
  const told = await room.read((state) => {
    const order = state.orders.get(orderId(String(params.id)))
    return order === undefined ? null : toldOf(state, order)
  })
  if (told === null) sendProblem(response, NO_ORDER)
  else response.json(told)
}

/** An order as it stands: how many pieces are kept for it, and whether all that is made to order is made. */
function toldOf({ keeps, orders }: State, order: Order) {
  const kept = new Map<VarietyId, number>()
  for (const keep of keeps.values()) {
    if (keep.orderId !== order.id) continue
    for (const { varietyId, pieces } of keep.lines) kept.set(varietyId, (kept.get(varietyId) ?? 0) + pieces)
  }
  return {
    ...order,
    kept: [...kept].map(([varietyId, pieces]) => ({ varietyId, pieces })),
    isMade: order.items.every(itemIsMade),
    /** Of a standing one, and not made for its day yet. */
    isToCome: !orders.has(order.id),
  }
}

async function deleteOrder(request: Request, response: Response, { room }: OpenOrdersParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const id = orderId(String(request.params.id))
  if (!room.state.orders.has(id)) return sendProblem(response, NO_ORDER)
  sendAnswer(response, await submitOne(request, { room, device, act: { type: 'cancelOrder', orderId: id } }))
}

async function postHandedOver(request: Request, response: Response, { room }: OpenOrdersParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const id = orderId(String(request.params.id))
  const { shop, orders } = room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  if (!orders.has(id)) return sendProblem(response, NO_ORDER)
  await withRead(request, response, handedOverSchema, async ({ lines }) => {
    const read = lines == null ? null : handedLines(lines, shop)
    if (read?.problems.length) {
      const detail = 'What went into the bag has mistakes; the order was not handed over.'
      return sendProblem(response, { status: 422, title: 'Mistakes in the lines', detail, errors: read.problems })
    }
    const act = { type: 'handOverOrder', orderId: id, lines: read?.lines ?? null } as const
    sendAnswer(response, await submitOne(request, { room, device, act }))
  })
}

function handedLines(lines: readonly { readonly variety: string; readonly pieces: number }[], shop: Shop) {
  const problems: Problem[] = []
  const sums = new Map<VarietyId, number>()
  for (const [index, { variety, pieces }] of lines.entries()) {
    const typed = { value: variety, where: '', path: `/lines/${index}/variety` }
    const id = named(shop.varieties, { typed, what: 'variety', problems })
    if (id !== null) sums.set(id, (sums.get(id) ?? 0) + pieces)
  }
  return { problems, lines: [...sums].map(([varietyId, pieces]) => ({ varietyId, pieces })) }
}

const NO_ORDER = {
  status: 404,
  title: 'No such order',
  detail: 'No open order has this id: it was handed over, cancelled, or never taken. /api/v1/orders?date= lists them.',
} as const
