import { describe, expect, it } from 'vitest'
import { stepDown, stepUp } from '../../client/parts/steps.ts'

describe('steps', () => {
  it.each([
    // from step  down  up   by boards of six and by pieces, 0 to 48
    [12, 6, 6, 18],
    [13, 6, 12, 18],
    [17, 6, 12, 18],
    [3, 6, 0, 6],
    [0, 6, 0, 6],
    [48, 6, 42, 48],
    [47, 6, 42, 48],
    [13, 1, 12, 14],
  ])('from %i by %i go down to %i and up to %i', (value, step, down, up) => {
    const range = { step, min: 0, max: 48 }
    expect([stepDown(value, range), stepUp(value, range)]).toEqual([down, up])
  })

  it('come back into the range when the value lies outside', () => {
    expect(stepDown(60, { step: 6, min: 0, max: 48 })).toBe(48)
    expect(stepUp(1, { step: 6, min: 12, max: 48 })).toBe(12)
  })
})
