import { describe, expect, it } from 'vitest'
import type { Ticker } from '../../client/live/ticker.ts'
import { msToBoundary, startTicker } from '../../client/live/ticker.ts'

/** Timers and a server time that only move when the test says so. */
function clockwork(startMs: number, options: { counting?: boolean } = {}) {
  const timers = new Map<number, { run: () => void; dueMs: number }>()
  const world = { nowMs: startMs, counting: options.counting ?? false, hidden: false, ticks: [] as number[] }
  let made = 0
  const ticker: Ticker = startTicker({
    serverNowMs: () => world.nowMs,
    speed: () => 1,
    onTick: () => world.ticks.push(world.nowMs),
    isCounting: () => world.counting,
    isHidden: () => world.hidden,
    timers: {
      set: (run, afterMs) => {
        made += 1
        timers.set(made, { run, dueMs: world.nowMs + afterMs })
        return made
      },
      clear: (timer) => timers.delete(timer),
    },
  })
  const passTo = (untilMs: number) => {
    for (;;) {
      const next = [...timers].filter(([, { dueMs }]) => dueMs <= untilMs).sort((a, b) => a[1].dueMs - b[1].dueMs)[0]
      if (next === undefined) break
      timers.delete(next[0])
      world.nowMs = next[1].dueMs
      next[1].run()
    }
    world.nowMs = untilMs
  }
  return { world, ticker, timers, passTo }
}

describe('the ticker', () => {
  it('[C14] given a start between seconds, then it ticks at once and then on each second of the server', () => {
    const { world, passTo } = clockwork(10_250)
    passTo(13_500)
    expect(world.ticks).toEqual([10_250, 11_000, 12_000, 13_000])
  })

  it('[C14] given something about to be due, then it ticks on each quarter', () => {
    const { world, passTo } = clockwork(10_100, { counting: true })
    passTo(11_000)
    expect(world.ticks).toEqual([10_100, 10_250, 10_500, 10_750, 11_000])
  })

  it('[C14] given a hidden page, then it rests, and ticks at once when shown', () => {
    const { world, ticker, timers, passTo } = clockwork(10_000)
    world.hidden = true
    passTo(60_300)
    expect([world.ticks, timers.size]).toEqual([[10_000], 0])
    world.hidden = false
    ticker.reset()
    passTo(61_000)
    expect(world.ticks).toEqual([10_000, 60_300, 61_000])
  })

  it('[C14] given reset many times, then there is still one timer; given stop, then none', () => {
    const { ticker, timers } = clockwork(10_000)
    for (let n = 0; n < 5; n += 1) ticker.reset()
    expect(timers.size).toBe(1)
    ticker.stop()
    expect(timers.size).toBe(0)
  })

  it('[C14] given the boundary itself, then a whole step', () => {
    expect([msToBoundary(1_250, 1_000), msToBoundary(2_000, 1_000), msToBoundary(2_001, 250)]).toEqual([
      750, 1_000, 249,
    ])
  })
})
