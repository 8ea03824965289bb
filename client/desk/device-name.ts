import type { DeviceId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import { shownName, unnamed } from '../live/unnamed.ts'
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
  return name === unnamed(role, deviceId) ? shownName({ role, name }, desk.screens.role[role]) : name
}
