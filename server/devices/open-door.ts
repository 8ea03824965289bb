import type { EpochMs } from '../../shared-core/units.ts'
import type { Sqlite } from '../journal/sqlite.ts'
import { DeviceRegister } from './device-register.ts'
import { Door } from './door.ts'
import { Membership } from './membership.ts'

export interface Closed {
  /** Where the register of devices lies. */
  readonly file: string
  /** Opens the terminal's code though the shop has desks. */
  readonly isDeskLost: boolean
  readonly tellTerminal: (code: string) => void
  /** For tests that must know the codes: else they are drawn. */
  readonly drawCode?: () => string
}

/**
 * A shop's door for the time that it serves.
 * @param closed null: everybody on the network may choose a screen
 * @throws JournalError when the register cannot be read
 */
export function openDoor(sqlite: Sqlite, now: () => EpochMs, closed: Closed | null): Door {
  if (closed === null) return new Door(null, now)
  const { file, isDeskLost, ...parts } = closed
  const membership = new Membership({ register: new DeviceRegister(sqlite, file, now), now, ...parts })
  membership.open(isDeskLost)
  return new Door(membership, now)
}
