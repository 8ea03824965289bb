import type { Express, Request, Response } from 'express'
import * as z from 'zod'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { toJson } from '../../shared-core/day/state-json.ts'
import type { SafeCopies } from '../../shared-core/live/devices.ts'
import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthStatus } from '../../shared-core/live/health.ts'
import type { OutlookTold, PlanTold } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Door } from '../devices/door.ts'
import type { History } from '../history/history.ts'
import type { Journal } from '../journal/journal.ts'
import type { ServerAddress } from '../lan/addresses.ts'
import type { Room } from '../live/room.ts'
import type { DetailsBook } from '../orders/details-book.ts'
import type { ImportDesk } from '../sales/import-desk.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import { comingRoutes } from './coming.ts'
import { postCommands, submitOne } from './commands.ts'
import { copiesRoutes } from './copies.ts'
import { dayRoutes } from './days.ts'
import { deviceOf } from './device-headers.ts'
import { deviceRoutes } from './devices.ts'
import { holidayRoutes } from './holidays.ts'
import { readLoadList } from './load-list.ts'
import { openOrdersRoutes } from './open-orders.ts'
import { openApiDocument } from './openapi/document.ts'
import { orderDetailsRoutes } from './order-details.ts'
import { orderPostRoutes } from './orders.ts'
import { ordersCalendarRoutes } from './orders-calendar.ts'
import { ordersImportRoutes } from './orders-import.ts'
import { outlookRoutes } from './outlook.ts'
import { ovenRoutes } from './oven.ts'
import { pastSalesRoutes } from './past-sales.ts'
import { planRoutes } from './plan.ts'
import { sendAnswer, sendProblem } from './problem.ts'
import { salesRoutes } from './sales.ts'
import { salesFileRoutes } from './sales-files.ts'
import { salesNameRoutes } from './sales-names.ts'
import { NO_SET_UP, setUpRoutes } from './set-up.ts'
import { wholeNumber } from './whole-number.ts'

const EVENTS_PER_PAGE_MAX = 1_000

export interface ApiParts {
  readonly door: Door
  readonly room: Room
  readonly journal: Journal
  readonly history: History
  readonly copies: () => SafeCopies
  /** Where advice and sales history are asked for. */
  readonly work: Pick<WorkDesk, 'ask'>
  /** Goes on with files of past sales. */
  readonly imports: ImportDesk
  /** Whom orders are for. */
  readonly details: DetailsBook
  /** The outlook that was told last; null: none yet. */
  readonly outlook: () => OutlookTold | null
  /** The plan, likewise. */
  readonly plan: () => PlanTold | null
  readonly version: string
  readonly isDemo: boolean
  readonly addresses: () => readonly ServerAddress[]
  readonly localDate: () => string
  readonly now: () => EpochMs
  /** Why somebody should look at the server. */
  readonly health: () => readonly HealthReason[]
}

/** The API under /api/v1, for scripts and tills. What a person changes goes through the same room as a tap. */
export function api(app: Express, parts: ApiParts): void {
  const { room, journal, version, isDemo } = parts
  app.get('/api/health', (_request, response) => {
    const reasons = parts.health()
    const status = healthStatus(reasons)
    response
      .status(status === 'failing' ? 503 : 200)
      .json({ status, version, journalId: journal.journalId, seq: room.state.seq, demo: isDemo, reasons })
  })
  app.get('/api/v1/state', async (_request, response) => {
    const body = await room.read((state) => ({
      journalId: journal.journalId,
      foldVersion: FOLD_VERSION,
      hash: hashState(state),
      state: toJson(state),
    }))
    response.json(body)
  })
  app.get('/api/v1/events', (request, response) => getEvents(request, response, parts))
  app.post('/api/v1/commands', (request, response) => postCommands(request, response, room))
  setUpRoutes(app, parts)
  const document = JSON.stringify(openApiDocument(version))
  app.get('/api/openapi.json', (_request, response) => {
    response.type('application/json').send(document)
  })
  app.get('/api/v1/addresses', (_request, response) => {
    response.json(parts.addresses())
  })
  deviceRoutes(app, parts)
  copiesRoutes(app, parts)
  dayRoutes(app, parts)
  orderDetailsRoutes(app, parts)
  orderPostRoutes(app, parts)
  ordersImportRoutes(app, parts)
  ordersCalendarRoutes(app, parts)
  outlookRoutes(app, parts)
  ovenRoutes(app, parts)
  planRoutes(app, parts)
  pastSalesRoutes(app, parts)
  comingRoutes(app, parts)
  holidayRoutes(app, parts)
  salesRoutes(app, parts)
  salesFileRoutes(app, parts)
  salesNameRoutes(app, parts)
  // Last: an id is whatever stands there.
  openOrdersRoutes(app, parts)
  app.post('/api/v1/load-list', (request, response) => postLoadList(request, response, parts))
}

/** Entries after a seq, oldest first. Asked again with the last one's seq it goes on; an empty list is the end. */
async function getEvents(request: Request, response: Response, { room, journal }: ApiParts): Promise<void> {
  const after = wholeNumber(request.query.after, 0)
  const limit = wholeNumber(request.query.limit, EVENTS_PER_PAGE_MAX)
  if (after === null || limit === null || limit < 1 || limit > EVENTS_PER_PAGE_MAX) {
    const detail = `"after" is a whole number, "limit" one from 1 to ${EVENTS_PER_PAGE_MAX}: /api/v1/events?after=0&limit=100.`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const page = await room.read(({ seq }) => ({ entries: [...journal.entriesAfter(after, limit)], lastSeq: seq }))
  response.json(page)
}

async function postLoadList(request: Request, response: Response, { room, localDate, now }: ApiParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const { shop } = room.state
  if (shop === null) {
    sendProblem(response, NO_SET_UP)
    return
  }
  const date = z.iso.date().optional().safeParse(request.query.date)
  if (!date.success) {
    const detail = '"date" is the day of the list: /api/v1/load-list?date=2026-11-25. Left out, it is today.'
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const read = readLoadList(
    request.body,
    shop,
    date.data === undefined ? { today: localDate(), nowMs: now() } : { today: date.data, nowMs: epochMs(0) },
  )
  if (!read.ok) {
    const detail = 'The load list has mistakes; nothing of it was taken.'
    sendProblem(response, { status: 422, title: 'Mistakes in the load list', detail, errors: read.problems })
    return
  }
  sendAnswer(response, await submitOne(request, { room, device, act: { type: 'setLoadList', loads: read.loads } }))
}
