import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { ClockWatch } from '../../server/operation/clock-watch.ts'
import { freeMbOf } from '../../server/operation/free-space.ts'
import { HealthWatch } from '../../server/operation/health-watch.ts'
import { watchLateness } from '../../server/operation/lateness.ts'
import type { HealthReason } from '../../shared-core/live/health.ts'
import { HEALTH_CODES, healthReason, healthStatus } from '../../shared-core/live/health.ts'
import { tempFolder } from './support/temp-folder.ts'

const NOW_MS = Date.UTC(2026, 10, 26, 5)

/** A machine whose clocks, disk and room a test sets as it likes. */
class Machine {
  wallMs = NOW_MS
  monotonicMs = 0
  behindMs = 0
  freeMb: number | null = 10_000
  lateMs = 0
  behind = 0
  failure: string | null = null
  trouble: string | null = null
  others: HealthReason[] = []
  readonly logged: string[] = []
  readonly watch: HealthWatch

  constructor() {
    const line = (level: string) => (_details: unknown, text?: string) => this.logged.push(`${level}: ${text}`)
    const machine = this
    this.watch = new HealthWatch({
      room: this,
      history: this,
      clock: new ClockWatch({
        wall: () => this.wallMs,
        monotonic: () => this.monotonicMs,
        behindMs: () => this.behindMs,
      }),
      lateness: {
        tick: () => undefined,
        stop: () => undefined,
        get lateMs() {
          return machine.lateMs
        },
      },
      monotonic: () => this.monotonicMs,
      freeMb: async () => this.freeMb,
      others: [() => this.others],
      log: { info: line('info'), warn: line('warn'), error: line('error') } as never,
    })
  }

  /** So much time passes, looked at in between. */
  async pass(ms: number, stepMs = 1_000): Promise<void> {
    for (let passed = 0; passed < ms; passed += stepMs) {
      this.wallMs += stepMs
      this.monotonicMs += stepMs
      this.watch.tick()
    }
    await Promise.resolve()
  }

  codes(): readonly string[] {
    return this.watch.reasons().map(({ code }) => code)
  }
}

describe('how the server is', () => {
  it('[N4] given nothing wrong, when asked, then ok without a reason', async () => {
    const machine = new Machine()
    await machine.pass(120_000)
    expect([machine.watch.reasons(), healthStatus(machine.watch.reasons()), machine.logged]).toEqual([[], 'ok', []])
  })

  it.each([
    ['journal-failed', 'failing', { failure: 'gone', trouble: 'gone' }],
    ['disk-failing', 'failing', { trouble: 'full' }],
    ['disk-nearly-full', 'warning', { freeMb: 499 }],
    ['clock-set-back', 'warning', { behindMs: 5_000 }],
    ['clock-wrong-year', 'warning', { wallMs: Date.UTC(1970, 0, 2) }],
    ['clock-wrong-year', 'warning', { wallMs: Date.UTC(2099, 0, 2), wasSo: true }],
    ['slow-answers', 'warning', { lateMs: 201 }],
    ['history-behind', 'ok', { behind: 5_000 }],
    ['no-copy', 'warning', { others: [healthReason('no-copy', 'warning')] }],
  ] as const)('[N4] given what leads to %s, when asked, then %s and a whole sentence', async (code, status, set) => {
    const machine = new Machine()
    Object.assign(machine, set)
    await machine.pass(1_000)
    const reasons = machine.watch.reasons()
    expect(reasons.map((reason) => reason.code)).toContain(code)
    expect(healthStatus(reasons)).toBe(status)
    for (const { text } of reasons) expect(text).toMatch(/^[A-Z].*\.$/)
  })

  it.each([
    { freeMb: 500 },
    { freeMb: null },
    { behindMs: 4_999 },
    { lateMs: 200 },
    { behind: 4_999 },
    { wallMs: Date.UTC(2046, 11, 30) },
  ])('[N4] given just enough, %o, when asked, then no reason', async (set) => {
    const machine = new Machine()
    await machine.pass(1_000)
    const fresh = new Machine()
    Object.assign(fresh, set)
    await fresh.pass(31_000)
    expect(fresh.codes().filter((code) => code !== 'clock-jumped')).toEqual([])
  })

  it('[N5] given a clock that is set ahead, when it ran on, then it is told for half a day; a small correction is not', async () => {
    const machine = new Machine()
    await machine.pass(10_000)
    machine.wallMs += 59_000
    await machine.pass(10_000)
    expect(machine.codes()).toEqual([])
    machine.wallMs += 3_600_000
    await machine.pass(10_000)
    expect(machine.watch.reasons()).toMatchObject([{ code: 'clock-jumped', params: { minutes: 60 } }])
    await machine.pass(12 * 3_600_000, 60_000)
    expect(machine.codes()).toEqual([])
  })

  it('[N6] given a reason, when it lasts, then it is logged once as it comes up and once as it is over', async () => {
    const machine = new Machine()
    machine.trouble = 'full'
    await machine.pass(60_000)
    machine.trouble = null
    await machine.pass(60_000)
    expect(machine.logged).toEqual([expect.stringMatching(/^error: .*disk/), 'info: this is over'])
  })

  it('[N4] given a disk, when asked what is free, then a number of MB; a folder that is gone has none', async () => {
    expect(await freeMbOf(tempFolder())).toBeGreaterThan(0)
    expect(await freeMbOf('/no/such/folder')).toBeNull()
  })

  it('[N4] given work that held everything up, when its spell is over, then it is told until the next spell is over', () => {
    const looks = [320e6, 21e6]
    const monitor = {
      enable: () => true,
      disable: () => true,
      reset: () => looks.shift(),
      percentile: () => looks[0] ?? 0,
    }
    const watch = watchLateness(0, monitor)
    const told = [59_999, 60_000, 119_999, 120_000].map((nowMs) => {
      watch.tick(nowMs)
      return watch.lateMs
    })
    expect(told).toEqual([0, 300, 300, 1])
  })

  it("[N4] given the engine's own monitor, when it is read, then it is in milliseconds", async () => {
    const watch = watchLateness(0)
    let round = 0
    const lateMs = () => {
      round += 1
      // What held it up is measured by the monitor's next look, so it is asked a round later.
      if (round % 2 === 0) watch.tick(round * 60_000)
      else for (const untilMs = performance.now() + 120; performance.now() < untilMs; ) Math.sqrt(untilMs)
      return watch.lateMs
    }
    await expect.poll(lateMs, { timeout: 5_000 }).toBeGreaterThanOrEqual(90)
    expect(watch.lateMs).toBeLessThan(60_000)
    watch.stop()
  })

  it.each(HEALTH_CODES)('[N4] given %s, then the notes for whoever looks after a server say what to do', (code) => {
    const notes = readFileSync(join(import.meta.dirname, '../../server/operation/operation.md'), 'utf8')
    expect(notes.split('\n').filter((line) => line.startsWith('| `') && line.includes(`\`${code}\``))).toHaveLength(1)
  })
})
