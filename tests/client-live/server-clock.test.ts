import { describe, expect, it } from 'vitest'
import { clockOffset, ServerClock } from '../../client/live/server-clock.ts'
import { FakeClock } from './support/fake-device.ts'

const SERVER_AHEAD = 1_699_999_000_000

/** One question and its answer: the device's clock moves while it is under way. */
function probe(
  server: ServerClock,
  device: FakeClock,
  ways: { outMs: number; backMs: number },
  trueAhead = SERVER_AHEAD,
) {
  const t0 = device.monotonicMs()
  device.pass(ways.outMs)
  const t1 = device.monotonicMs() + trueAhead
  device.pass(ways.backMs)
  server.heard({ t0, t1, t2: t1, t3: device.monotonicMs() })
}

function heardClock(ways = { outMs: 10, backMs: 10 }) {
  const device = new FakeClock()
  const server = new ServerClock(device)
  probe(server, device, ways)
  return { device, server }
}

describe('clockOffset', () => {
  it('[C10] given the worked example, then half of what differs, and half of the round trip', () => {
    expect(clockOffset({ t0: 1000, t1: 1510, t2: 1512, t3: 1022 })).toEqual({ offsetMs: 500, errorMs: 10 })
  })

  it.each([
    ['all of the way out', 40, 0],
    ['all of the way back', 0, 40],
    ['both alike', 20, 20],
  ])('[C10] given %s, then the true offset lies within the error', (_way, outMs, backMs) => {
    const measured = clockOffset({ t0: 0, t1: outMs + 500, t2: outMs + 503, t3: outMs + 3 + backMs })
    expect(Math.abs((measured?.offsetMs ?? Number.NaN) - 500)).toBeLessThanOrEqual(measured?.errorMs ?? -1)
  })

  it('[C10] given a clock stepped back mid-probe, then nothing is learnt', () => {
    expect(clockOffset({ t0: 1000, t1: 1510, t2: 1512, t3: 990 })).toBeNull()
    expect(clockOffset({ t0: 1000, t1: 1510, t2: 1560, t3: 1010 })).toBeNull()
  })
})

describe('the server’s time on a device', () => {
  it('[C12] given nothing heard yet, then it is the device’s own and claims no error', () => {
    const server = new ServerClock(new FakeClock(1_650_000_000_000))
    expect([server.isKnown, server.serverNowMs(), server.errorMs()]).toEqual([false, 1_650_000_000_000, null])
  })

  it('[C10] given one probe, then it counts with the monotonic clock and the error grows by 50 ppm', () => {
    const { device, server } = heardClock()
    const [atFirst, errorAtFirst] = [server.serverNowMs(), server.errorMs() ?? Number.NaN]
    device.pass(3_600_000)
    expect(server.serverNowMs() - atFirst).toBe(3_600_000)
    expect((server.errorMs() ?? Number.NaN) - errorAtFirst).toBeCloseTo(180, 6)
  })

  it('[C10] given somebody sets the device’s clock back a day, then nothing changes', () => {
    const { device, server } = heardClock()
    const before = [server.serverNowMs(), server.errorMs()]
    device.wall -= 86_400_000
    server.noticeGap()
    expect([server.serverNowMs(), server.errorMs()]).toEqual(before)
  })

  it('[C10] given a quicker probe after a slow one, then the quicker one counts', () => {
    const { device, server } = heardClock({ outMs: 150, backMs: 50 })
    expect(server.errorMs()).toBeGreaterThan(100)
    probe(server, device, { outMs: 2, backMs: 2 })
    device.pass(10_000)
    expect(server.errorMs()).toBeLessThan(6)
    expect(server.serverNowMs() - device.monotonicMs() - SERVER_AHEAD).toBeCloseTo(0, 6)
  })

  it('[C10] given a slower probe after a quick one, then the quick one stays until it is worn', () => {
    const { device, server } = heardClock({ outMs: 5, backMs: 5 })
    probe(server, device, { outMs: 100, backMs: 0 })
    expect(server.errorMs()).toBeLessThan(10)
    device.pass(3 * 3_600_000)
    probe(server, device, { outMs: 100, backMs: 0 })
    expect(server.errorMs()).toBeLessThan(110)
  })

  it('[C10] given the estimate falls back by half a second, then time runs slower and never backwards', () => {
    const { device, server } = heardClock({ outMs: 1_000, backMs: 0 })
    let last = server.serverNowMs()
    probe(server, device, { outMs: 0, backMs: 0 })
    for (let step = 0; step < 100; step += 1) {
      const now = server.serverNowMs()
      expect(now).toBeGreaterThanOrEqual(last)
      expect(Math.abs(now - device.monotonicMs() - SERVER_AHEAD)).toBeLessThanOrEqual((server.errorMs() ?? -1) + 0.5)
      last = now
      device.pass(100)
    }
    expect(server.errorMs()).toBeLessThan(3)
  })

  it('[C10] given sleep while the monotonic clock stands still, then the time goes on and says how unsure it is', () => {
    const { device, server } = heardClock()
    const before = server.serverNowMs()
    device.sleep(600_000)
    expect(server.noticeGap()).toBe(true)
    expect(server.serverNowMs() - before).toBe(600_000)
    expect(server.errorMs()).toBeGreaterThanOrEqual(600_000)
    probe(server, device, { outMs: 3, backMs: 3 }, SERVER_AHEAD + 600_000)
    expect(server.errorMs()).toBeLessThan(10)
  })

  it('[C10] given seconds pass as they should, then there is no gap; naps too short to tell go into the error', () => {
    const { device, server } = heardClock()
    device.pass(3_600_000)
    expect(server.noticeGap()).toBe(false)
    const before = server.errorMs() ?? Number.NaN
    device.sleep(100)
    expect([server.noticeGap(), server.errorMs()]).toEqual([false, before + 100])
    device.sleep(100)
    expect([server.noticeGap(), server.errorMs()]).toEqual([false, before + 200])
    device.sleep(100)
    expect([server.noticeGap(), server.errorMs()]).toEqual([true, before + 300])
  })

  it('[C10] given the server’s own clock is set, then the newer probe counts, however slow', () => {
    const { device, server } = heardClock({ outMs: 1, backMs: 1 })
    probe(server, device, { outMs: 50, backMs: 50 }, SERVER_AHEAD + 5_000)
    expect(Math.abs(server.serverNowMs() - device.monotonicMs() - SERVER_AHEAD - 5_000)).toBeLessThanOrEqual(60)
  })

  it('[C11] given two screens whose clocks are 90 s apart and lines that differ, then they agree within their errors', () => {
    const one = heardClock({ outMs: 80, backMs: 5 })
    const other = new FakeClock(one.device.wall + 90_000, 77_000)
    const otherServer = new ServerClock(other)
    const ahead = one.device.monotonicMs() + SERVER_AHEAD - other.monotonicMs()
    const startMs = other.monotonicMs()
    probe(otherServer, other, { outMs: 1, backMs: 30 }, ahead)
    one.device.pass(other.monotonicMs() - startMs)
    const apartMs = Math.abs(one.server.serverNowMs() - otherServer.serverNowMs())
    expect(apartMs).toBeLessThanOrEqual((one.server.errorMs() ?? 0) + (otherServer.errorMs() ?? 0))
    expect(apartMs).toBeGreaterThan(10)
  })
})
