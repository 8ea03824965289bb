import type { DeviceId } from '../../shared-core/ids.ts'
import type { JoinedDevice, NotJoined, Standing } from '../../shared-core/live/devices.ts'
import type { DeviceHello, Role, ToScreen, Welcome } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Headers } from './credentials.ts'
import { shownBy } from './credentials.ts'
import type { DeviceRecord } from './device-record.ts'
import { asJoined, isExpired, isLive } from './device-record.ts'
import type { DeviceChange, Membership } from './membership.ts'
import { RefusedLog } from './refused-log.ts'
import { tokenHash } from './token.ts'

/** What somebody may do here, by the secret that the request shows. */
export type Grant =
  /** The shop is open to everybody on its network. */
  | { readonly kind: 'open' }
  | { readonly kind: 'joined'; readonly id: string }
  | { readonly kind: 'out'; readonly why: NotJoined }

type RefusedHello = Extract<ToScreen, { type: 'refusedHello' }>
export type Greeted =
  | { readonly ok: true; readonly device: DeviceHello; readonly known: Welcome['device'] }
  | { readonly ok: false; readonly refusal: RefusedHello }

interface SaysHello {
  readonly device: DeviceHello
  /** It was given another name or station at itself. */
  readonly isRenamed: boolean
}

/** Who acts for the server itself, and for scripts of an open shop. */
const RESERVED_IDS: readonly string[] = ['server', 'http']

/**
 * Who comes in. HTTP and sockets ask it once for each request and each link; a message on a link costs nothing more,
 * since whoever must go is told at once.
 */
export class Door {
  readonly refused: RefusedLog
  /** Null: the shop is open, and nobody joins. */
  readonly membership: Membership | null
  readonly #now: () => EpochMs
  #linked: ReadonlySet<string> = new Set()

  constructor(membership: Membership | null, now: () => EpochMs) {
    this.membership = membership
    this.#now = now
    this.refused = new RefusedLog(now)
  }

  /** @param key that a link to a calendar has in its address; it counts where nothing else is shown */
  identify(headers: Headers, key: string | null = null): Grant {
    if (this.membership === null) return { kind: 'open' }
    const shown = shownBy(headers) ?? (key === null ? null : { token: key, kind: 'calendar' as const })
    if (shown === null) return { kind: 'out', why: 'no-token' }
    const { register } = this.membership
    const record = register.byTokenHash(tokenHash(shown.token))
    // Each kind of token has its own way in: a cookie's is no password for a script that found it somewhere.
    if (record === null || record.kind !== shown.kind) return { kind: 'out', why: 'forged' }
    if (!isLive(record, this.#now())) return { kind: 'out', why: whyOut(record) }
    register.saw(record.id)
    return { kind: 'joined', id: record.id }
  }

  /** A grant's device as it is now; null: it has none, or may come in no more. */
  deviceOf(grant: Grant): JoinedDevice | null {
    const record = this.#recordOf(grant)
    return record !== null && isLive(record, this.#now()) ? asJoined(record) : null
  }

  /** The device that a browser is or was, whether its token still holds or not. */
  before(headers: Headers): DeviceRecord | null {
    const shown = shownBy(headers)
    if (shown === null || shown.kind !== 'screen') return null
    const record = this.membership?.register.byTokenHash(tokenHash(shown.token)) ?? null
    return record?.kind === 'screen' ? record : null
  }

  standing(headers: Headers): Standing {
    const grant = this.identify(headers)
    const device = this.deviceOf(grant)
    if (this.membership === null) return { kind: 'open' }
    if (device !== null) return { kind: 'joined', device }
    if (this.membership.isUnclaimed) return { kind: 'unclaimed' }
    return { kind: 'unknown', why: this.#why(grant) }
  }

  /** A screen says hello on a link that came in with this grant. A name that it was given at itself is written down. */
  greet(grant: Grant, hello: SaysHello): Greeted {
    if (grant.kind === 'open') return { ok: true, device: hello.device, known: null }
    const device = this.deviceOf(grant)
    if (device === null) return { ok: false, refusal: { type: 'refusedHello', reason: this.#why(grant) } }
    if (!mayOpen(device.role, hello.device.role)) {
      return { ok: false, refusal: { type: 'refusedHello', reason: 'moved', role: device.role } }
    }
    if (!this.claim(hello.device.deviceId, device.id)) {
      return { ok: false, refusal: { type: 'refusedHello', reason: 'forged' } }
    }
    const told = toldBy(device, hello)
    if (told !== null) this.#write(device.id, told)
    const { name, stationId } = { ...device, ...told }
    const known = { name: name || hello.device.name, stationId }
    return { ok: true, device: { ...hello.device, ...known }, known }
  }

  /** @returns false when the id is another device's: nobody acts in another's name */
  claim(deviceId: DeviceId, id: string): boolean {
    return !RESERVED_IDS.includes(deviceId) && (this.membership?.register.claim(deviceId, id) ?? true)
  }

  /** Ids of the devices of which a screen was linked at the last tick. */
  get linked(): readonly string[] {
    return [...this.#linked]
  }

  /** Now and then. @param linked devices that have a link: they are in use, and one that has expired must go */
  tick(linked: readonly string[]): void {
    if (this.membership === null) return
    const { register } = this.membership
    this.#linked = new Set(linked)
    for (const id of this.#linked) {
      const record = register.byId(id)
      if (record !== null && isExpired(record, this.#now())) this.membership.onChanged(id)
      else register.saw(id)
    }
    register.flush()
    this.membership.keepAWayIn()
  }

  close(): void {
    this.membership?.register.close()
  }

  #write(id: string, change: DeviceChange): void {
    const register = this.membership?.register
    const record = register?.byId(id) ?? null
    if (record !== null) register?.save({ ...record, ...change })
  }

  #recordOf(grant: Grant): DeviceRecord | null {
    return grant.kind === 'joined' ? (this.membership?.register.byId(grant.id) ?? null) : null
  }

  #why(grant: Grant): NotJoined {
    if (grant.kind === 'out') return grant.why
    const record = this.#recordOf(grant)
    return record === null ? 'forged' : whyOut(record)
  }
}

/** A desk may open any screen, the others only that of their role. */
export function mayOpen(role: Role, page: Role): boolean {
  return role === 'desk' || role === page
}

/** What the device is called from now on, where it says so itself; null: what the register says. */
function toldBy(device: JoinedDevice, { device: said, isRenamed }: SaysHello): DeviceChange | null {
  if (isRenamed) return { name: said.name, stationId: said.stationId }
  return device.name === '' && said.role === device.role ? { name: said.name } : null
}

/** Who gave its token back itself has none; it was not shown out. */
function whyOut({ ended }: DeviceRecord): NotJoined {
  if (ended === null) return 'expired'
  return ended.by === 'desk' ? 'revoked' : 'no-token'
}
