import type { Entry } from '../../shared-core/day/events.ts'
import type { State } from '../../shared-core/day/state.ts'
import type {
  DeviceHello,
  OutlookTold,
  PlanTold,
  ShopClock,
  ToScreen,
  Welcome,
} from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Journal } from '../journal/journal.ts'
import type { DetailsPlace } from '../orders/put-down.ts'

/** A link to one screen. Messages arrive in order or the link is lost. */
export interface ScreenLink {
  send(message: ToScreen): void
  close(): void
}

export interface RoomParts {
  readonly journal: Journal
  /** The running shop; the room is the only one that changes it. */
  readonly state: State
  readonly now: () => EpochMs
  /** Runs something when all that has arrived in this turn of the event loop has been handed over. */
  readonly endOfTurn: (run: () => void) => void
  /** Sends one message to many links; a server can encode it once for all. */
  readonly broadcast: (links: ReadonlySet<ScreenLink>, message: ToScreen) => void
  /** The shop's date at an instant, YYYY-MM-DD. */
  readonly localDate: (atMs: EpochMs) => string
  readonly clock: () => ShopClock
  readonly buildId: string
  readonly version: string
  readonly demo: Welcome['demo']
  readonly log: Log
  /** Where it is put down whom orders are for; left out: nowhere. */
  readonly details?: DetailsPlace
  /** Hears of a device that tried what its role may not. */
  readonly onNotYourRole?: (device: DeviceHello) => void
  /** What was told last of advice, for a screen that joins. */
  readonly advice?: () => readonly (OutlookTold | PlanTold)[]
  /** Hears of every turn that is on disk. */
  readonly onEntries?: (entries: readonly Entry[]) => void
}

export interface Log {
  error(details: object, message: string): void
}

/** A turn could not be written: nothing of it was done. */
export class RoomFailure extends Error {
  override name = 'RoomFailure'
}
