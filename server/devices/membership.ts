import type { DeviceKind, JoinedDevice } from '../../shared-core/live/devices.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import type { DeviceRecord } from './device-record.ts'
import { asJoined, isLive } from './device-record.ts'
import type { DeviceRegister } from './device-register.ts'
import { DEVICES_MAX } from './device-register.ts'
import type { CodeParts, Tried } from './join-codes.ts'
import { JoinCodes } from './join-codes.ts'
import { newDeviceRecordId, newToken, tokenHash } from './token.ts'

const A_DAY_MS = 86_400_000

export type Joined =
  | { readonly kind: 'joined'; readonly device: JoinedDevice; readonly token: string }
  | Exclude<Tried, { kind: 'right' }>
  | { readonly kind: 'full' }

interface Joining {
  /** Six digits. */
  readonly code: string
  /** What the device calls itself; "": nothing yet. */
  readonly name: string
  /** Whose wrong codes are counted together. */
  readonly from: string
  /** The device that this browser was before, whether its token still holds or not; null: none. */
  readonly before: DeviceRecord | null
}

export interface NewToken {
  readonly token: string
  readonly device: JoinedDevice
}

interface AskedToken {
  readonly kind: DeviceKind
  readonly name: string
  readonly role: Role
  /** Null: without an end. */
  readonly days: number | null
}

/** What the desk may change about a device. */
export type DeviceChange = Partial<Pick<JoinedDevice, 'name' | 'role' | 'stationId'>>
/** `last-desk`: without it nobody could let anybody in. */
export type Changed = JoinedDevice | 'unknown' | 'last-desk'

export interface MembershipParts extends CodeParts {
  readonly register: DeviceRegister
  /** Hears the terminal's code whenever there is another one. */
  readonly tellTerminal: (code: string) => void
}

/** Which devices belong to a shop: how one joins, what the desk makes of it, how it goes. */
export class Membership {
  readonly register: DeviceRegister
  readonly codes: JoinCodes
  readonly #now: () => EpochMs
  readonly #tellTerminal: (code: string) => void
  /** Told the id of a device that may not, or may do something else, from now on. */
  onChanged: (id: string) => void = () => undefined

  constructor({ register, now, tellTerminal, ...codes }: MembershipParts) {
    this.register = register
    this.#now = now
    this.#tellTerminal = tellTerminal
    this.codes = new JoinCodes({ now, ...codes })
  }

  /** Whether no desk has joined, so that the terminal's code is the only way in. */
  get isUnclaimed(): boolean {
    return this.#desks().length === 0
  }

  /** @param isDeskLost opens a code though the shop has desks */
  open(isDeskLost: boolean): void {
    if (this.isUnclaimed) this.codes.openTerminal('unclaimed')
    else if (isDeskLost) this.codes.openTerminal('hour')
  }

  /** A shop whose desks are gone is claimed anew, by whoever reads its terminal. */
  keepAWayIn(): void {
    if (!this.isUnclaimed || this.codes.terminalCode !== null) return
    this.codes.openTerminal('unclaimed')
    this.#tellAgain()
  }

  /**
   * A browser that was here before and still shows its old token goes on as the same device, whose old token ends: rights
   * change only together with the secret.
   */
  join({ code, name, from, before }: Joining): Joined {
    if (this.register.isFull) return { kind: 'full' }
    const tried = this.codes.look(code, from)
    if (tried.kind === 'too-many' && tried.hasVoided) this.#tellAgain()
    if (tried.kind !== 'right') return tried
    const { role, stationId } = tried.code
    const token = newToken()
    const nowMs = this.#now()
    const record = this.register.save({
      id: before?.id ?? newDeviceRecordId(),
      kind: 'screen',
      tokenHash: tokenHash(token),
      name: tried.code.name || name || (before?.role === role ? before.name : ''),
      role,
      stationId,
      joinedAtMs: before?.joinedAtMs ?? nowMs,
      seenAtMs: nowMs,
      scriptEndsAtMs: null,
      ended: null,
    })
    this.codes.spend(code)
    if (before !== null) this.onChanged(record.id)
    this.keepAWayIn()
    return { kind: 'joined', device: asJoined(record), token }
  }

  /** Those that may come in, in the order in which they joined. */
  devices(): readonly JoinedDevice[] {
    return this.register.live().map(asJoined)
  }

  /** For a till, a sensor, a script. @returns null when there are as many devices as there may be */
  makeToken(asked: { name: string; role: Role; days: number | null }): NewToken | null {
    return this.#makeToken({ ...asked, kind: 'script' })
  }

  /** For a link to a calendar: it is for that alone, and holds until the desk ends it. @returns null: likewise */
  makeCalendarToken(name: string): NewToken | null {
    return this.#makeToken({ name, role: 'counter', days: null, kind: 'calendar' })
  }

  #makeToken({ name, role, days, kind }: AskedToken): NewToken | null {
    if (this.register.isFull) return null
    const token = newToken()
    const nowMs = this.#now()
    const record = this.register.save({
      ...{ id: newDeviceRecordId(), kind, tokenHash: tokenHash(token), name, role, stationId: null },
      ...{ joinedAtMs: nowMs, seenAtMs: null, ended: null },
      scriptEndsAtMs: days === null ? null : epochMs(nowMs + days * A_DAY_MS),
    })
    return { token, device: asJoined(record) }
  }

  /** Takes hold at once: the device's links end, and it comes back as what it now is. */
  change(id: string, change: DeviceChange): Changed {
    const record = this.#live(id)
    if (record === null) return 'unknown'
    if (change.role !== undefined && change.role !== 'desk' && this.#isLastDesk(id)) return 'last-desk'
    // A calendar is for its one page, whatever it is called.
    const role = record.kind === 'calendar' ? record.role : (change.role ?? record.role)
    const changed = this.register.save({ ...record, ...change, role })
    this.onChanged(id)
    return asJoined(changed)
  }

  /** By the desk, at once. */
  showOut(id: string): Changed {
    const record = this.#live(id)
    if (record === null) return 'unknown'
    if (this.#isLastDesk(id)) return 'last-desk'
    this.#end(record, 'desk')
    return asJoined(record)
  }

  /** The device gives its token back, the last desk too. */
  leave(id: string): void {
    const record = this.#live(id)
    if (record !== null) this.#end(record, 'itself')
  }

  #end(record: DeviceRecord, by: 'desk' | 'itself'): void {
    this.register.save({ ...record, ended: { by, atMs: this.#now() } })
    this.onChanged(record.id)
    this.keepAWayIn()
  }

  #live(id: string): DeviceRecord | null {
    const record = this.register.byId(id)
    return record !== null && isLive(record, this.#now()) ? record : null
  }

  #tellAgain(): void {
    const code = this.codes.terminalCode
    if (code !== null) this.#tellTerminal(code)
  }

  #desks(): readonly DeviceRecord[] {
    return this.register.live().filter(({ kind, role }) => kind === 'screen' && role === 'desk')
  }

  #isLastDesk(id: string): boolean {
    const desks = this.#desks()
    return desks.length === 1 && desks[0]?.id === id
  }
}

/** Said to a desk that wants one more. */
export const TOO_MANY_DEVICES = `The shop has ${DEVICES_MAX} devices, the most that there may be. Show out some that are not used any more.`
