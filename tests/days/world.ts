import type { Act } from '../../shared-core/day/commands.ts'
import { doughId } from '../../shared-core/ids.ts'
import type { Role, ToScreen } from '../../shared-core/live/protocol.ts'
import { setUpChanges } from '../../shared-core/shop/set-up-diff.ts'
import { epochMs } from '../../shared-core/units.ts'
import { lines } from '../core/support/make.ts'
import { Chance } from './chance.ts'
import { Checks } from './checks.ts'
import { SimClock } from './clocks.ts'
import { Crew } from './crew.ts'
import type { DayPlan } from './day-plan.ts'
import { planDay } from './day-plan.ts'
import type { Disk } from './disk.ts'
import { SimDisk } from './disk.ts'
import { Faults } from './faults.ts'
import { Mischief } from './mischief.ts'
import type { WorldOptions } from './options.ts'
import { Schedule } from './schedule.ts'
import { Screen } from './screens.ts'
import { ShopServer } from './shop-server.ts'
import { Story } from './story.ts'

const ROLES: readonly Role[] = ['desk', 'bench', 'counter', 'wall', 'bench']
/** Pages tick each second; where nothing is under way, ticks that would find nothing to do are left out. */
const TICK_SECONDS_MAX = 4
/** Lulls in which the server does its chores: a day has a dozen, as each fingerprint is reckoned by every screen. */
const CHORES_A_DAY = 10
/** Longest time that the shop may take, once nothing goes wrong any more, until all screens agree. */
const HEAL_SECONDS_MAX = 300
/** Screens ask for the server's time each minute. */
const CLOCK_SECONDS = 62
/** How long the next morning is looked at, as a share of the day. */
const NEXT_MORNING_SHARE = 0.12
const AN_HOUR_MS = 3_600_000

/** One simulated day: the real room and the real sync; clocks, network, disk and people drawn from one seed. */
export class World {
  readonly options: WorldOptions
  readonly plan: DayPlan
  readonly checks: Checks
  readonly story: Story
  readonly faults: Faults
  readonly screens: readonly Screen[]
  readonly #schedule: Schedule
  readonly #chance: Chance
  readonly #disk: Disk
  readonly #server: ShopServer
  readonly #mischief: Mischief
  readonly #crew: Crew
  #isOpen = false
  #isNight = false

  constructor(options: WorldOptions, disk: Disk = new SimDisk()) {
    this.options = options
    this.#disk = disk
    this.#chance = new Chance(options.seed)
    this.plan = planDay(options.dayMinutes, this.#chance.part('plan'))
    this.#schedule = new Schedule(this.plan.beginMs)
    this.story = new Story(this.#schedule, this.plan.offsetMs)
    this.faults = new Faults(this.story, options.without)
    this.checks = new Checks(disk)
    this.#server = this.#newServer()
    this.screens = ROLES.slice(0, options.screens).map((role, n) => this.#newScreen(role, `${role}-${n + 1}`))
    this.checks.watch(this.#server, this.screens)
    const parts = { schedule: this.#schedule, faults: this.faults, checks: this.checks, screens: this.screens }
    const server = this.#server
    this.#mischief = new Mischief({ ...parts, options, disk, server, chance: this.#chance.part('mischief') })
    this.#crew = new Crew({ ...parts, story: this.story, options, plan: this.plan, chance: this.#chance.part('crew') })
    this.#everySecond(1)
  }

  /** A day and the next morning with faults, then none. @returns what went wrong that must not; null when all held */
  async run(): Promise<string | null> {
    try {
      await this.#wholeDay()
    } catch (error) {
      this.checks.fail(`the day breaks off: ${error instanceof Error ? error.stack : String(error)}`)
    }
    return this.checks.trouble === null ? null : this.#report(this.checks.trouble)
  }

  async #wholeDay(): Promise<void> {
    await this.#open()
    this.#isOpen = true
    this.#crew.begin()
    const { beginMs, endMs, nextMs } = this.plan
    const untilMs = this.options.untilSecond === null ? Infinity : beginMs + this.options.untilSecond * 1_000
    await this.#passUntil(Math.min(untilMs, endMs))
    if (untilMs > endMs) await this.#night()
    if (untilMs > nextMs) await this.#passUntil(Math.min(untilMs, nextMs + (endMs - beginMs) * NEXT_MORNING_SHARE))
    if (this.checks.trouble === null) await this.#heal()
    if (this.checks.trouble === null) this.checks.atRest()
  }

  get atSecond(): number {
    return (this.#schedule.nowMs - this.plan.beginMs) / 1_000
  }

  /** Lets the day go on for a while, unless something has gone wrong. */
  async pass(seconds: number): Promise<void> {
    await this.#passUntil(this.#schedule.nowMs + seconds * 1_000)
  }

  async #passUntil(untilMs: number): Promise<void> {
    if (this.checks.trouble !== null) return
    await this.#schedule.runUntil(untilMs, () => {
      this.checks.step()
      return this.checks.trouble === null
    })
  }

  /** Before anything goes wrong the desk sets the shop up, and there is dough. */
  async #open(): Promise<void> {
    const desk = this.screens.find((screen) => screen.role === 'desk')
    const sinceMs = epochMs(this.plan.beginMs - 10 * AN_HOUR_MS)
    const carryIn = (dough: string, pieces: number): Act => {
      return { type: 'carryIn', doughId: doughId(dough), varietyId: null, pieces, stage: 'chill', sinceMs }
    }
    const loads = [lines('sesame', 24, 'poppy', 12), lines('plain', 48), lines('rye', 36)]
    const opening: readonly Act[] = [
      { type: 'changeSetUp', changes: setUpChanges(null, this.plan.shop) },
      carryIn('plain', 480),
      carryIn('rye', 120),
      { type: 'setLoadList', loads: loads.map((one) => ({ shelfId: null, inAtMs: null, lines: one })) },
    ]
    for (let seconds = 0; desk?.sync?.confirmed == null && this.checks.trouble === null; seconds += 1) {
      if (seconds > HEAL_SECONDS_MAX) this.checks.fail('the desk does not come up')
      await this.pass(1)
    }
    for (const act of opening) desk?.tap(act)
  }

  /** Everybody is at home, and pages sleep. */
  async #night(): Promise<void> {
    this.#isNight = true
    this.#crew.rest(true)
    const untilMs = this.plan.nextMs - this.#schedule.nowMs
    for (const screen of this.screens) screen.sleep(untilMs)
    await this.#passUntil(this.plan.nextMs)
    this.#isNight = false
    this.#crew.rest(false)
    this.#everySecond(1)
  }

  #everySecond(seconds: number): void {
    this.#schedule.in(seconds * 1_000, () => {
      if (this.#isNight) return
      for (const screen of this.screens) screen.sync?.tick()
      if (this.#isOpen) this.#passSeconds(seconds)
      const isBusy = this.screens.some((screen) => !screen.isUp || screen.hasWaiting)
      this.#everySecond(isBusy ? 1 : Math.min(TICK_SECONDS_MAX, seconds + 1))
    })
  }

  #passSeconds(seconds: number): void {
    this.#doChores(seconds)
    // After the server's clock was set, a screen is wrong until it has asked anew.
    if (!this.options.setsServerClock)
      for (const screen of this.screens) this.checks.clock(screen, this.#server.nowMs())
    if (!this.faults.calm) this.#mischief.strike(seconds)
  }

  #doChores(seconds: number): void {
    const everySeconds = (this.options.dayMinutes * 60) / CHORES_A_DAY
    const at = (ms: number) => Math.floor((ms - this.plan.beginMs) / 1_000 / everySeconds)
    const nowMs = this.#schedule.nowMs
    if (at(nowMs) === at(nowMs - seconds * 1_000)) return
    this.#server.beat()
    // By itself: a copy of a real file takes a while, in which nobody may close it.
    if (!this.faults.calm) this.#schedule.in(0, () => this.#mischief.copy())
  }

  async #heal(): Promise<void> {
    this.story.tell('world', 'heals')
    this.faults.calm = true
    this.#crew.rest(true)
    this.#mischief.heal()
    for (let seconds = 0; this.#unrest() !== '' && this.checks.trouble === null; seconds += 1) {
      await this.pass(1)
      if (seconds > HEAL_SECONDS_MAX)
        this.checks.fail(`not quiet ${HEAL_SECONDS_MAX} s after the last fault: ${this.#unrest()}`)
    }
    // Once more the screens ask for the time.
    await this.pass(CLOCK_SECONDS)
    for (const screen of this.screens) this.checks.clock(screen, this.#server.nowMs())
  }

  #unrest(): string {
    const { room, buildId } = this.#server
    if (room === null) return 'no server'
    const restless = this.screens.filter(({ sync, course, buildId: own }) => {
      const view = sync?.view()
      return (
        view?.connection.phase !== 'live' ||
        view.pending.length > 0 ||
        sync?.confirmed?.seq !== room.state.seq ||
        course !== this.#disk.course ||
        own !== buildId
      )
    })
    return restless.map(({ who, sync }) => `${who} ${JSON.stringify(sync?.view().connection)}`).join(', ')
  }

  #newServer(): ShopServer {
    const { bug, appendFaultPermille } = this.options
    return new ShopServer({
      disk: this.#disk,
      schedule: this.#schedule,
      chance: this.#chance.part('server'),
      faults: this.faults,
      story: this.story,
      appendFaultPermille,
      forgetsAnswers: bug === 'the server forgets its answers',
      miscounts: bug === 'the server miscounts a sale',
      onStop: () => this.#serverStopped(),
      onPutBack: (copy) => {
        if (bug === 'the copy lacks its last entry') this.#disk.loseLast()
        this.checks.putBack(copy)
      },
      onTrouble: (what) => this.checks.fail(what),
    })
  }

  #serverStopped(): void {
    this.story.tell('server', 'stops')
    if (this.options.bug === 'the disk forgets the last append') this.#disk.loseLast()
    for (const screen of this.screens) screen.serverGone()
  }

  #newScreen(role: Role, who: string): Screen {
    const { bug } = this.options
    const chance = this.#chance.part(who)
    const parts = { schedule: this.#schedule, story: this.story, faults: this.faults }
    const trustsItsClock = bug === 'a screen trusts its clock' && role === 'counter'
    const clock = new SimClock(this.#schedule, {
      wallAheadMs: chance.between(-90_000, 90_000),
      bootMs: chance.between(1_000, 10_000_000),
      // Two clocks part by at most 50 ppm; the server's is the true time.
      driftPpm: trustsItsClock ? 5_000 : chance.between(-48, 48),
    })
    return new Screen({
      ...parts,
      chance,
      who,
      role,
      clock,
      wire: { ...parts, chance: this.#chance.part(`${who} wire`), options: this.options, server: this.#server },
      servedBuild: () => (this.#server.room === null ? null : this.#server.buildId),
      deliver: (message, course, hear) => this.#deliver(who, message, course, hear),
      forgetsQueue: bug === 'a page forgets its queue',
      hidesFullStore: bug === 'a screen lets people tap what it cannot keep and does not say so',
      onTrouble: (what) => this.checks.fail(what),
    })
  }

  #deliver(who: string, message: ToScreen, course: string, hear: (message: ToScreen) => void): void {
    if (message.type === 'turn') for (const answer of message.answers) this.checks.answered(answer, who, course)
    if (message.type === 'welcome') this.#welcome(who, message.course)
    hear(this.options.bug === 'a screen loses an entry' && who === 'counter-3' ? emptied(message) : message)
  }

  #welcome(who: string, course: string): void {
    const screen = this.screens.find((one) => one.who === who)
    if (screen !== undefined) screen.course = course
  }

  #report(trouble: string): string {
    const faults = [...this.faults.counts].map(([kind, times]) => `${kind} ${times}`).join(', ')
    return [
      `seed ${this.options.seed}: ${trouble}`,
      JSON.stringify(this.options),
      `faults: ${faults}`,
      this.story,
    ].join('\n')
  }
}

/** A planted bug: of every seventh entry nothing is folded but its number. */
function emptied(message: ToScreen): ToScreen {
  if (message.type !== 'turn') return message
  const entries = message.entries.map((entry) => (entry.seq % 7 === 0 ? { ...entry, events: [] } : entry))
  return { ...message, entries }
}
