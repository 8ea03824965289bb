import { createHash, randomBytes } from 'node:crypto'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import { commandId } from '../../shared-core/ids.ts'

const ID_LETTERS = 36

/**
 * The command of a row that a script sent: the same id from the same device is the same command for ever, so that a row
 * sent again counts once, and gets its first answer. Without an id each sending counts.
 */
export function commandOfRow(deviceId: DeviceId, kind: string, id: string | null): CommandId {
  if (id === null) return commandId(randomBytes(18).toString('hex'))
  return commandId(createHash('sha256').update(`${deviceId}\n${kind}\n${id}`).digest('hex').slice(0, ID_LETTERS))
}
