import { createHash, randomBytes } from 'node:crypto'
import type { CommandId, DeviceId } from '../../shared-core/ids.ts'
import { commandId } from '../../shared-core/ids.ts'
import type { Journal } from '../journal/journal.ts'

const ID_LETTERS = 36

/**
 * The command of a row that a script sent: the same id from the same device is the same command for ever, so that a row
 * sent again counts once, and gets its first answer. Without an id each sending counts.
 */
export function commandOfRow(deviceId: DeviceId, kind: string, id: string | null): CommandId {
  if (id === null) return commandId(randomBytes(18).toString('hex'))
  return commandId(createHash('sha256').update(`${deviceId}\n${kind}\n${id}`).digest('hex').slice(0, ID_LETTERS))
}

/** Refusals are kept, and what was refused is sent again once what was wrong is put right. */
const TRIES_MAX = 50

/** The command of a row that is the same one until it is taken: a refused one is tried anew as another. */
export function commandUntilTaken(
  { deviceId, kind, id }: { readonly deviceId: DeviceId; readonly kind: string; readonly id: string | null },
  journal: Pick<Journal, 'answerOf'>,
): CommandId {
  let command = commandOfRow(deviceId, kind, id)
  for (let tries = 1; tries < TRIES_MAX && journal.answerOf(command)?.kind === 'refused'; tries += 1)
    command = commandOfRow(deviceId, kind, `${id}\n${tries}`)
  return command
}
