import { describe, expect, it } from 'vitest'
import { steadyClock } from '../../server/live/steady-clock.ts'
import { epochMs } from '../../shared-core/units.ts'

describe("the server's time", () => {
  it.each([
    // wall, monotonic at each reading → the time told
    ['runs on', [1_000, 1_500], [0, 500], [1_000, 1_500]],
    [
      'is set back a day: time goes on at its pace',
      [100_000, 4_000, 4_500],
      [0, 500, 1_000],
      [100_000, 100_500, 101_000],
    ],
    ['is set forward: time follows', [1_000, 60_000], [0, 500], [1_000, 60_000]],
    ['is behind what was recorded before a restart', [500, 700], [0, 200], [2_000, 2_200]],
  ] as const)('[V3] given a machine whose clock %s', (_what, wall, monotonic, told) => {
    const walls = [...wall]
    const monotonics = [0, ...monotonic]
    const startMs = epochMs(_what.startsWith('is behind') ? 2_000 : 0)
    const now = steadyClock(
      startMs,
      () => walls.shift() ?? Number.NaN,
      () => monotonics.shift() ?? Number.NaN,
    )
    expect(told.map(() => now())).toEqual(told)
  })
})
