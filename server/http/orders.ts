import type { Express, Request, Response } from 'express'
import type { CommandId } from '../../shared-core/ids.ts'
import type { CommandAnswer, DeviceHello } from '../../shared-core/live/protocol.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Journal } from '../journal/journal.ts'
import type { Room } from '../live/room.ts'
import type { TakenOrder } from '../orders/taken-order.ts'
import { openOrderOf, orderTakenBy } from '../orders/taken-order.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import { commandUntilTaken } from './derived-command.ts'
import { deviceOf } from './device-headers.ts'
import type { Promising, ToldPromise } from './order-promise.ts'
import { promiseNow } from './order-promise.ts'
import { sendAnswer, sendProblem } from './problem.ts'
import { readOrder, tillNamesOf } from './read-order.ts'
import { NO_SET_UP } from './set-up.ts'
import { whileWorking } from './while-working.ts'

export interface OrdersParts extends Promising {
  readonly room: Room
  readonly journal: Pick<Journal, 'answerOf' | 'entriesAfter'>
  readonly work: Pick<WorkDesk, 'ask'>
  readonly localDate: () => string
}

/** Orders of a till. They go through the room as commands, like a tap. */
export function orderPostRoutes(app: Express, parts: OrdersParts): void {
  app.post('/api/v1/orders', (request, response) => postOrder(request, response, parts))
}

async function postOrder(request: Request, response: Response, parts: OrdersParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const { shop } = parts.room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  const ref = refOf(request.body)
  const id = commandUntilTaken({ deviceId: device.deviceId, kind: 'order', id: ref }, parts.journal)
  // Asked before anything else is looked at: what was taken stays taken, whatever its time has become.
  const known = ref === null ? null : await knownOrder(parts, ref, id)
  if (known !== null) return sendTaken(response, known, { isRepeat: true, ignored: 0, promise: null })
  await whileWorking(response, () => takeNew(request, response, { parts, device, shop, id }))
}

interface NewOrder {
  readonly parts: OrdersParts
  readonly device: DeviceHello
  readonly shop: Shop
  readonly id: CommandId
}

async function takeNew(request: Request, response: Response, { parts, device, shop, id }: NewOrder): Promise<void> {
  const { room, journal, work, localDate, now } = parts
  const names = tillNamesOf(request.body, shop)
  const meanings = names.length === 0 ? new Map() : await work.ask('salesMeanings', { names })
  const today = { zone: shop.profile.zone, date: localDate(), nowMs: now() }
  const read = readOrder(request.body, { shop, today, meanings })
  if (!read.ok) return sendMistakes(response, read.problems)
  const command = { id, deviceSeq: 1, tappedAtMs: null, ...read.act }
  const promise = await room.read((state) => promiseNow(state, shop, read.act, parts))
  // What a till has sold is sold: the board takes it, and says what it could not promise.
  const [answered] = await room.submit(device, [{ ...command, isRisk: !promise.isPromised }])
  const taken = answered?.answer.kind === 'taken' ? orderTakenBy(journal, id) : null
  if (taken !== null) return sendTaken(response, taken, { isRepeat: false, ignored: read.ignored, promise })
  // Another till was quicker by a moment: it is the same order all the same.
  const other = isKnown(answered) ? openOrderOf(room.state, read.act.ref ?? '') : null
  if (other !== null) sendTaken(response, other, { isRepeat: true, ignored: 0, promise: null })
  else if (answered !== undefined) sendAnswer(response, answered)
}

function isKnown(answered: CommandAnswer | undefined): boolean {
  return answered?.answer.kind === 'refused' && answered.answer.refusal.code === 'order-known'
}

function refOf(body: unknown): string | null {
  const { ref } = Object(body) as { readonly ref?: unknown }
  return typeof ref === 'string' && ref.trim() !== '' ? ref.trim() : null
}

async function knownOrder({ room, journal }: OrdersParts, ref: string, id: CommandId): Promise<TakenOrder | null> {
  return await room.read((state) => orderTakenBy(journal, id) ?? openOrderOf(state, ref))
}

interface Said {
  readonly isRepeat: boolean
  readonly ignored: number
  readonly promise: ToldPromise | null
}

function sendTaken(response: Response, { order, commandId, seq }: TakenOrder, said: Said): void {
  response.json({ commandId, seq, ...said, order })
}

function sendMistakes(response: Response, errors: readonly Problem[]): void {
  const detail = 'The order has mistakes; it was not taken.'
  sendProblem(response, { status: 422, title: 'Mistakes in the order', detail, errors })
}
