import { stringify } from 'csv-stringify/sync'
import type { Express, Request, Response } from 'express'
import { isDate } from '../../shared-core/day/label.ts'
import { specialDayId } from '../../shared-core/ids.ts'
import type { SalesHistoryJson } from '../../shared-core/live/sales-history.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { asText } from '../history/csv-text.ts'
import type { Room } from '../live/room.ts'
import type { HistoryAsked } from '../work/history-questions.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import type { HttpProblem } from './problem.ts'
import { sendProblem } from './problem.ts'
import { NO_SET_UP } from './set-up.ts'
import { whileWorking } from './while-working.ts'
import { wholeNumber } from './whole-number.ts'

/** Three years fill some 100 kB; who wants more asks for the years one by one. */
export const HISTORY_DAYS_MAX = 1_100
/** Days that the forecasts are judged by. */
export const TRUST_DAYS_MAX = 365
const TRUST_DAYS_USUAL = 84
const DAY_MS = 86_400_000

export interface PastSalesParts {
  readonly work: Pick<WorkDesk, 'ask'>
  readonly room: Pick<Room, 'state'>
}

/** Past sales by day, weekday and hour, and how good the forecasts of them were. */
export function pastSalesRoutes(app: Express, parts: PastSalesParts): void {
  app.get('/api/v1/history/sales', (request, response) => withHistory(request, response, parts, sendJson))
  app.get('/api/v1/history/sales.csv', (request, response) => withHistory(request, response, parts, sendCsv))
  app.get('/api/v1/history/sales/:date', (request, response) => getDay(request, response, parts))
  app.get('/api/v1/trust', (request, response) => getTrust(request, response, parts))
}

type Sending = (response: Response, history: SalesHistoryJson, shop: Shop) => void

async function withHistory(request: Request, response: Response, parts: PastSalesParts, send: Sending): Promise<void> {
  const asked = askedOf(request.query)
  if (typeof asked === 'string') return sendProblem(response, badRequest(asked))
  await withShop(response, parts, async (shop) => {
    const history = await parts.work.ask('history', asked)
    if (history !== null) return send(response, history, shop)
    const detail = `The set-up has no "${asked.of}". "of" is all, dough:ID or variety:ID, with ids of /api/v1/set-up.`
    sendProblem(response, { status: 404, title: 'No such dough or variety', detail })
  })
}

/** @returns what is wrong with the query and what would be right */
function askedOf({ of = 'all', from, to }: Request['query']): HistoryAsked | string {
  if (typeof of !== 'string') return '"of" is all, dough:ID or variety:ID: /api/v1/history/sales?of=all.'
  const dates = [from, to].filter((date) => date !== undefined)
  if (dates.some((date) => typeof date !== 'string' || !isDate(date)))
    return '"from" and "to" are dates: /api/v1/history/sales?from=2026-09-01&to=2026-11-30.'
  const [first, last] = [from, to].map((date) => (typeof date === 'string' ? date : null))
  if (first && last && (first > last || Date.parse(last) - Date.parse(first) >= HISTORY_DAYS_MAX * DAY_MS))
    return `"from" is not after "to", and not more than ${HISTORY_DAYS_MAX} days before it.`
  return { of, from: first ?? null, to: last ?? null }
}

function sendJson(response: Response, history: SalesHistoryJson): void {
  response.json({ ...history, days: history.days.slice(-HISTORY_DAYS_MAX) })
}

/** A row for each day (RFC 4180: commas, CRLF, a header line). Lost pieces are an estimate. */
function sendCsv(response: Response, { of, days }: SalesHistoryJson, shop: Shop): void {
  const rows = days.map(({ date, sold, lost, soldOut, specials }) => ({
    ...{ date, weekday: isoWeekday(date), sold, lost_estimated: lost, sold_out: soldOut },
    special: specials.map((id) => asText(shop.specialDays.get(specialDayId(id))?.name ?? id)).join(', '),
  }))
  const columns = ['date', 'weekday', 'sold', 'lost_estimated', 'sold_out', 'special']
  const csv = stringify(rows, { header: true, columns, record_delimiter: 'windows', quote_record_delimiter: true })
  const name = of.replaceAll(/[^a-z0-9-]+/gi, '-')
  response.attachment(`sales-${name}.csv`).type('text/csv; charset=utf-8; header=present').send(csv)
}

async function getDay(request: Request, response: Response, parts: PastSalesParts): Promise<void> {
  const date = String(request.params.date)
  if (!isDate(date))
    return sendProblem(response, badRequest('A day is named by its date: /api/v1/history/sales/2026-11-24.'))
  await withShop(response, parts, async () => {
    response.json(await parts.work.ask('historyDay', { date }))
  })
}

async function getTrust(request: Request, response: Response, parts: PastSalesParts): Promise<void> {
  const days = wholeNumber(request.query.days, TRUST_DAYS_USUAL)
  if (days === null || days < 1 || days > TRUST_DAYS_MAX) {
    const detail = `"days" is a whole number from 1 to ${TRUST_DAYS_MAX}: /api/v1/trust?days=${TRUST_DAYS_USUAL}.`
    return sendProblem(response, badRequest(detail))
  }
  await withShop(response, parts, async () => {
    response.json(await parts.work.ask('trust', { days }))
  })
}

/** Runs for a shop that has a set-up; says so where it has none, or where the thread for advice is begun anew. */
export async function withShop(response: Response, { room }: PastSalesParts, run: (shop: Shop) => Promise<void>) {
  const { shop } = room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  await whileWorking(response, () => run(shop))
}

function badRequest(detail: string): HttpProblem {
  return { status: 400, title: 'Bad request', detail }
}
