import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import '../fixed-seed.ts'
import { ServerClock } from '../../client/live/server-clock.ts'
import { startTicker } from '../../client/live/ticker.ts'
import { fastClock } from '../../server/live/fast-clock.ts'
import { readOptions } from '../../server/options.ts'
import { epochMs } from '../../shared-core/units.ts'
import { FakeClock } from '../client-live/support/fake-device.ts'

const START_MS = 1_800_000_000_000

/** A screen's device and a demo's server beside it: one real time, which passes for both. */
function beside(speed: number, deviceWall = START_MS - 3_600_000) {
  const real = { ms: 0 }
  const device = new FakeClock(deviceWall)
  const serverNow = fastClock(() => epochMs(START_MS + real.ms), speed)
  const screen = new ServerClock(device)
  const pass = (ms: number) => {
    real.ms += ms
    device.pass(ms)
  }
  const probe = (outMs: number, backMs: number) => {
    const t0 = device.monotonicMs()
    pass(outMs)
    const t1 = serverNow()
    pass(backMs)
    screen.heard({ t0, t1, t2: t1, t3: device.monotonicMs() })
  }
  screen.runsAt(speed)
  return { device, screen, serverNow, pass, probe }
}

describe('time that is sped up', () => {
  it('[Y1] given ten times as fast, when ten seconds pass, then the server’s are a hundred', () => {
    let realMs = START_MS
    const now = fastClock(() => epochMs(realMs), 10)
    expect(now()).toBe(START_MS)
    realMs += 10_000
    expect(now() - START_MS).toBe(100_000)
    const plain = () => epochMs(realMs)
    expect(fastClock(plain, 1)).toBe(plain)
  })

  it('[Y1] given any speed and any ways, when a screen has probed, then it counts on with the server within the error that it reports', () => {
    const ways = fc.record({ out: fc.integer({ min: 0, max: 400 }), back: fc.integer({ min: 0, max: 400 }) })
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.array(ways, { minLength: 1, maxLength: 6 }), (speed, all) => {
        const { screen, serverNow, pass, probe } = beside(speed)
        for (const { out, back } of all) {
          probe(out, back)
          for (const span of [40, 5_000, 60_000]) {
            pass(span)
            expect(Math.abs(screen.serverNowMs() - serverNow())).toBeLessThanOrEqual((screen.errorMs() ?? 0) + 1)
          }
        }
      }),
    )
  })

  it('[Y1] given a countdown of five minutes at ten times the speed, when half a real minute has passed, then it is over on the screen', () => {
    const { screen, serverNow, pass, probe } = beside(10)
    probe(10, 10)
    const dueMs = serverNow() + 300_000
    pass(29_000)
    expect(Math.round((dueMs - screen.serverNowMs()) / 1_000)).toBe(10)
    pass(1_000)
    expect(Math.abs(dueMs - screen.serverNowMs())).toBeLessThanOrEqual(screen.errorMs() ?? 0)
  })

  it('[Y1] given a device that slept, when it wakes, then what it slept counts at the server’s pace, and it asks anew', () => {
    const { device, screen, serverNow, pass, probe } = beside(10)
    probe(5, 5)
    pass(2_000)
    device.sleep(20_000)
    const beforeMs = screen.serverNowMs()
    expect(screen.noticeGap()).toBe(true)
    expect(screen.serverNowMs() - beforeMs).toBe(200_000)
    expect(screen.errorMs()).toBeGreaterThanOrEqual(200_000)
    expect(serverNow()).toBeLessThanOrEqual(screen.serverNowMs())
  })

  it('[Y1] given a server that is started again at another speed, when it says so, then what was measured is forgotten', () => {
    const { screen, probe } = beside(10)
    probe(5, 5)
    screen.runsAt(10)
    expect(screen.isKnown).toBe(true)
    screen.runsAt(1)
    expect([screen.isKnown, screen.errorMs()]).toEqual([false, null])
  })

  it('[Y1] given ten times as fast, when a screen ticks, then four times in a real second, on even instants of the server', () => {
    const ticks: number[] = []
    const world = { realMs: 0, run: () => {}, afterMs: 0 }
    const nowMs = () => START_MS + 1_300 + world.realMs * 10
    startTicker({
      serverNowMs: nowMs,
      speed: () => 10,
      onTick: () => ticks.push(nowMs() - START_MS),
      isCounting: () => false,
      isHidden: () => false,
      timers: {
        set: (run, afterMs) => {
          world.run = run
          world.afterMs = afterMs
          return 1
        },
        clear: () => undefined,
      },
    })
    for (let n = 0; n < 4; n += 1) {
      world.realMs += world.afterMs
      world.run()
    }
    expect(ticks).toEqual([1_300, 2_500, 5_000, 7_500, 10_000])
    expect(world.afterMs).toBe(250)
  })
})

describe('--speed and --no-name on the command line', () => {
  it.each([
    [[], 1],
    [['--speed', '10'], 10],
    [['--speed', '60'], 60],
  ])('[Y1, W7] given %j, then that speed', (args, speed) => {
    expect(readOptions(args, {})).toMatchObject({ ok: true, options: { speed, hasName: true } })
  })

  it.each(['0', '61', '1.5', 'fast', '-3', ''])(
    '[W7] given --speed=%s, then a sentence says what would be right',
    (text) => {
      const read = readOptions([`--speed=${text}`], {})
      expect(read).toEqual({
        ok: false,
        why: `--speed is "${text}"; it must be a whole number from 1 to 60, e.g. --speed 10.`,
      })
    },
  )

  it('[W7] given a real shop, when it is to be sped up, then it is refused', () => {
    expect(readOptions(['--shop', 'x', '--speed', '2'], {})).toMatchObject({
      ok: false,
      why: expect.stringContaining('real time'),
    })
  })

  it('[W7] given --no-name, then the server announces none', () => {
    expect(readOptions(['--no-name'], {})).toMatchObject({ ok: true, options: { hasName: false } })
  })
})
