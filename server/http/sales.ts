import type { Express, Request, Response } from 'express'
import type { AskCode } from '../../shared-core/day/answers.ts'
import { ASK_CODES } from '../../shared-core/day/answers.ts'
import type { Act, Command } from '../../shared-core/day/commands.ts'
import type { Line } from '../../shared-core/day/state.ts'
import type { CommandAnswer, DeviceHello } from '../../shared-core/live/protocol.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import { problemsOf } from '../../shared-core/shop/problems.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Room } from '../live/room.ts'
import { commandOfRow } from './derived-command.ts'
import { deviceOf } from './device-headers.ts'
import type { Today } from './instant.ts'
import { instantOf } from './instant.ts'
import { named } from './named.ts'
import { sendAnswer, sendProblem } from './problem.ts'
import { readSales } from './read-sales.ts'
import { countsSchema, ovenReadingsSchema, readingsSchema } from './sales-schema.ts'
import { NO_SET_UP } from './set-up.ts'

/** Rows decided together: a till's whole day must not make a tap wait. */
const ROWS_AT_ONCE = 50

interface SalesParts {
  readonly room: Room
  readonly localDate: () => string
}

/** What tills, counters and thermometers post. All of it goes through the room as commands, like a tap. */
export function salesRoutes(app: Express, parts: SalesParts): void {
  app.post('/api/v1/sales', (request, response) => withShop(request, response, parts, postSales))
  app.post('/api/v1/counts', (request, response) => withShop(request, response, parts, postCounts))
  app.post('/api/v1/oven-readings', (request, response) => withShop(request, response, parts, postOvenReadings))
  app.post('/api/v1/readings', (request, response) => withShop(request, response, parts, postReadings))
}

interface Posted {
  readonly room: Room
  readonly shop: Shop
  readonly today: Today
  readonly device: DeviceHello
}
type Posting = (request: Request, response: Response, posted: Posted) => Promise<void>

async function withShop(request: Request, response: Response, parts: SalesParts, post: Posting): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const { room, localDate } = parts
  const { shop } = room.state
  if (shop === null) return sendProblem(response, NO_SET_UP)
  await post(request, response, { room, shop, device, today: { zone: shop.profile.zone, date: localDate() } })
}

/** Each row is a command of its own. With one that cannot be read nothing is taken, unless `?partial=1` says otherwise. */
async function postSales(request: Request, response: Response, { room, shop, device, today }: Posted): Promise<void> {
  const { isWhole, sales, problems } = readSales(request.body, { shop, today, deviceId: device.deviceId })
  const isPartial = request.query.partial === '1'
  if (!isWhole || (problems.length > 0 && !isPartial)) return sendMistakes(response, 'sales', problems)
  const confirmed = confirmedOf(request)
  const commands = sales.map(({ command }) => ({ ...command, confirmed }))
  const answers = await submitAll(room, device, commands)
  const rows = sales.map(({ row }, index) => ({ row, ...answers[index] }))
  const taken = answers.filter(({ answer }) => answer.kind === 'taken').length
  response.json({ taken, rows, errors: problems })
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
