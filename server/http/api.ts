import { randomBytes } from 'node:crypto'
import type { Express, Request, Response } from 'express'
import type { Answer, AskCode } from '../../shared-core/day/answers.ts'
import { ASK_CODES } from '../../shared-core/day/answers.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { hashState } from '../../shared-core/day/hash.ts'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import { toJson } from '../../shared-core/day/state-json.ts'
import { commandId, deviceId } from '../../shared-core/ids.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { parseSetUpFile, setUpJsonSchema } from '../../shared-core/shop/set-up-file.ts'
import { parseDevice } from '../devices/device.ts'
import type { Journal } from '../journal/journal.ts'
import { readCommands } from '../live/read-commands.ts'
import type { Room } from '../live/room.ts'
import { isZone } from '../live/shop-clock.ts'
import { readLoadList } from './load-list.ts'
import { sendProblem } from './problem.ts'

export const EVENTS_PER_PAGE_MAX = 1_000

export interface ApiParts {
  readonly room: Room
  readonly journal: Journal
  readonly version: string
  readonly localDate: () => string
}

/** The API under /api/v1, for scripts and tills. What a person changes goes through the same room as a tap. */
export function api(app: Express, parts: ApiParts): void {
  const { room } = parts
  app.get('/api/health', (_request, response) => {
    const healthy = room.trouble === null
    const body = {
      status: healthy ? 'ok' : 'failing',
      version: parts.version,
      seq: room.state.seq,
      reasons: healthy ? [] : [room.trouble],
    }
    response.status(healthy ? 200 : 503).json(body)
  })
  app.get('/api/v1/state', async (_request, response) => {
    const body = await room.read((state) => ({
      foldVersion: FOLD_VERSION,
      hash: hashState(state),
      state: toJson(state),
    }))
    response.json(body)
  })
  app.get('/api/v1/events', (request, response) => events(request, response, parts))
  app.post('/api/v1/commands', (request, response) => commands(request, response, parts))
  app.get('/api/v1/set-up.schema.json', (_request, response) => {
    response.type('application/schema+json').send(JSON.stringify(setUpJsonSchema()))
  })
  app.get('/api/v1/set-up', async (_request, response) => {
    const file = await room.read(({ shop }) => (shop === null ? null : toSetUpFile(shop)))
    if (file !== null) response.json(file)
    else sendProblem(response, { status: 404, title: 'No set-up yet', detail: 'POST a set-up file here first.' })
  })
  app.post('/api/v1/set-up', (request, response) => setUp(request, response, parts))
  app.post('/api/v1/load-list', (request, response) => loadList(request, response, parts))
}

function events(request: Request, response: Response, { journal }: ApiParts): void {
  const after = wholeNumber(request.query.after, 0)
  const limit = wholeNumber(request.query.limit, EVENTS_PER_PAGE_MAX)
  if (after === null || limit === null || limit > EVENTS_PER_PAGE_MAX) {
    const detail = `"after" and "limit" are whole numbers, "limit" at most ${EVENTS_PER_PAGE_MAX}: /api/v1/events?after=0&limit=100.`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const entries = [...journal.entriesAfter(after, limit)]
  response.json({ entries, lastSeq: journal.lastSeq() })
}

async function commands(request: Request, response: Response, { room }: ApiParts): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const raw: unknown[] = Array.isArray(request.body) ? request.body : [request.body]
  const { commands: read, unread, nameless } = readCommands(raw)
  if (nameless > 0 || raw.length > COMMANDS_PER_MESSAGE_MAX) {
    const detail = `Each command is an object with an "id" of 10 to 40 letters a-z and digits, at most ${COMMANDS_PER_MESSAGE_MAX} at once.`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const answers = [...unread, ...(await room.submit(device, read))]
  response.json(Array.isArray(request.body) ? answers : answers[0])
}

async function setUp(request: Request, response: Response, parts: ApiParts): Promise<void> {
  const device = deviceOf(request, response, 'desk')
  if (device === null) return
  const parsed = parseSetUpFile(request.body, { isZone })
  if (!parsed.ok) {
    const detail = 'The set-up file has mistakes; nothing of it was taken.'
    sendProblem(response, { status: 422, title: 'Mistakes in the set-up', detail, errors: parsed.problems })
    return
  }
  const changes = await parts.room.read(({ shop }) => setUpChanges(shop, parsed.shop))
  if (changes.length === 0) {
    response.json({ kind: 'taken', seq: parts.room.state.seq })
    return
  }
  await submitOne(request, response, { parts, device, act: { type: 'changeSetUp', changes } })
}

async function loadList(request: Request, response: Response, parts: ApiParts): Promise<void> {
  const device = deviceOf(request, response, 'desk')
  if (device === null) return
  const { shop } = parts.room.state
  if (shop === null) {
    sendProblem(response, {
      status: 409,
      title: 'No set-up yet',
      detail: 'POST a set-up file to /api/v1/set-up first.',
    })
    return
  }
  const read = readLoadList(request.body, shop, parts.localDate())
  if (!read.ok) {
    const detail = 'The load list has mistakes; nothing of it was taken.'
    sendProblem(response, { status: 422, title: 'Mistakes in the load list', detail, errors: read.problems })
    return
  }
  await submitOne(request, response, { parts, device, act: { type: 'setLoadList', loads: read.loads } })
}

/** `?confirm=CODE,…` says yes to what was asked before. */
async function submitOne(
  request: Request,
  response: Response,
  { parts, device, act }: { parts: ApiParts; device: DeviceHello; act: Act },
): Promise<void> {
  const yes = String(request.query.confirm ?? '').split(',')
  const confirmed = ASK_CODES.filter((code): code is AskCode => yes.includes(code))
  const command = { id: commandId(randomBytes(12).toString('hex')), deviceSeq: 1, tappedAtMs: null, confirmed, ...act }
  const [answered] = await parts.room.submit(device, [command])
  const answer: Answer | undefined = answered?.answer
  response.status(answer?.kind === 'taken' ? 200 : 409).json(answer)
}

/** The device that a request says it comes from; null when it was answered with what is wrong. */
function deviceOf(request: Request, response: Response, role = 'desk'): DeviceHello | null {
  const name = request.get('x-device-name') ?? 'script'
  const device = parseDevice({
    deviceId: deviceId(request.get('x-device-id') ?? 'http'),
    name,
    role: request.get('x-device-role') ?? role,
    stationId: null,
  })
  if (device === null) {
    const detail =
      'X-Device-Id is letters, digits, "." and "-"; X-Device-Name at most 40 characters; X-Device-Role one of wall, bench, counter, desk.'
    sendProblem(response, { status: 400, title: 'Bad device headers', detail })
  }
  return device
}

function wholeNumber(raw: unknown, otherwise: number): number | null {
  if (raw === undefined) return otherwise
  return typeof raw === 'string' && /^\d{1,15}$/.test(raw) ? Number(raw) : null
}
