import type { Express, Request, Response } from 'express'
import { dayAccount } from '../../shared-core/day/day-account.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { fromJson } from '../../shared-core/day/state-json.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { accountCsv } from '../history/account-csv.ts'
import type { DayRow } from '../history/day-store.ts'
import type { History } from '../history/history.ts'
import { shopClock } from '../live/shop-clock.ts'
import { sendProblem } from './problem.ts'
import { wholeNumber } from './whole-number.ts'

export const DAYS_PER_PAGE_MAX = 100
/** Some three days' entries are folded while one waits; the days of a whole year are not. */
const BEHIND_MAX = 12_000

interface DaysParts {
  readonly history: History
  readonly now: () => EpochMs
}

/** Past days and today: the list, the record that a screen replays, figures, account and entries. */
export function dayRoutes(app: Express, parts: DaysParts): void {
  app.get('/api/v1/days', (request, response) => getDays(request, response, parts))
  app.get('/api/v1/days/:label', (request, response) => withDay(request, response, parts, sendRecord))
  app.get('/api/v1/days/:label/figures', (request, response) => withDay(request, response, parts, sendFigures))
  app.get('/api/v1/days/:label/account.csv', (request, response) => withDay(request, response, parts, sendAccount))
  app.get('/api/v1/days/:label/entries.jsonl', (request, response) => withDay(request, response, parts, sendEntries))
}

/** Newest first. Asked again with the last one's opening as `before` it goes on; an empty list is the end. */
async function getDays(request: Request, response: Response, { history }: DaysParts): Promise<void> {
  const before = wholeNumber(request.query.before, Number.MAX_SAFE_INTEGER)
  const limit = wholeNumber(request.query.limit, DAYS_PER_PAGE_MAX)
  if (before === null || limit === null || limit < 1 || limit > DAYS_PER_PAGE_MAX) {
    const detail = `"before" is an openedAtMs, "limit" a whole number from 1 to ${DAYS_PER_PAGE_MAX}: /api/v1/days?limit=30.`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  if (!(await isReady(response, history))) return
  response.json(
    history.days(before, limit).map(({ label, openedAtMs, closedAtMs, figures }) => {
      return { label, openedAtMs, closedAtMs, figures }
    }),
  )
}

type Sending = (response: Response, row: DayRow, parts: DaysParts) => void

async function withDay(request: Request, response: Response, parts: DaysParts, send: Sending): Promise<void> {
  const label = String(request.params.label)
  const opened = request.query.opened === undefined ? null : wholeNumber(request.query.opened, 0)
  if (!LABEL.test(label) || (request.query.opened !== undefined && opened === null)) {
    const detail =
      'A day is named by its date or "today": /api/v1/days/2026-11-24. Of two of one date "?opened=" says which: an openedAtMs of /api/v1/days.'
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  if (!(await isReady(response, parts.history))) return
  const row = parts.history.find(label, opened)
  if (row !== null) return send(response, row, parts)
  const detail =
    label === 'today' ? 'No day is open now.' : `The shop has no day ${label}. /api/v1/days lists those that it has.`
  sendProblem(response, { status: 404, title: 'No such day', detail })
}
const LABEL = /^(today|\d{4}-\d{2}-\d{2})$/

/** What a screen needs to replay the day: `applyEntry` for each entry from the start on. */
function sendRecord(response: Response, row: DayRow, { history }: DaysParts): void {
  const { label, openedAtMs, closedAtMs, start, entries } = history.record(row)
  const clock = shopClock(fromJson(start).shop?.profile.zone ?? 'UTC', openedAtMs)
  response.json({ label, openedAtMs, closedAtMs, foldVersion: FOLD_VERSION, start, entries, clock })
}

function sendFigures(response: Response, row: DayRow, { history, now }: DaysParts): void {
  const { label, openedAtMs, closedAtMs } = row
  response.json({ label, openedAtMs, closedAtMs, figures: history.figuresOf(row, now()) })
}

function sendAccount(response: Response, row: DayRow, { history }: DaysParts): void {
  const { start, entries } = history.record(row)
  const csv = accountCsv(row.label, dayAccount(fromJson(start), entries))
  response.attachment(`account-${row.label}.csv`).type('text/csv; charset=utf-8; header=present').send(csv)
}

function sendEntries(response: Response, row: DayRow, { history }: DaysParts): void {
  const lines = history.entriesOf(row).map((entry) => `${JSON.stringify(entry)}\n`)
  response.attachment(`entries-${row.label}.jsonl`).type('application/jsonl; charset=utf-8').send(lines.join(''))
}

/** @returns false when it was answered that the days are still being made */
export async function isReady(response: Response, history: History): Promise<boolean> {
  const caughtUp = history.catchUp()
  if (history.behind <= BEHIND_MAX) {
    await caughtUp
    return true
  }
  // Whoever asks again hears of a failure then.
  caughtUp.catch(() => undefined)
  response.set('retry-after', '2')
  const detail = `The days are being made anew from the journal; ${history.behind} entries are to go. Ask again in a moment.`
  sendProblem(response, { status: 503, title: 'Not yet', detail })
  return false
}
