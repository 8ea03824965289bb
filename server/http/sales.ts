import type { Express, Request, Response } from 'express'
import type { AskCode } from '../../shared-core/day/answers.ts'
import { ASK_CODES } from '../../shared-core/day/answers.ts'
import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { CommandAnswer, DeviceHello } from '../../shared-core/live/protocol.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Journal } from '../journal/journal.ts'
import type { Room } from '../live/room.ts'
import type { FedSale } from '../sales/feed.ts'
import { businessMoment, dayOf, LocalTimes } from '../sales/local-times.ts'
import type { WorkDesk } from '../work/work-desk.ts'
import { commandOfRow } from './derived-command.ts'
import { deviceOf } from './device-headers.ts'
import type { Today } from './instant.ts'
import { instantOf } from './instant.ts'
import { named } from './named.ts'
import { sendAnswer, sendProblem } from './problem.ts'
import type { ReadSale } from './read-sales.ts'
import { readSales, tillNamesIn } from './read-sales.ts'
import { countsSchema, ovenReadingsSchema, readingsSchema } from './sales-schema.ts'
import { NO_SET_UP } from './set-up.ts'
import { whileWorking } from './while-working.ts'

/** Rows decided together: a till's whole day must not make a tap wait. */
const ROWS_AT_ONCE = 50

interface SalesParts {
  readonly room: Room
  readonly journal: Pick<Journal, 'answerOf'>
  readonly work: Pick<WorkDesk, 'ask'>
  readonly localDate: () => string
  readonly now: () => EpochMs
}

/** What tills, counters and thermometers post. All of it goes through the room as commands, like a tap. */
export function salesRoutes(app: Express, parts: SalesParts): void {
  app.post('/api/v1/sales', (request, response) => withShop(request, response, parts, postSales))
  app.post('/api/v1/counts', (request, response) => withShop(request, response, parts, postCounts))
  app.post('/api/v1/oven-readings', (request, response) => withShop(request, response, parts, postOvenReadings))
  app.post('/api/v1/readings', (request, response) => withShop(request, response, parts, postReadings))
}

interface Posted extends Omit<SalesParts, 'localDate' | 'now'> {
  readonly shop: Shop
  readonly today: Today
  readonly device: DeviceHello
}
type Posting = (request: Request, response: Response, posted: Posted) => Promise<void>

async function withShop(request: Request, response: Response, parts: SalesParts, post: Posting): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const { room, journal, work, localDate, now } = parts
  const { shop } = room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  await post(request, response, {
    room,
    journal,
    work,
    shop,
    device,
    today: { zone: shop.profile.zone, date: localDate(), nowMs: now() },
  })
}

/** Each row is a command of its own. With one that cannot be read nothing is taken, unless `?partial=1` says otherwise. */
async function postSales(request: Request, response: Response, posted: Posted): Promise<void> {
  const { room, shop, device, today, journal, work } = posted
  await whileWorking(response, async () => {
    const meanings = await meaningsFor(tillNamesIn(request.body, shop), work)
    const read = readSales(request.body, { shop, today, deviceId: device.deviceId, meanings })
    const { isWhole, sales, ignored, problems } = read
    const isPartial = request.query.partial === '1'
    if (!isWhole || (problems.length > 0 && !isPartial)) return sendMistakes(response, 'sales', problems)
    const confirmed = confirmedOf(request)
    const { now, over } = byDay(sales, { room, journal, today })
    // First what may not be possible just now, so that nothing is done where it is not.
    if (over.length > 0) await work.ask('salesFeed', { sales: over })
    const answers = await submitAll(
      room,
      device,
      now.map(({ command }) => ({ ...command, confirmed })),
    )
    const rows = now.map(({ row }, index) => ({ row, ...answers[index] }))
    const taken = answers.filter(({ answer }) => answer.kind === 'taken').length
    response.json({ taken, past: over.length, ignored, rows, errors: problems })
  })
}

async function meaningsFor(names: readonly string[], work: SalesParts['work']) {
  return names.length === 0 ? new Map() : await work.ask('salesMeanings', { names })
}

type Day = Pick<Posted, 'room' | 'journal' | 'today'>

/** Rows of the day that goes on, and those of days that are over: these change nothing on the board any more. */
function byDay(sales: readonly ReadSale[], { room, journal, today }: Day) {
  const label = room.state.day?.label ?? today.date
  const openDay = Math.min(dayOf(label), dayOf(today.date))
  const times = new LocalTimes(today.zone)
  const isOver = ({ command: { id, tappedAtMs } }: ReadSale) =>
    tappedAtMs !== null && businessMoment(times.of(tappedAtMs)).day < openDay && journal.answerOf(id) === null
  const over = sales.filter(isOver).map(({ command, sold }): FedSale => {
    return { atMs: command.tappedAtMs ?? epochMs(0), id: command.id, ...sold }
  })
  return { now: sales.filter((sale) => !isOver(sale)), over }
}

async function postCounts(request: Request, response: Response, posted: Posted): Promise<void> {
  const { room, shop, device, today } = posted
  const read = countsSchema.safeParse(request.body)
  if (!read.success) return sendMistakes(response, 'counts', problemsOf(read.error.issues, request.body))
  const problems: Problem[] = []
  const { at, id, counts } = read.data
  const tappedAtMs = at == null ? null : instantOf({ value: at, where: '', path: '/at' }, today, problems)
  const lines = counts.flatMap(({ variety, pieces, within }, index): (Line & { within: number })[] => {
    const typed = { value: variety, where: '', path: `/counts/${index}/variety` }
    const varietyId = named(shop.varieties, { typed, what: 'variety', problems })
    return varietyId === null ? [] : [{ varietyId, pieces, within: within ?? 0 }]
  })
  lines.forEach(({ varietyId }, index) => {
    if (lines.findIndex((line) => line.varietyId === varietyId) === index) return
    const wrong = `"${varietyId}" was counted in an earlier line already.`
    problems.push({ path: `/counts/${index}/variety`, wrong, right: 'Each variety once.' })
  })
  if (problems.length > 0) return sendMistakes(response, 'counts', problems)
  const act: Act = { type: 'sweep', counts: lines }
  const command: Command = { id: commandOfRow(device.deviceId, 'counts', id ?? null), deviceSeq: 1, tappedAtMs, ...act }
  const [answered] = await submitAll(room, device, [{ ...command, confirmed: confirmedOf(request) }])
  if (answered !== undefined) sendAnswer(response, answered)
}

async function postOvenReadings(request: Request, response: Response, posted: Posted): Promise<void> {
  const { room, shop, device, today } = posted
  const read = ovenReadingsSchema.safeParse(request.body)
  if (!read.success) return sendMistakes(response, 'oven readings', problemsOf(read.error.issues, request.body))
  const problems: Problem[] = []
  const commands = read.data.readings.map(({ at, shelf, degrees, unit, id }, index): Command => {
    const typed = (value: string, field: string) => ({ value, where: '', path: `/readings/${index}/${field}` })
    const tappedAtMs = at == null ? null : instantOf(typed(at, 'at'), today, problems)
    const shelfId =
      shelf == null ? null : named(shop.shelves, { typed: typed(shelf, 'shelf'), what: 'shelf', problems })
    const act: Act = { type: 'readOven', shelfId, degrees, unit: unit ?? shop.profile.temperature }
    return { id: commandOfRow(device.deviceId, 'reading', id ?? null), deviceSeq: index + 1, tappedAtMs, ...act }
  })
  if (problems.length > 0) return sendMistakes(response, 'oven readings', problems)
  await submitReadings(request, response, { room, device, commands })
}

/** What sensors in the dough room post: the room, the cooler, the flour and the tap. */
async function postReadings(request: Request, response: Response, posted: Posted): Promise<void> {
  const { room, shop, device, today } = posted
  const read = readingsSchema.safeParse(request.body)
  if (!read.success) return sendMistakes(response, 'readings', problemsOf(read.error.issues, request.body))
  const problems: Problem[] = []
  const commands = read.data.readings.map(({ at, place, degrees, unit, id }, index): Command => {
    const typed = { value: at ?? '', where: '', path: `/readings/${index}/at` }
    const tappedAtMs = at == null ? null : instantOf(typed, today, problems)
    const thousandths = Math.round(degrees * 1_000) + 0
    const act: Act = { type: 'readPlace', place, read: { thousandths, unit: unit ?? shop.profile.temperature } }
    return { id: commandOfRow(device.deviceId, 'place', id ?? null), deviceSeq: index + 1, tappedAtMs, ...act }
  })
  if (problems.length > 0) return sendMistakes(response, 'readings', problems)
  await submitReadings(request, response, { room, device, commands })
}

interface Read {
  readonly room: Room
  readonly device: DeviceHello
  readonly commands: readonly Command[]
}

async function submitReadings(request: Request, response: Response, { room, device, commands }: Read): Promise<void> {
  const confirmed = confirmedOf(request)
  const confirming = commands.map((command) => ({ ...command, confirmed }))
  const answers = await submitAll(room, device, confirming)
  const taken = answers.filter(({ answer }) => answer.kind === 'taken').length
  response.json({ taken, rows: answers.map((answered, index) => ({ row: index + 1, ...answered })) })
}

function sendMistakes(response: Response, what: string, errors: readonly Problem[]): void {
  const detail = `The ${what} have mistakes; nothing of them was taken.`
  sendProblem(response, { status: 422, title: `Mistakes in the ${what}`, detail, errors })
}

function confirmedOf({ query }: Request): readonly AskCode[] {
  const yes = String(query.confirm ?? '').split(',')
  return ASK_CODES.filter((code) => yes.includes(code))
}

async function submitAll(room: Room, device: DeviceHello, commands: readonly Command[]): Promise<CommandAnswer[]> {
  const answers: CommandAnswer[] = []
  for (let from = 0; from < commands.length; from += ROWS_AT_ONCE) {
    answers.push(...(await room.submit(device, commands.slice(from, from + ROWS_AT_ONCE))))
  }
  return answers
}
