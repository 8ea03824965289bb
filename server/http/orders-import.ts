import type { Express, NextFunction, Request, RequestHandler, Response } from 'express'
import express from 'express'
import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import { deviceId } from '../../shared-core/ids.ts'
import type { OrderMapping, OrderRowFault, OrdersRead, ReadOrder } from '../../shared-core/live/orders-import.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Journal } from '../journal/journal.ts'
import type { Room } from '../live/room.ts'
import { orderFault } from '../orders/import-fault.ts'
import type { GroupedOrder } from '../orders/import-groups.ts'
import type { OrdersUnderstood } from '../orders/import-orders.ts'
import { isAmbiguous, isRowOfOrders, ORDER_ROWS_MAX, ordersFile, understandOrders } from '../orders/import-orders.ts'
import { openOrderOf } from '../orders/taken-order.ts'
import { headerKey } from '../sales/order-mappings.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import { commandUntilTaken } from './derived-command.ts'
import { deviceOf } from './device-headers.ts'
import { letIn } from './entrance.ts'
import { orderMappingSchema, rememberMappingSchema } from './orders-import-schema.ts'
import type { HttpProblem } from './problem.ts'
import { sendProblem } from './problem.ts'
import { withRead } from './sales-files.ts'
import { NO_SET_UP } from './set-up.ts'
import { spreadsheetKind } from './spreadsheet-kind.ts'
import { whileWorking } from './while-working.ts'

/** Where a file of orders is put in: it comes as bytes, since nobody has said yet what it is written in. */
export const ORDERS_IMPORT = '/api/v1/orders/import'
const FILE_BYTES_MAX = 512 * 1024
/** Orders decided together: a caterer's whole week must not make a tap wait. */
const ORDERS_AT_ONCE = 50

export interface OrdersImportParts {
  readonly room: Pick<Room, 'state' | 'submit'>
  readonly journal: Pick<Journal, 'answerOf'>
  readonly work: Pick<WorkDesk, 'ask'>
  readonly now: () => EpochMs
}

/** Orders that come in a file: looked at, said column by column, taken. Nothing of a file is kept but its mapping. */
export function ordersImportRoutes(app: Express, parts: OrdersImportParts): void {
  const body = [express.raw({ type: 'text/csv', limit: FILE_BYTES_MAX }), letIn] satisfies RequestHandler[]
  app.post('/api/v1/orders/import', ...body, (request: Request, response: Response, next: NextFunction) => {
    postFile(request, response, parts).catch(next)
  })
  app.get('/api/v1/orders/import/mappings', (_request, response) =>
    whileWorking(response, async () => {
      response.json(await parts.work.ask('orderMappings', null))
    }),
  )
  app.put('/api/v1/orders/import/mappings', (request, response) =>
    withRead(request, response, rememberMappingSchema, (said) =>
      whileWorking(response, async () => {
        await parts.work.ask('rememberOrderMapping', said)
        response.json(await parts.work.ask('orderMappings', null))
      }),
    ),
  )
}

async function postFile(request: Request, response: Response, parts: OrdersImportParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const { shop } = parts.room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  const bytes: unknown = request.body
  if (!Buffer.isBuffer(bytes)) return sendProblem(response, NO_CSV)
  const trouble = bytes.length === 0 ? EMPTY : spreadsheetKind(bytes)
  if (trouble !== null) return sendProblem(response, { status: 422, title: 'No CSV', detail: trouble })
  const chosen = mappingIn(request, response)
  if (chosen === undefined) return
  await whileWorking(response, async () => {
    const understood = await understand(bytes, { chosen, shop, parts })
    if (understood === 'too-long') return sendProblem(response, TOO_LONG)
    if (request.query.take !== '1') return void response.json(understood.told)
    const { told } = understood
    if (chosen === null && !told.isRemembered && isAmbiguous(told)) return sendProblem(response, SAY_FIRST)
    response.json(await takeAll(understood, device, parts))
  })
}

const NO_CSV: HttpProblem = {
  status: 415,
  title: 'No CSV',
  detail: 'Send the file as it is, with the content type text/csv.',
}
const EMPTY = 'The file is empty. Save the orders as CSV and put that in.'
const TOO_LONG: HttpProblem = {
  status: 422,
  title: 'Too many rows',
  detail: `The file has more than ${ORDER_ROWS_MAX} rows. Put it in in parts.`,
}
const SAY_FIRST: HttpProblem = {
  status: 409,
  title: 'Say which first',
  detail:
    'Dates or times of the file may be read in two ways ("doubts"). Send "mapping" as it is meant: its dateForm, and isAfternoonMeant.',
}

/** @returns null: none was sent; undefined: it was answered with its mistakes */
function mappingIn(request: Request, response: Response): OrderMapping | null | undefined {
  const { mapping } = request.query
  if (mapping === undefined || mapping === '') return null
  const value = fromJson(mapping)
  const read = orderMappingSchema.safeParse(value)
  if (read.success) return read.data
  const errors = problemsOf(read.error.issues, value)
  sendProblem(response, { status: 422, title: 'Mistakes in the mapping', detail: 'Nothing was taken.', errors })
  return undefined
}

function fromJson(text: unknown): unknown {
  try {
    return JSON.parse(String(text))
  } catch {
    return null
  }
}

interface Understanding {
  readonly chosen: OrderMapping | null
  readonly shop: Shop
  readonly parts: OrdersImportParts
}

async function understand(bytes: Buffer, { chosen, shop, parts }: Understanding) {
  const { work, room, now } = parts
  const known = await work.ask('orderMappings', null)
  return await understandOrders({
    file: ordersFile(bytes),
    shop,
    nowMs: now(),
    chosen,
    remembered: (header) => known.find((one) => headerKey(one.header) === headerKey(header))?.mapping ?? null,
    meanings: (names) => work.ask('salesMeanings', { names }),
    isKnown: (order) => isKnown(order, room, parts.journal),
  })
}

/** Taken by hand, by a till or by an earlier file: while it is open by its reference, later by the command it came with. */
function isKnown(order: GroupedOrder, { state }: OrdersImportParts['room'], journal: Pick<Journal, 'answerOf'>) {
  if (order.ref !== null && openOrderOf(state, order.ref) !== null) return true
  return journal.answerOf(commandIdOf(order, journal))?.kind === 'taken'
}

/** The same order is the same command for ever, whoever puts the file in; what was refused may be tried again. */
function commandIdOf({ key }: GroupedOrder, journal: Pick<Journal, 'answerOf'>): CommandId {
  return commandUntilTaken({ deviceId: FILES, kind: 'order', id: key }, journal)
}
const FILES = deviceId('orders-files')

async function takeAll(
  { told, header, orders }: OrdersUnderstood,
  device: DeviceHello,
  parts: OrdersImportParts,
): Promise<OrdersRead> {
  const { room, journal, work } = parts
  const states: ReadOrder['state'][] = told.orders.map(({ state }) => state)
  const faults: OrderRowFault[] = [...told.faults]
  const fresh = orders.flatMap((order, index) => (states[index] === 'new' ? [{ order, index }] : []))
  for (let from = 0; from < fresh.length; from += ORDERS_AT_ONCE) {
    const some = fresh.slice(from, from + ORDERS_AT_ONCE)
    const commands = some.map(({ order }, at) => commandOf(order, at + 1, journal))
    const answers = await room.submit(device, commands)
    some.forEach(({ order, index }, at) => {
      const answer = answers[at]?.answer
      if (answer?.kind === 'taken') states[index] = 'taken'
      else if (answer?.kind === 'refused' && answer.refusal.code === 'order-known') states[index] = 'known'
      else {
        const refusal = answer?.kind === 'refused' ? answer.refusal.code : 'internal'
        faults.push({ line: order.rows[0] ?? 0, cells: [], fault: orderFault('refused', { refusal }) })
      }
    })
  }
  if (header !== null && told.orders.length > 0 && !isRowOfOrders(header, told.mapping))
    await work.ask('rememberOrderMapping', { header, mapping: told.mapping })
  const read = told.orders.map((order, index): ReadOrder => ({ ...order, state: states[index] ?? order.state }))
  return { ...told, orders: read, faults: faults.sort((one, other) => one.line - other.line) }
}

function commandOf(order: GroupedOrder, deviceSeq: number, journal: Pick<Journal, 'answerOf'>): Command {
  const { ref, mark, dueAtMs, way, lines, items, isPaid, name, phone, note } = order
  const act: Act = {
    ...{ type: 'takeOrder', mark, dueAtMs, way, runId: null, stop: 0, lines, items, isPaid },
    ...(ref === null ? {} : { ref }),
    ...(name + phone + note === '' ? {} : { details: { name, phone, note } }),
  }
  return { id: commandIdOf(order, journal), deviceSeq, tappedAtMs: null, ...act }
}
