import { COOKIE } from '../../../server/devices/credentials.ts'
import { DeviceRegister } from '../../../server/devices/device-register.ts'
import { Door } from '../../../server/devices/door.ts'
import type { Joined } from '../../../server/devices/membership.ts'
import { Membership } from '../../../server/devices/membership.ts'
import { loadSqlite } from '../../../server/journal/sqlite.ts'
import type { Role } from '../../../shared-core/live/protocol.ts'
import { epochMs } from '../../../shared-core/units.ts'
import { codesFrom } from './join.ts'

const sqlite = await loadSqlite()

/** A shop's door with a clock that the test moves, and codes that it knows: the terminal's is "000000". */
export class DoorWorld {
  nowMs = epochMs(1_796_000_000_000)
  readonly told: string[] = []
  readonly changed: string[] = []
  readonly register: DeviceRegister
  readonly membership: Membership
  readonly door: Door
  #addresses = 0

  constructor(file = ':memory:') {
    const now = () => this.nowMs
    this.register = new DeviceRegister(sqlite, file, now)
    const tellTerminal = (code: string) => this.told.push(code)
    this.membership = new Membership({ register: this.register, now, tellTerminal, drawCode: codesFrom(0) })
    this.membership.onChanged = (id) => this.changed.push(id)
    this.membership.open(false)
    this.door = new Door(this.membership, now)
  }

  pass(ms: number): void {
    this.nowMs = epochMs(this.nowMs + ms)
  }

  /** Each try from an address of its own, unless one is given. */
  type(code: string, { from = `10.0.0.${++this.#addresses}`, before = null as string | null } = {}): Joined {
    const headers = before === null ? {} : { cookie: `${COOKIE}=${before}` }
    return this.membership.join({ code, name: '', from, before: this.door.before(headers) })
  }

  letIn(role: Role, before: string | null = null) {
    const code = this.membership.isUnclaimed
      ? this.membership.codes.terminalCode
      : this.membership.codes.make({ role, name: '', stationId: null })?.code
    const joined = this.type(code ?? 'none', { before })
    if (joined.kind !== 'joined') throw new Error(joined.kind)
    return { id: joined.device.id, token: joined.token, headers: { cookie: `${COOKIE}=${joined.token}` } }
  }

  standing(headers: { cookie?: string; authorization?: string }): string {
    const standing = this.door.standing(headers)
    return standing.kind === 'unknown' ? standing.why : standing.kind
  }
}
