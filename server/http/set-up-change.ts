import type { Request, Response } from 'express'
import { AT_MS_MAX } from '../../shared-core/day/command-fields.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { decideChangeSetUp } from '../../shared-core/day/decide-set-up.ts'
import type { State } from '../../shared-core/day/state.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { changesTold } from '../../shared-core/shop/set-up-told.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { Room } from '../live/room.ts'
import { submitOne } from './commands.ts'
import { sendAnswer, sendProblem } from './problem.ts'
import { wholeNumber } from './whole-number.ts'

interface Wanted {
  readonly room: Room
  readonly device: DeviceHello
  /** The shop as it should be, of the shop as it is when the change is made. */
  readonly to: (now: Shop | null) => Shop
}

/**
 * Brings the running shop to a set-up, answered as any command is. Of a request's query: `dryRun=1` tells what would
 * change and be asked, and changes nothing; `fromMs=` an instant from which it holds; `confirm=` says yes to questions.
 */
export async function changeSetUpTo(request: Request, response: Response, { room, device, to }: Wanted): Promise<void> {
  const { dryRun = '0' } = request.query
  const fromMs = wholeNumber(request.query.fromMs, 0)
  if (fromMs === null || fromMs > AT_MS_MAX || (dryRun !== '0' && dryRun !== '1')) {
    const detail =
      '"dryRun" is 0 or 1; "fromMs" is an instant in milliseconds since 1970: ?dryRun=1&fromMs=1796000000000.'
    sendProblem(response, { status: 400, title: 'Bad request', detail })
    return
  }
  const when = fromMs === 0 ? {} : { fromMs: epochMs(fromMs) }
  if (dryRun === '1') {
    response.json(await room.read((state) => rehearsed(state, to(state.shop), { ...when, deviceId: device.deviceId })))
    return
  }
  const { changes, seq } = await room.read(({ shop, seq }) => ({ changes: setUpChanges(shop, to(shop)), seq }))
  if (changes.length === 0) {
    response.json({ commandId: null, answer: { kind: 'taken', seq } })
    return
  }
  sendAnswer(response, await submitOne(request, { room, device, act: { type: 'changeSetUp', changes, ...when } }))
}

type When = Pick<Extract<Act, { type: 'changeSetUp' }>, 'fromMs'>

/** What would come of it at this moment: the answer that the command would get, but for the seq of what is not taken. */
function rehearsed(state: State, shop: Shop, { deviceId, ...when }: When & Pick<DeviceHello, 'deviceId'>) {
  const changes = setUpChanges(state.shop, shop)
  const told = changesTold(state.shop, changes)
  // The command itself too: whoever previews a file may want to change some of it before it is sent.
  const command = { type: 'changeSetUp', changes, ...when } as const
  if (changes.length === 0) return { dryRun: true, changes: told, command, answer: { kind: 'taken' } }
  const head = { id: commandId('dryrun0000'), deviceSeq: 1, tappedAtMs: null }
  const context = { nowMs: state.recordedAtMs, deviceId, localDate: '' }
  const decision = decideChangeSetUp(state, { ...head, ...command }, context)
  return { dryRun: true, changes: told, command, answer: decision.kind === 'taken' ? { kind: 'taken' } : decision }
}
