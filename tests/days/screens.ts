import { randomId } from '../../client/live/random-id.ts'
import type { SavedText } from '../../client/live/saved-text.ts'
import { ScreenSync } from '../../client/live/screen-sync.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { Role, ToScreen } from '../../shared-core/live/protocol.ts'
import type { Chance } from './chance.ts'
import type { SimClock } from './clocks.ts'
import type { WireParts } from './network.ts'
import { Wire } from './network.ts'
import type { Schedule } from './schedule.ts'
import type { Story } from './story.ts'

export interface ScreenParts {
  readonly who: string
  readonly role: Role
  readonly schedule: Schedule
  readonly chance: Chance
  readonly story: Story
  readonly clock: SimClock
  readonly wire: Omit<WireParts, 'who' | 'deliver'>
  /** The build that a page loaded now would be; null while the server that serves it is down. */
  readonly servedBuild: () => string | null
  readonly deliver: (message: ToScreen, hear: (message: ToScreen) => void) => void
}

const BEAT_MS = 1_000

/** A device on the wall or in a hand: the real sync in a page that can be reloaded, with a store that survives it. */
export class Screen {
  readonly who: string
  readonly role: Role
  readonly clock: SimClock
  readonly saved = new Store()
  /** Taps that the sync took, by command. */
  readonly tapped = new Map<CommandId, Act>()
  readonly #parts: ScreenParts
  #page: { readonly sync: ScreenSync; readonly wire: Wire; readonly buildId: string } | null = null
  #isAsleep = false
  #calm = false

  constructor(parts: ScreenParts) {
    this.who = parts.who
    this.role = parts.role
    this.clock = parts.clock
    this.#parts = parts
    this.#load()
    this.#beat()
  }

  /** Null while the page is loading, or asleep. */
  get sync(): ScreenSync | null {
    return this.#isAsleep ? null : (this.#page?.sync ?? null)
  }

  get buildId(): string | null {
    return this.#page?.buildId ?? null
  }

  tap(act: Act): void {
    const { sync } = this
    if (sync === null) return
    sync.touched()
    const id = sync.send(act)
    if (id === null) return
    this.tapped.set(id, act)
    this.#parts.story.tell(this.who, `${JSON.stringify(act)} as ${id.slice(0, 6)}`)
  }

  reload(): void {
    this.#page?.wire.close()
    this.#page = null
    this.#parts.schedule.in(this.#parts.chance.between(300, 3_000), () => this.#load())
  }

  /** One of the things that happen to devices. */
  befall(fault: 'cut' | 'stall' | 'reload' | 'clock-step' | 'sleep'): void {
    const { chance, story } = this.#parts
    const forMs = chance.between(300, 20_000)
    if (this.#page === null || this.#isAsleep) return
    story.fault(fault, this.who)
    if (fault === 'cut') this.#page.wire.cut(forMs)
    else if (fault === 'stall') this.#page.wire.stall()
    else if (fault === 'reload') this.reload()
    else if (fault === 'sleep') this.#sleep(forMs)
    else this.clock.step(chance.between(-7_200_000, 7_200_000))
  }

  serverGone(): void {
    this.#page?.wire.serverGone()
  }

  calm(): void {
    this.#calm = true
    if (this.#page !== null) this.#page.wire.calm = true
  }

  #load(): void {
    const { chance, schedule, clock, servedBuild } = this.#parts
    const buildId = servedBuild()
    if (buildId === null || this.#isAsleep) {
      schedule.in(2_000, () => this.#load())
      return
    }
    const wires: Wire[] = []
    const sync = new ScreenSync({
      openLink: (events) => {
        const wire = new Wire({ ...this.#parts.wire, who: this.who, deliver: this.#parts.deliver }, events)
        wire.calm = this.#calm
        wires.push(wire)
        return wire
      },
      saved: this.saved,
      clock,
      makeId: () =>
        randomId((bytes) =>
          bytes.forEach((_, at) => {
            bytes[at] = chance.between(0, 255)
          }),
        ),
      device: () => ({ name: this.who, role: this.role, stationId: null }),
      buildId,
      reload: () => {
        this.#parts.story.tell(this.who, 'reloads itself')
        this.reload()
      },
      moveTo: (role) => this.#parts.story.tell(this.who, `is a ${role} now`),
      named: () => undefined,
      onChange: () => undefined,
    })
    const [wire] = wires
    if (wire !== undefined) this.#page = { sync, wire, buildId }
  }

  #beat(): void {
    this.sync?.tick()
    this.#parts.schedule.in(BEAT_MS, () => this.#beat())
  }

  #sleep(forMs: number): void {
    this.#isAsleep = true
    this.clock.sleep()
    this.#page?.wire.cut(forMs)
    this.#parts.schedule.in(forMs, () => {
      this.clock.wake()
      this.#isAsleep = false
      this.sync?.tick()
    })
  }
}

/** The device's disk: it outlives the page. */
class Store implements SavedText {
  readonly #texts = new Map<string, string>()

  read(key: string): string | null {
    return this.#texts.get(key) ?? null
  }

  write(key: string, text: string): boolean {
    this.#texts.set(key, text)
    return true
  }

  remove(key: string): void {
    this.#texts.delete(key)
  }

  keys(prefix: string): string[] {
    return [...this.#texts.keys()].filter((key) => key.startsWith(prefix))
  }
}
