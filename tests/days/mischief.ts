import type { Chance } from './chance.ts'
import type { Checks } from './checks.ts'
import type { Copy, Disk } from './disk.ts'
import type { FaultKind, Faults } from './faults.ts'
import type { WorldOptions } from './options.ts'
import type { Schedule } from './schedule.ts'
import type { Screen } from './screens.ts'
import type { ShopServer } from './shop-server.ts'

const A_MINUTE_MS = 60_000
const AN_HOUR_MS = 60 * A_MINUTE_MS
/** How long a nap, a dead spot or a full store lasts; a few naps are too short to be noticed by a clock. */
const SPELL_MS = [300, 20_000] as const
/** Now and then it is minutes: a tablet in a drawer. */
const LONGER = [1, 1, 1, 20] as const
const SHOWN_OUT_MS = [5_000, 90_000] as const
/** Room on a device comes back more slowly than contact. */
const FULL_LONGER = 3
const DISK_SPELL_MS = [3_000, 40_000] as const
const DEVICE_FAULTS = ['cut', 'cut', 'stall', 'reload', 'clock-step', 'sleep', 'store-full', 'shown-out'] as const
const SERVER_FAULTS = ['stop', 'disk-full', 'disk-slow', 'new-build', 'server-clock-step', 'restore'] as const
const COPIES_KEPT = 4

export interface MischiefParts {
  readonly options: WorldOptions
  readonly schedule: Schedule
  readonly chance: Chance
  readonly faults: Faults
  readonly checks: Checks
  readonly disk: Disk
  readonly server: ShopServer
  readonly screens: readonly Screen[]
}

/** What happens to devices, to the server and to its disk from outside. */
export class Mischief {
  readonly #parts: MischiefParts
  readonly #copies: Copy[] = []
  readonly #shownOut = new Set<Screen>()
  #restores = 0

  constructor(parts: MischiefParts) {
    this.#parts = parts
  }

  /** What a span of some seconds brings. */
  strike(seconds: number): void {
    const { options, chance, screens } = this.#parts
    for (const screen of screens) {
      if (chance.permille(options.devicePermille * seconds)) this.#strikeDevice(screen)
    }
    if (chance.permille(options.serverPermille * seconds)) this.#strikeServer(chance.oneOf(SERVER_FAULTS))
  }

  /** A copy is put by, as the shop does of itself now and then. */
  copy(): void {
    const { schedule, disk, checks } = this.#parts
    const made = disk.copy().then((copy) => {
      checks.copied(copy)
      this.#copies.push(copy)
      if (this.#copies.length > COPIES_KEPT) this.#copies.shift()
    })
    schedule.owe(made)
  }

  /** Nothing stays broken. */
  heal(): void {
    for (const screen of this.#parts.screens) screen.heal()
    for (const screen of this.#shownOut) this.#parts.server.letIn(screen.who)
  }

  #strikeDevice(screen: Screen): void {
    const { schedule, chance, faults } = this.#parts
    const kind = chance.oneOf(DEVICE_FAULTS)
    const forMs = chance.between(...SPELL_MS) * chance.oneOf(LONGER)
    const stepMs = chance.between(-7_200_000, 7_200_000)
    const outMs = chance.between(...SHOWN_OUT_MS)
    if (!screen.isAwake || !faults.happens(kind, screen.who, () => wordsOf(kind, forMs, stepMs))) return
    if (kind === 'cut') screen.cut(forMs)
    else if (kind === 'stall') screen.stall()
    else if (kind === 'reload') screen.reload()
    else if (kind === 'sleep') screen.sleep(forMs)
    else if (kind === 'clock-step') screen.clock.step(stepMs)
    else if (kind === 'shown-out') this.#showOut(screen, outMs)
    else {
      screen.saved.isFull = true
      schedule.in(FULL_LONGER * forMs, () => {
        screen.saved.isFull = false
      })
    }
  }

  #showOut(screen: Screen, forMs: number): void {
    const { schedule, server } = this.#parts
    this.#shownOut.add(screen)
    server.showOut(screen.who)
    schedule.in(forMs, () => server.letIn(screen.who))
  }

  #strikeServer(kind: (typeof SERVER_FAULTS)[number]): void {
    const { options, chance, faults, server } = this.#parts
    const forMs = chance.between(...DISK_SPELL_MS)
    const stepMs = chance.oneOf([-2_000, 3_000, -40 * A_MINUTE_MS, 2 * AN_HOUR_MS, 40 * AN_HOUR_MS])
    const build = chance.between(2, 1_000_000)
    if (kind === 'server-clock-step' && !options.setsServerClock) return
    if (kind === 'restore') {
      this.#restore()
      return
    }
    if (!faults.happens(kind, 'server', () => wordsOf(kind, forMs, stepMs))) return
    if (kind === 'disk-full' || kind === 'disk-slow') server.trouble(kind, forMs)
    else if (kind === 'server-clock-step') server.clockAheadMs += stepMs
    else {
      if (kind === 'new-build') server.buildId = `build-${build}`
      server.stop()
    }
  }

  #restore(): void {
    const { options, chance, faults, server } = this.#parts
    const drawn = chance.word()
    const copy = this.#copies[drawn % Math.max(1, this.#copies.length)]
    if (copy === undefined || server.room === null) return
    if (!faults.happens('restore', 'server', `of entry ${copy.seq}`)) return
    this.#restores += 1
    const isOldCourse = options.bug === 'a copy put back is on the old course'
    server.restore(copy, isOldCourse ? server.course : `course-${this.#restores}`)
  }
}

function wordsOf(kind: FaultKind, forMs: number, stepMs: number): string {
  if (kind === 'cut' || kind === 'sleep') return `for ${forMs} ms`
  if (kind === 'disk-full' || kind === 'disk-slow') return `for ${forMs} ms`
  if (kind === 'store-full') return `for ${FULL_LONGER * forMs} ms`
  return kind.endsWith('clock-step') ? `by ${stepMs} ms` : ''
}
