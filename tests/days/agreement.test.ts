import { describe, expect, it } from 'vitest'
import { calmOptions } from './options.ts'
import type { Screen } from './screens.ts'
import { World } from './world.ts'

/** The time that a screen counts down by, and how far it says that it may be off. */
function timeOf({ sync, who }: Screen): { readonly nowMs: number; readonly errorMs: number } {
  const errorMs = sync?.serverClock.errorMs()
  if (sync == null || errorMs == null) throw new Error(`${who} has not heard the server's clock`)
  return { nowMs: sync.serverClock.serverNowMs(), errorMs }
}

describe('two screens whose clocks are 90 s apart', () => {
  // The error is at most half a round trip of the slowest ways, reading and a minute's drift; four probes do better.
  it.each([
    ['a quick network', 10, 20],
    ['a slow one', 400, 250],
  ])(
    '[C11] given %s, then they count down together within the errors that they report',
    async (_network, delayMsMax, errorMsMax) => {
      const world = new World({ ...calmOptions(1, 12), delayMsMax })
      const [one, other] = world.screens
      if (one === undefined || other === undefined) throw new Error('two screens are needed')
      other.clock.step(one.clock.wallMs() - other.clock.wallMs() + 90_000)
      await world.pass(10)
      for (let second = 0; second < 600; second += 1) {
        await world.pass(1)
        const [a, b] = [timeOf(one), timeOf(other)]
        expect(Math.abs(a.nowMs - b.nowMs)).toBeLessThanOrEqual(a.errorMs + b.errorMs)
        expect(Math.max(a.errorMs, b.errorMs)).toBeLessThan(errorMsMax)
      }
      expect(other.clock.wallMs() - one.clock.wallMs()).toBe(90_000)
      expect(world.checks.trouble).toBeNull()
    },
  )

  it('[C11] given one sleeps and its clock is set, then they agree again once it has asked', async () => {
    const world = new World({ ...calmOptions(2, 12), delayMsMax: 20 })
    const [one, other] = world.screens
    if (one === undefined || other === undefined) throw new Error('two screens are needed')
    await world.pass(10)
    other.sleep(20_000)
    other.clock.step(-3_600_000)
    await world.pass(40)
    const [a, b] = [timeOf(one), timeOf(other)]
    expect(Math.abs(a.nowMs - b.nowMs)).toBeLessThanOrEqual(a.errorMs + b.errorMs)
    expect(Math.max(a.errorMs, b.errorMs)).toBeLessThan(30)
  })
})
