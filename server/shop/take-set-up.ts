import { randomBytes } from 'node:crypto'
import type { Answer, AskCode } from '../../shared-core/day/answers.ts'
import { commandId, deviceId } from '../../shared-core/ids.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { Room } from '../live/room.ts'

/** The person at the server's terminal. */
const TERMINAL: DeviceHello = { deviceId: deviceId('terminal'), name: 'Terminal', role: 'desk', stationId: null }

/** Brings the running shop to a set-up. Nothing is written when it is so already. */
export async function takeSetUp(room: Room, shop: Shop, confirmed: readonly AskCode[]): Promise<Answer> {
  const changes = setUpChanges(room.state.shop, shop)
  if (changes.length === 0) return { kind: 'taken', seq: room.state.seq }
  const id = commandId(randomBytes(12).toString('hex'))
  const command = { id, deviceSeq: 1, tappedAtMs: null, confirmed, type: 'changeSetUp', changes } as const
  const [answered] = await room.submit(TERMINAL, [command])
  return answered?.answer ?? { kind: 'refused', refusal: { code: 'internal', params: {} } }
}
