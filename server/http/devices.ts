import type { Express, Request, Response } from 'express'
import type * as z from 'zod'
import type { StationId } from '../../shared-core/ids.ts'
import type { Standing, WhoIsIn } from '../../shared-core/live/devices.ts'
import { setCookie } from '../devices/credentials.ts'
import type { Door } from '../devices/door.ts'
import { OWN_MACHINE } from '../devices/join-codes.ts'
import type { Changed, Joined, Membership } from '../devices/membership.ts'
import { TOO_MANY_DEVICES } from '../devices/membership.ts'
import type { Room } from '../live/room.ts'
import { deviceChangeSchema, joinSchema, newCodeSchema, newTokenSchema, RIGHT } from './devices-schema.ts'
import { addressKey } from './entrance.ts'
import type { HttpProblem } from './problem.ts'
import { sendProblem } from './problem.ts'

interface DevicesParts {
  readonly door: Door
  readonly room: Room
}

/** Who may come in: how a device joins and leaves, and what the desk sees and does about it. */
export function deviceRoutes(app: Express, { door, room }: DevicesParts): void {
  app.get('/api/v1/me', (request, response) => {
    response.json(door.standing(request.headers))
  })
  app.post('/api/v1/join', (request, response) => join(request, response, door))
  app.post('/api/v1/leave', (request, response) => {
    const grant = door.identify(request.headers)
    if (grant.kind === 'joined') door.membership?.leave(grant.id)
    response.json(door.standing(request.headers))
  })
  app.get('/api/v1/devices', (_request, response) => {
    const { membership } = door
    const [devices, codes] = [membership?.devices() ?? [], membership?.codes.open() ?? []]
    response.json({ devices, codes, linked: door.linked } satisfies WhoIsIn)
  })
  app.get('/api/v1/refused', (_request, response) => {
    response.json({ sinceMs: door.refused.sinceMs, attempts: door.refused.attempts() })
  })
  const closed = (request: Request, response: Response, answer: Answering) => {
    if (door.membership === null) sendProblem(response, IS_OPEN)
    else answer({ request, response, membership: door.membership, room })
  }
  app.post('/api/v1/devices/codes', (request, response) => closed(request, response, postCode))
  app.delete('/api/v1/devices/codes/:code', (request, response) => closed(request, response, deleteCode))
  app.post('/api/v1/devices/tokens', (request, response) => closed(request, response, postToken))
  app.patch('/api/v1/devices/:id', (request, response) => closed(request, response, patchDevice))
  app.delete('/api/v1/devices/:id', (request, response) => closed(request, response, deleteDevice))
}

interface Asked {
  readonly request: Request
  readonly response: Response
  readonly membership: Membership
  readonly room: Room
}
type Answering = (asked: Asked) => void

const IS_OPEN: HttpProblem = {
  status: 409,
  title: 'This shop is open',
  detail:
    'Everybody on its network may choose a screen, so nobody joins. Start it without --open to let in who has a code.',
}

function join(request: Request, response: Response, door: Door): void {
  const { membership } = door
  if (membership === null) {
    sendProblem(response, IS_OPEN)
    return
  }
  const body = read(joinSchema, RIGHT.join, request, response)
  if (body === null) return
  const from = isOwnMachine(request) ? OWN_MACHINE : addressKey(request)
  const before = door.before(request.headers)
  const joined = membership.join({ code: body.code, name: body.name ?? '', from, before })
  if (joined.kind !== 'joined') {
    refuseJoin(request, response, { door, joined })
    return
  }
  response.set('set-cookie', setCookie(joined.token, request.secure))
  const standing: Standing = { kind: 'joined', device: joined.device }
  response.json({ standing, page: `/${joined.device.role}` })
}

interface NotJoined {
  readonly door: Door
  readonly joined: Exclude<Joined, { kind: 'joined' }>
}

function refuseJoin(request: Request, response: Response, { door, joined }: NotJoined): void {
  if (joined.kind === 'full') {
    sendProblem(response, { status: 409, title: 'Too many devices', detail: TOO_MANY_DEVICES })
  } else if (joined.kind === 'wrong') {
    door.refused.count('wrong-code', request.socket.remoteAddress)
    const detail =
      'There is no such code now: it was mistyped, used, or older than 10 minutes. The desk makes a new one.'
    sendProblem(response, { status: 403, title: 'No such code', detail })
  } else {
    door.refused.count(joined.hasVoided ? 'wrong-code' : 'too-many', request.socket.remoteAddress)
    const seconds = Math.ceil(joined.retryAfterMs / 1_000)
    response.set('retry-after', String(seconds))
    const voided = joined.hasVoided ? ' All open codes are void: the desk makes a new one.' : ''
    const detail = `Too many wrong codes. Try again in ${seconds} s.${voided}`
    sendProblem(response, { status: 429, title: 'Too many wrong codes', detail })
  }
}

/** Who sits at the machine itself: its tries are not held up by those of the network. */
function isOwnMachine({ socket }: Request): boolean {
  return /^(127\.|::1$|::ffff:127\.)/.test(socket.remoteAddress ?? '')
}

function postCode({ request, response, membership, room }: Asked): void {
  const body = read(newCodeSchema, RIGHT.newCode, request, response)
  if (body === null || !isStationOurs(body.stationId, room, response)) return
  const { role, name = '', stationId = null } = body
  const code = membership.codes.make({ role, name, stationId })
  if (code !== null) response.json(code)
  else sendProblem(response, { status: 409, title: 'Too many open codes', detail: 'Use or cancel some of them first.' })
}

function deleteCode({ request, response, membership }: Asked): void {
  const code = membership.codes.cancel(String(request.params.code))
  if (code !== null) response.json(code)
  else
    sendProblem(response, { status: 404, title: 'No such code', detail: 'It was used, cancelled or too old already.' })
}

function postToken({ request, response, membership }: Asked): void {
  const body = read(newTokenSchema, RIGHT.newToken, request, response)
  if (body === null) return
  const made = membership.makeToken(body)
  if (made !== null) response.json(made)
  else sendProblem(response, { status: 409, title: 'Too many devices', detail: TOO_MANY_DEVICES })
}

function patchDevice({ request, response, membership, room }: Asked): void {
  const body = read(deviceChangeSchema, RIGHT.change, request, response)
  if (body === null || !isStationOurs(body.stationId, room, response)) return
  const { name, role, stationId } = body
  if (name === undefined && role === undefined && stationId === undefined) {
    sendProblem(response, { status: 400, title: 'Bad request', detail: RIGHT.change })
    return
  }
  const change = { ...(name && { name }), ...(role && { role }), ...(stationId !== undefined && { stationId }) }
  sendChanged(response, membership.change(String(request.params.id), change))
}

function deleteDevice({ request, response, membership }: Asked): void {
  sendChanged(response, membership.showOut(String(request.params.id)))
}

function sendChanged(response: Response, changed: Changed): void {
  if (changed === 'unknown') {
    const detail = 'GET /api/v1/devices lists those that have joined.'
    sendProblem(response, { status: 404, title: 'No such device', detail })
  } else if (changed === 'last-desk') {
    const detail = 'It is the only desk: nobody could let in another device then. Let another desk join first.'
    sendProblem(response, { status: 409, title: 'The last desk', detail })
  } else response.json(changed)
}

function isStationOurs(stationId: StationId | null | undefined, room: Room, response: Response): boolean {
  if (stationId == null || room.state.shop?.stations.has(stationId) === true) return true
  const names = [...(room.state.shop?.stations.keys() ?? [])].join(', ')
  const detail = `The shop has no station "${stationId}". "stationId" is null or one of: ${names}.`
  sendProblem(response, { status: 422, title: 'No such station', detail })
  return false
}

/** @returns null when it was answered with what would be right */
function read<Schema extends z.ZodType>(
  schema: Schema,
  right: string,
  ...[request, response]: [Request, Response]
): z.output<Schema> | null {
  const parsed = schema.safeParse(request.body)
  if (parsed.success) return parsed.data
  sendProblem(response, { status: 400, title: 'Bad request', detail: right })
  return null
}
