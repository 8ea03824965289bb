import { describe, expect, it } from 'vitest'
import { erlangC, steadyRun, WAITS } from './queueing-runs.ts'

const CUSTOMERS = 45_000
/** The others, and longer runs: `npm run reference`. */
const SOME = WAITS.filter(([servers, busy]) => busy === 0.7 && servers <= 3)

/**
 * The kitchen's simulator, run as a queue, against the theory of queues. A batch oven is no M/M/c: this checks the
 * routine, not the kitchen.
 */
describe('the simulated kitchen as a queue', () => {
  it.each([
    // Worked out with 1e-10; the fourth also published as "about 0.10" (120 an hour, 3 min, 10 servers).
    [1, 0.8, 0.8],
    [2, 1, 0.333333333333],
    [3, 2, 0.444444444444],
    [10, 6, 0.101299242687],
    [5, 4, 0.554112554113],
  ])('[M84] given %i servers under a load of %d, when Erlang’s C is worked out, then %d', (servers, load, share) => {
    expect(erlangC(servers, load)).toBeCloseTo(share, 9)
  })

  it.each(SOME)(
    '[M84] given M/M/%i at ρ = %d, when the kitchen’s hands are run so, then the mean wait is %d',
    (servers, busy, exponential) => {
      const run = steadyRun({ servers, busy, service: 'exponential', by: 'hands', seed: servers, customers: CUSTOMERS })
      expect(Math.abs(run.wait - exponential)).toBeLessThan(run.within)
      // The interval must be able to tell: a tenth of the wait at ρ = 0.7.
      expect(run.within).toBeLessThan(0.2 * exponential)
      const share = run.waits.filter((wait) => wait > 1e-9).length / run.waits.length
      expect(Math.abs(share - erlangC(servers, servers * busy))).toBeLessThan(0.02)
    },
  )

  it.each(SOME)(
    '[M84] given M/D/%i at ρ = %d, when places of the oven are run so, then the mean wait is as Crommelin says',
    (servers, busy, _exponential, fixed) => {
      const run = steadyRun({ servers, busy, service: 'fixed', by: 'oven', seed: 10 + servers, customers: CUSTOMERS })
      expect(Math.abs(run.wait - fixed)).toBeLessThan(run.within)
      expect(run.within).toBeLessThan(0.2 * fixed)
    },
  )

  it('[M84] given 20 orders an hour of 6 minutes each and three places, when they are run, then nine in ten wait 9 minutes at most', () => {
    // W > t with C e^−(cμ−λ)t: 90 % at 8.95 min, 19.3 % over 5 min; in mean services of 6 min.
    const run = steadyRun({
      servers: 3,
      busy: 2 / 3,
      service: 'exponential',
      by: 'hands',
      seed: 4,
      customers: CUSTOMERS,
    })
    const sorted = [...run.waits].sort((one, other) => one - other)
    expect(Math.abs(6 * (sorted[Math.floor(0.9 * sorted.length)] ?? 0) - 8.95)).toBeLessThan(0.5)
    expect(Math.abs(run.waits.filter((wait) => 6 * wait > 5).length / run.waits.length - 0.193)).toBeLessThan(0.02)
  })
})
