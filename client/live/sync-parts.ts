import type { Decide } from '../../shared-core/day/decide-with.ts'
import type { DeviceHello, Role } from '../../shared-core/live/protocol.ts'
import type { OpenLink } from './link.ts'
import type { SavedText } from './saved-text.ts'
import type { DeviceClock } from './server-clock.ts'
import type { LiveState } from './shop-store.ts'

/** All that a screen's sync needs of the world around it. */
export interface SyncParts {
  /** By the server's rules, for what this screen may do. */
  readonly decide: Decide
  readonly openLink: OpenLink
  readonly saved: SavedText
  readonly clock: DeviceClock
  readonly makeId: () => string
  readonly device: () => Omit<DeviceHello, 'deviceId'>
  readonly buildId: string
  /** Loads the page anew; what is saved survives it. */
  readonly reload: () => void
  /** Goes to another screen's page: this device is that one now. */
  readonly moveTo: (role: Role) => void
  /** The server says what this device is called and where it stands. */
  readonly named: (device: Pick<DeviceHello, 'name' | 'stationId'>) => void
  /** Something that `view` gives has changed. */
  readonly onChange: () => void
}

/** What a screen knows of the shop and its connection; the store adds the time and the settings. */
export type SyncView = Omit<LiveState, 'nowMs' | 'clockErrorMs' | 'settings'>
