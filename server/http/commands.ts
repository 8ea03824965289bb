import { randomBytes } from 'node:crypto'
import type { Request, Response } from 'express'
import type { AskCode } from '../../shared-core/day/answers.ts'
import { ASK_CODES } from '../../shared-core/day/answers.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { CommandAnswer, DeviceHello } from '../../shared-core/live/protocol.ts'
import { COMMANDS_PER_MESSAGE_MAX } from '../../shared-core/live/protocol.ts'
import { readCommands } from '../live/read-commands.ts'
import type { Room } from '../live/room.ts'
import { deviceOf } from './device-headers.ts'
import { sendAnswer, sendProblem } from './problem.ts'

/**
 * POST /api/v1/commands: one command, answered as it went, or a list, answered one by one in the order that it was sent
 * in. A repeat gets the first answer, so a script may send again whatever it got no answer to.
 */
export async function postCommands(request: Request, response: Response, room: Room): Promise<void> {
  const device = deviceOf(request, response)
  if (device === null) return
  const raw: readonly unknown[] = Array.isArray(request.body) ? request.body : [request.body]
  const { commands, unread, nameless } = readCommands(raw)
  if (nameless > 0 || raw.length > COMMANDS_PER_MESSAGE_MAX) {
    const detail = `A command is an object with an "id" of 10 to 40 letters a-z and digits; at most ${COMMANDS_PER_MESSAGE_MAX} at once.`
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const taken = commands.length === 0 ? [] : await room.submit(device, commands)
  const answers = inOrderSent(raw, [...unread, ...taken])
  const [only] = answers
  if (!Array.isArray(request.body) && only !== undefined) sendAnswer(response, only)
  else response.json(answers)
}

/** Submits one act as a command of its own. `?confirm=CODE,…` says yes to what was asked before. */
export async function submitOne(
  request: Request,
  { room, device, act }: { readonly room: Room; readonly device: DeviceHello; readonly act: Act },
): Promise<CommandAnswer> {
  const yes = String(request.query.confirm ?? '').split(',')
  const confirmed = ASK_CODES.filter((code): code is AskCode => yes.includes(code))
  const id = commandId(randomBytes(12).toString('hex'))
  const [answered] = await room.submit(device, [{ id, deviceSeq: 1, tappedAtMs: null, confirmed, ...act }])
  return answered ?? { commandId: id, answer: { kind: 'refused', refusal: { code: 'internal', params: {} } } }
}

function inOrderSent(raw: readonly unknown[], answers: readonly CommandAnswer[]): CommandAnswer[] {
  const of = new Map<unknown, CommandAnswer>(answers.map((answered) => [answered.commandId, answered]))
  return raw.flatMap((one) => of.get((one as { readonly id?: unknown }).id) ?? [])
}
