import type { DeviceId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { DeskWords } from '../words/desk.ts'

interface Named {
  readonly deviceId: DeviceId
  readonly role: Role
  readonly name: string
}

/**
 * A device as it was named; one that nobody has named calls itself by its role and the beginning of its id, which is
 * said in the language of this desk.
 * @example deviceName({ deviceId: 'efe4…', role: 'bench', name: 'bench efe4' }, spanish) // "Línea efe4"
 */
export function deviceName({ deviceId, role, name }: Named, { desk }: DeskWords): string {
  const mark = name.slice(role.length + 1)
  const isUnnamed = name === `${role} ${mark}` && mark.length === MARK_LENGTH && deviceId.startsWith(mark)
  return isUnnamed ? `${desk.screens.role[role]} ${mark}` : name
}

const MARK_LENGTH = 4
