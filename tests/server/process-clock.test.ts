import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Entry } from '../../shared-core/day/events.ts'
import { toSetUpFile } from '../../shared-core/shop/set-up-export.ts'
import { epochMs } from '../../shared-core/units.ts'
import { lines } from '../core/support/make.ts'
import { shopWith } from '../core/support/shop.ts'
import { Chance } from '../days/chance.ts'
import { KillsScreen } from '../kills/screen.ts'
import { ServerProcess, withServerProcesses } from './support/server-process.ts'
import { ask } from './support/start-server.ts'
import { tempFolder } from './support/temp-folder.ts'

withServerProcesses()

const SHIFTED_CLOCK = fileURLToPath(new URL('./support/shifted-clock.mjs', import.meta.url))
const SELL = { type: 'sell', lines: lines('sesame', 1) } as const
const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS
const ZONE = 'America/Chicago'
/** A loaded machine may be slow; every wait here is for something that happens by itself. */
const PATIENCE = { timeout: 25_000, interval: 20 }
const HUNG_MS = 90_000

const ending: (() => unknown)[] = []
afterEach(async () => {
  for (const end of ending.splice(0).toReversed()) await end()
})

/** A shop on a machine whose clock the test sets, and a screen with a clock of its own. */
class Machine {
  readonly #folder = tempFolder()
  readonly #clock = join(this.#folder, 'clock')
  #port = 0
  #screen: KillsScreen | null = null

  async start(): Promise<void> {
    const setUp = join(this.#folder, 'set-up.json')
    writeFileSync(setUp, JSON.stringify(toSetUpFile(shopWith())))
    const args = ['--shop', join(this.#folder, 'shop'), '--setup', setUp]
    const env = { CLOCK_FILE: this.#clock, PORT: String(this.#port) }
    const server = new ServerProcess(args, env, undefined, { nodeArgs: ['--import', SHIFTED_CLOCK] })
    this.#port = await server.port()
    ending.push(() => server.kill('SIGKILL'))
    this.restart = async () => {
      await server.kill('SIGKILL')
      await this.start()
    }
    this.#screen ??= this.#newScreen()
    await vi.waitFor(() => expect(this.screen.isLive).toBe(true), PATIENCE)
  }

  restart: () => Promise<void> = () => this.start()

  get screen(): KillsScreen {
    if (this.#screen === null) throw new Error('not started')
    return this.#screen
  }

  /** The machine's clock is set so far from the true time. */
  setOff(byMs: number): void {
    writeFileSync(this.#clock, String(byMs))
  }

  setTo(atMs: number): void {
    this.setOff(atMs - Date.now())
  }

  /** A sale that is rung up now: when it was recorded, and the screen's time before and after. */
  async sale() {
    this.screen.send(SELL)
    const fromMs = this.screen.nowMs
    await vi.waitFor(() => expect(this.screen.pending).toBe(0), PATIENCE)
    const toMs = this.screen.nowMs
    const recordedAtMs = (await this.entries()).at(-1)?.recordedAtMs ?? 0
    return { fromMs, recordedAtMs, toMs }
  }

  async entries(): Promise<readonly Entry[]> {
    return ((await ask({ port: this.#port }, '/api/v1/events')).json as { entries: Entry[] }).entries
  }

  async health(): Promise<string> {
    return (await ask({ port: this.#port }, '/api/health')).text
  }

  #newScreen(): KillsScreen {
    const parts = { who: 'counter', role: 'counter', buildId: 'process-test', chance: new Chance(1) } as const
    const screen = new KillsScreen({ ...parts, address: `http://127.0.0.1:${this.#port}`, told: () => undefined })
    ending.push(() => screen.stop())
    return screen
  }
}

/** After the screen has asked for the time anew: a sale is recorded when the screen says that it is rung up. */
async function expectSynced(machine: Machine): Promise<void> {
  machine.screen.woke()
  await vi.waitFor(async () => {
    const { recordedAtMs, fromMs, toMs } = await machine.sale()
    const errorMs = machine.screen.clockErrorMs ?? 0
    expect(recordedAtMs).toBeGreaterThanOrEqual(fromMs - errorMs - 1)
    expect(recordedAtMs).toBeLessThanOrEqual(toMs + errorMs + 1)
  }, PATIENCE)
}

describe('a machine whose clock is set while the shop is open', { timeout: HUNG_MS }, () => {
  it('[W15] given steps forth and back and a restart in between, then recorded time never goes back and the screen counts right after its next sync', async () => {
    const machine = new Machine()
    machine.setOff(0)
    await machine.start()
    await expectSynced(machine)
    for (const byMs of [2 * HOUR_MS, -3 * HOUR_MS, 3 * HOUR_MS]) {
      machine.setOff(byMs)
      await expectSynced(machine)
    }
    machine.setOff(-24 * HOUR_MS)
    await machine.sale()
    expect(await machine.health()).toMatch(/set back|behind/)
    await machine.restart()
    await expectSynced(machine)
    const times = (await machine.entries()).map(({ recordedAtMs }) => recordedAtMs)
    expect(times).toEqual(times.toSorted((one, other) => one - other))
    expect((times.at(-1) ?? 0) - (times[0] ?? 0)).toBeGreaterThan(2 * HOUR_MS)
  })
})

/**
 * The zone's changes in 2027: clocks go forward on the second Sunday of March at 2:00 and back on the first Sunday of
 * November at 2:00 (15 U.S.C. § 260a, from memory). Local times are compared with the IANA data that Node carries.
 */
const CHANGES = [
  ['forward in spring', Date.UTC(2027, 2, 14, 8), ['1:59', '3:00']],
  ['back in autumn', Date.UTC(2027, 10, 7, 7), ['1:59', '1:00']],
] as const

describe('a night in which the clocks change', { timeout: HUNG_MS }, () => {
  it.each(CHANGES)(
    '[W16] given clocks that go %s, when the shop is open through it, then screens have the local time of the IANA data and count the time that passes',
    async (_what, changeMs, wall) => {
      const machine = new Machine()
      machine.setTo(changeMs - MINUTE_MS)
      await machine.start()
      await expectSynced(machine)
      const before = await machine.sale()
      const { screen } = machine
      expect([screen.localTime(epochMs(changeMs - 1)), screen.localTime(epochMs(changeMs))]).toEqual(wall)
      machine.setTo(changeMs + MINUTE_MS)
      await expectSynced(machine)
      const after = await machine.sale()
      const passedMs = after.recordedAtMs - before.recordedAtMs
      expect(passedMs).toBeGreaterThanOrEqual(MINUTE_MS)
      expect(passedMs).toBeLessThan(HOUR_MS / 2)
      const iana = new Intl.DateTimeFormat('en-US', { timeZone: ZONE, hour: 'numeric', minute: '2-digit' })
      for (let atMs = changeMs - 3 * HOUR_MS; atMs <= changeMs + 3 * HOUR_MS; atMs += 7 * MINUTE_MS)
        expect(screen.localTime(epochMs(atMs))).toBe(iana.format(atMs).replace(/\s[AP]M$/, ''))
    },
  )
})
