import { randomId } from '../../client/live/random-id.ts'
import type { SavedText } from '../../client/live/saved-text.ts'
import { ScreenSync } from '../../client/live/screen-sync.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import { decide } from '../../shared-core/day/decide.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { Role } from '../../shared-core/live/protocol.ts'
import type { Chance } from './chance.ts'
import type { SimClock } from './clocks.ts'
import type { Faults } from './faults.ts'
import type { WireParts } from './network.ts'
import { Wire } from './network.ts'
import type { Schedule } from './schedule.ts'
import type { Story } from './story.ts'
import { sayAct } from './story.ts'

export interface ScreenParts {
  readonly who: string
  readonly role: Role
  readonly schedule: Schedule
  readonly chance: Chance
  readonly faults: Faults
  readonly story: Story
  readonly clock: SimClock
  readonly wire: Omit<WireParts, 'who' | 'deliver'>
  /** The build that a page loaded now would be; null while the server that serves it is down. */
  readonly servedBuild: () => string | null
  readonly deliver: WireParts['deliver']
  /** Planted bugs. */
  readonly forgetsQueue: boolean
  readonly hidesFullStore: boolean
  readonly onTrouble: (what: string) => void
}

/** A device on the wall or in a hand: the real sync in a page that can be reloaded, with a store that survives it. */
export class Screen {
  readonly who: string
  readonly role: Role
  readonly clock: SimClock
  readonly saved = new Store()
  /** Taps that the sync took, by command. */
  readonly tapped = new Map<CommandId, Act>()
  /** Taps that the device could not keep, as it told, and that went with their page. */
  readonly gone = new Set<CommandId>()
  /** Of the last welcome. */
  course: string | null = null
  readonly #parts: ScreenParts
  #unkept: CommandId[] = []
  #page: { readonly sync: ScreenSync; readonly wire: Wire; readonly buildId: string } | null = null
  #isAsleep = false
  #naps = 0

  constructor(parts: ScreenParts) {
    this.who = parts.who
    this.role = parts.role
    this.clock = parts.clock
    this.#parts = parts
    this.#load()
  }

  /** Null while the page is loading, or asleep. */
  get sync(): ScreenSync | null {
    return this.#isAsleep ? null : (this.#page?.sync ?? null)
  }

  get buildId(): string | null {
    return this.#page?.buildId ?? null
  }

  get isUp(): boolean {
    return !this.#isAsleep && this.#page?.wire.isUp === true
  }

  /** Whether taps wait for an answer, as far as the store knows. */
  get hasWaiting(): boolean {
    return this.saved.isFull || this.saved.hasKey(`boilboard.${this.role}.queue.`)
  }

  /** @returns the command's id; null when nothing can be tapped now */
  tap(act: Act): CommandId | null {
    const { sync } = this
    if (sync === null) return null
    sync.touched()
    const id = sync.send(act)
    if (id === null) return null
    this.tapped.set(id, act)
    this.#parts.story.tell(this.who, () => `${sayAct(act)} (${id.slice(0, 6)})`)
    if (!this.saved.isFull) return id
    this.#unkept.push(id)
    const isTold = !this.#parts.hidesFullStore && sync.view().notices.some(({ kind }) => kind === 'not-saved')
    if (!isTold) this.#parts.onTrouble(`${this.who} cannot keep the tap ${id} and does not say so`)
    return id
  }

  reload(): void {
    this.#page?.wire.close()
    this.#page = null
    for (const id of this.#unkept.splice(0)) this.gone.add(id)
    if (this.#parts.forgetsQueue) this.saved.forget(`boilboard.${this.role}.queue.`)
    this.#parts.schedule.in(this.#parts.chance.between(300, 3_000), () => this.#load())
  }

  /** Nothing reaches it for a while. */
  cut(forMs: number): void {
    this.#page?.wire.cut(forMs)
  }

  stall(): void {
    this.#page?.wire.stall()
  }

  /** Whether there is a page that something can happen to. */
  get isAwake(): boolean {
    return this.#page !== null && !this.#isAsleep
  }

  sleep(forMs: number): void {
    if (!this.#isAsleep) this.clock.sleep()
    this.#isAsleep = true
    this.#page?.wire.cut(forMs)
    this.#naps += 1
    const nap = this.#naps
    this.#parts.schedule.in(forMs, () => {
      if (nap === this.#naps) this.#wake()
    })
  }

  /** Somebody takes it up, where there is contact. */
  heal(): void {
    this.#naps += 1
    if (this.#isAsleep) this.#wake()
    this.#page?.wire.free()
    this.saved.isFull = false
  }

  serverGone(): void {
    this.#page?.wire.serverGone()
  }

  #wake(): void {
    this.clock.wake()
    this.#isAsleep = false
    this.sync?.tick()
  }

  #load(): void {
    const { schedule, servedBuild } = this.#parts
    const buildId = servedBuild()
    if (buildId === null || this.#isAsleep) schedule.in(2_000, () => this.#load())
    else this.#open(buildId)
  }

  #open(buildId: string): void {
    const { chance, clock, deliver, role, story, wire: wireParts } = this.#parts
    const wires: Wire[] = []
    const sync = new ScreenSync({
      decide,
      openLink: (events) => {
        const wire = new Wire({ ...wireParts, who: this.who, deliver }, events)
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
      device: () => ({ name: this.who, role, stationId: null }),
      buildId,
      reload: () => {
        story.tell(this.who, 'reloads itself')
        this.reload()
      },
      moveTo: () => undefined,
      named: () => undefined,
      onChange: () => undefined,
    })
    const [wire] = wires
    if (wire !== undefined) this.#page = { sync, wire, buildId }
  }
}

/** The device's disk: it outlives the page, and may have no room left. */
export class Store implements SavedText {
  isFull = false
  readonly #texts = new Map<string, string>()

  read(key: string): string | null {
    return this.#texts.get(key) ?? null
  }

  write(key: string, text: string): boolean {
    if (this.isFull) return false
    this.#texts.set(key, text)
    return true
  }

  remove(key: string): void {
    this.#texts.delete(key)
  }

  keys(prefix: string): string[] {
    return [...this.#texts.keys()].filter((key) => key.startsWith(prefix))
  }

  hasKey(prefix: string): boolean {
    for (const key of this.#texts.keys()) if (key.startsWith(prefix)) return true
    return false
  }

  forget(prefix: string): void {
    for (const key of this.keys(prefix)) this.#texts.delete(key)
  }
}
