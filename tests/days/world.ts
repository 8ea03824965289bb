import type { Act } from '../../shared-core/day/commands.ts'
import { doughId } from '../../shared-core/ids.ts'
import type { Role, ToScreen } from '../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { epochMs } from '../../shared-core/units.ts'
import { at, lines } from '../core/support/make.ts'
import { ALL_STATIONS, PEOPLE, STEPS, shopWith, table } from '../core/support/shop.ts'
import { Chance } from './chance.ts'
import { Checks } from './checks.ts'
import { SimClock } from './clocks.ts'
import type { WorldOptions } from './options.ts'
import { nextAct } from './people.ts'
import { Schedule } from './schedule.ts'
import { Screen } from './screens.ts'
import { ShopServer } from './shop-server.ts'
import { Story } from './story.ts'

const ROLES: readonly Role[] = ['bench', 'wall', 'counter', 'desk', 'bench']
const CHORES_SECONDS = 40
/** Longest time that the shop may take, once nothing goes wrong any more, until all screens agree. */
const HEAL_SECONDS_MAX = 300
/** Screens ask for the server's time each minute. */
const CLOCK_SECONDS = 62
const A_MINUTE_MS = 60_000
const AN_HOUR_MS = 60 * A_MINUTE_MS

/** One simulated day: the real room and the real sync; clocks, network, disk and people drawn from one seed. */
export class World {
  readonly options: WorldOptions
  readonly checks = new Checks()
  readonly story: Story
  readonly screens: readonly Screen[]
  readonly #schedule = new Schedule(at('4:00'))
  readonly #chance: Chance
  readonly #server: ShopServer
  #calm = false

  constructor(options: WorldOptions) {
    this.options = options
    this.#chance = new Chance(options.seed)
    this.story = new Story(this.#schedule)
    const parts = { schedule: this.#schedule, chance: this.#chance, story: this.story }
    this.#server = new ShopServer({
      ...parts,
      appendFaultPermille: options.appendFaultPermille,
      forgetsAnswers: options.bug === 'the server forgets its answers',
      onStop: () => this.#serverStopped(),
      onTrouble: (what) => this.checks.fail(what),
    })
    this.screens = ROLES.map((role, n) => this.#newScreen(role, `${role}-${n + 1}`))
    this.checks.watch(this.#server, this.screens)
  }

  /** A morning with faults, then none. @returns what went wrong that must not; null when all held */
  async run(): Promise<string | null> {
    await this.#open()
    for (const screen of this.screens) this.#workAt(screen)
    this.#everySecond()
    await this.pass(this.options.minutes * 60)
    this.#heal()
    for (let seconds = 0; !this.#isQuiet() && this.checks.trouble === null; seconds += 1) {
      await this.pass(1)
      if (seconds > HEAL_SECONDS_MAX)
        this.checks.fail(`not quiet ${HEAL_SECONDS_MAX} s after the last fault: ${this.#unrest()}`)
    }
    // Once more the screens ask for the time.
    await this.pass(CLOCK_SECONDS)
    for (const screen of this.screens) this.checks.clock(screen, this.#server.nowMs())
    if (this.checks.trouble === null) this.checks.atRest()
    if (this.story.faults.size === 0) this.checks.fail('nothing went wrong in this run, so that it proves nothing')
    if (this.checks.counts.refused === 0) this.checks.fail('nothing was refused in this run')
    return this.checks.trouble === null ? null : this.#report(this.checks.trouble)
  }

  /** Lets the day go on for a while, unless something has gone wrong. */
  async pass(seconds: number): Promise<void> {
    if (this.checks.trouble !== null) return
    await this.#schedule.runUntil(this.#schedule.nowMs + seconds * 1_000, () => {
      this.checks.step()
      return this.checks.trouble === null
    })
  }

  /** Before anything goes wrong the desk sets the shop up, and there is dough. */
  async #open(): Promise<void> {
    const desk = this.screens.find((screen) => screen.role === 'desk')
    const opening: readonly Act[] = [
      {
        type: 'changeSetUp',
        changes: setUpChanges(
          null,
          shopWith({ stations: table(ALL_STATIONS), steps: table(STEPS), people: table(PEOPLE) }),
        ),
      },
      {
        type: 'carryIn',
        doughId: doughId('plain'),
        varietyId: null,
        pieces: 480,
        stage: 'chill',
        sinceMs: at('18:00', -1),
      },
      {
        type: 'carryIn',
        doughId: doughId('rye'),
        varietyId: null,
        pieces: 120,
        stage: 'chill',
        sinceMs: at('18:00', -1),
      },
      {
        type: 'setLoadList',
        loads: [lines('sesame', 24, 'poppy', 12), lines('plain', 48), lines('rye', 36)].map((one) => ({
          shelfId: null,
          inAtMs: null,
          lines: one,
        })),
      },
    ]
    while (desk?.sync?.confirmed == null && this.checks.trouble === null) await this.pass(1)
    for (const act of opening) desk?.tap(act)
  }

  #workAt(screen: Screen): void {
    this.#schedule.in(this.#chance.between(200, 2 * this.options.actEveryMs), () => {
      if (this.#calm) return
      this.#act(screen)
      this.#workAt(screen)
    })
  }

  #act(screen: Screen): void {
    const { sync } = screen
    const { shown, notices } = sync?.view() ?? { shown: null, notices: [] }
    if (sync === null || shown === null || shown.shop === null) return
    const [notice] = notices
    if (notice !== undefined && this.#chance.permille(500)) {
      this.story.tell(screen.who, `answers ${notice.id.slice(0, 6)} ${notice.kind}`)
      if (notice.kind === 'ask' && this.#chance.permille(600)) sync.confirm(notice.id)
      else sync.dismiss(notice.id)
      return
    }
    const act = nextAct(shown, { role: screen.role, deviceId: sync.deviceId, chance: this.#chance })
    screen.tap(act)
    if (!this.#chance.permille(this.options.samePermille)) return
    const other = this.#chance.oneOf(this.screens)
    if (other === screen || other.sync?.view().shown == null) return
    this.story.fault('same-tap', other.who)
    other.tap(act)
  }

  #everySecond(): void {
    this.#schedule.in(1_000, () => {
      // Each time after a lull all screens reckon a fingerprint, which is most of a day's work.
      if (Math.round(this.#schedule.nowMs / 1_000) % CHORES_SECONDS === 0) this.#server.beat()
      // After the server's clock was set, a screen is wrong until it has asked anew.
      const isClockSteady = this.options.serverClockPermille === 0
      if (isClockSteady) for (const screen of this.screens) this.checks.clock(screen, this.#server.nowMs())
      if (!this.#calm) this.#befall()
      this.#everySecond()
    })
  }

  #befall(): void {
    for (const screen of this.screens) {
      if (this.#chance.permille(this.options.devicePermille)) {
        screen.befall(this.#chance.oneOf(['cut', 'cut', 'stall', 'reload', 'clock-step', 'sleep'] as const))
      }
    }
    if (this.#chance.permille(this.options.serverClockPermille)) {
      const byMs = this.#chance.oneOf([-2_000, 3_000, -40 * A_MINUTE_MS, 2 * AN_HOUR_MS, 40 * AN_HOUR_MS])
      this.#server.clockAheadMs += byMs
      this.story.fault('server-clock-step', 'server', `${byMs} ms`)
    }
    if (!this.#chance.permille(this.options.newBuildPermille)) return
    this.#server.buildId = `build-${this.#chance.between(2, 1_000_000)}`
    this.story.fault('new-build', 'server')
    this.#server.stop()
  }

  #serverStopped(): void {
    this.story.tell('server', 'stops')
    if (this.options.bug === 'the disk forgets the last append' && this.#chance.permille(500)) {
      const text = this.#server.disk.entries.pop()
      if (text !== undefined) this.#server.disk.seqOf.delete(JSON.parse(text).commandId)
    }
    for (const screen of this.screens) screen.serverGone()
  }

  #heal(): void {
    this.story.tell('world', 'heals')
    this.#calm = true
    this.#server.calm = true
    for (const screen of this.screens) screen.calm()
  }

  #isQuiet(): boolean {
    return this.#unrest() === ''
  }

  #unrest(): string {
    const { room, buildId } = this.#server
    if (room === null) return 'no server'
    const restless = this.screens.filter(({ sync, buildId: own }) => {
      const view = sync?.view()
      return (
        view?.connection.phase !== 'live' ||
        view.pending.length > 0 ||
        sync?.confirmed?.seq !== room.state.seq ||
        own !== buildId
      )
    })
    return restless.map(({ who, sync }) => `${who} ${JSON.stringify(sync?.view().connection)}`).join(', ')
  }

  #newScreen(role: Role, who: string): Screen {
    const { options } = this
    const chance = this.#chance
    const parts = { schedule: this.#schedule, chance, story: this.story }
    const trustsItsClock = options.bug === 'a screen trusts its clock' && who === 'wall-2'
    const clock = new SimClock(this.#schedule, {
      wallAheadMs: chance.between(-90_000, 90_000),
      bootMs: chance.between(1_000, 10_000_000),
      // Two clocks part by at most 50 ppm; the server's is the true time.
      driftPpm: trustsItsClock ? 5_000 : chance.between(-48, 48),
    })
    return new Screen({
      ...parts,
      who,
      role,
      clock,
      wire: { ...parts, options, server: this.#server },
      servedBuild: () => (this.#server.room === null ? null : this.#server.buildId),
      deliver: (message, hear) => this.#deliver(who, message, hear),
    })
  }

  #deliver(who: string, message: ToScreen, hear: (message: ToScreen) => void): void {
    if (message.type === 'turn') for (const answer of message.answers) this.checks.answered(answer, who)
    hear(this.options.bug === 'a screen loses an entry' && who === 'wall-2' ? this.#withoutOne(message) : message)
  }

  #withoutOne(message: ToScreen): ToScreen {
    if (message.type !== 'turn' || !this.#chance.permille(30)) return message
    return {
      ...message,
      entries: message.entries.map((entry) => ({ ...entry, recordedAtMs: epochMs(entry.recordedAtMs), events: [] })),
    }
  }

  #report(trouble: string): string {
    const faults = [...this.story.faults].map(([kind, times]) => `${kind} ${times}`).join(', ')
    return [
      `seed ${this.options.seed}: ${trouble}`,
      JSON.stringify(this.options),
      `faults: ${faults}`,
      String(this.story),
    ].join('\n')
  }
}
