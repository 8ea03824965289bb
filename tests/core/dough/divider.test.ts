import { describe, expect, it } from 'vitest'
import { dividerFigures, kendallZ, slope } from '../../../shared-core/dough/divider.ts'
import type { WeighedSample } from '../../../shared-core/dough/mix.ts'
import { expectedBaked } from '../../../shared-core/dough/package-weight.ts'
import { at } from '../support/make.ts'

/** Pieces that should weigh 120 g, in grams. */
function sample(clock: string, grams: readonly number[], scaled = 120): WeighedSample {
  return {
    atMs: at(clock),
    mixId: null,
    scaledMilligrams: scaled * 1_000,
    milligrams: grams.map((one) => Math.round(one * 1_000)),
  }
}
const codes = (...samples: WeighedSample[]) => dividerFigures({ samples })?.codes

describe('the divider check', () => {
  it('[D92] given five pieces, when they are weighed, then mean, spread and how far the mean is known; hand-worked', () => {
    const found = dividerFigures({ samples: [sample('9:00', [121, 122, 123, 124, 125])] })
    // Mean 123; squares 4 + 1 + 0 + 1 + 4 over 4 is 2.5; t of four degrees of freedom 2.776445 (any table of t).
    expect(found).toMatchObject({ pieces: 5, offMilligrams: 3_000, driftMilligramsPerHour: null, codes: ['heavy'] })
    expect(found?.spreadMilligrams).toBeCloseTo(1_000 * Math.sqrt(2.5), 6)
    expect(found?.offWithinMilligrams).toBeCloseTo((1_000 * 2.776445 * Math.sqrt(2.5)) / Math.sqrt(5), 3)
  })

  it.each([
    ['too few pieces', [sample('9:00', [130, 130, 130, 130])], ['tooFew']],
    ['on weight', [sample('9:00', [119, 120, 121, 120, 120])], ['onWeight']],
    ['surely off, and by less than a hundredth', [sample('9:00', [121, 121, 121.1, 121, 121])], ['onWeight']],
    ['off by more, and not surely', [sample('9:00', [110, 135, 118, 124, 121])], ['spread']],
    ['light', [sample('9:00', [117, 117.5, 118, 117, 117.2])], ['light']],
    ['wide', [sample('9:00', [112, 128, 120, 125, 115])], ['spread']],
  ])('[D92] given pieces %s, when they are weighed, then what is said', (_, samples, expected) => {
    expect(codes(...samples)).toEqual(expected)
  })

  it('[D92] given three samples that rise, when they are compared, then drift by the hour; the divider set anew is no spread', () => {
    const rising = [
      sample('9:00', [118, 119, 118.5, 118.4]),
      sample('9:30', [120, 120.4, 119.8, 120.2]),
      sample('10:00', [121.5, 122, 121.2, 121.8]),
    ]
    const found = dividerFigures({ samples: rising })
    expect(found?.codes).toEqual(['risingWeight'])
    expect(found?.driftMilligramsPerHour).toBeGreaterThan(2_500)
    expect(found?.driftMilligramsPerHour).toBeLessThan(3_800)
    expect(found?.spreadMilligrams).toBeLessThan(500)
    const falling = rising.map((one, place) => ({ ...one, atMs: rising[2 - place]?.atMs ?? one.atMs })).reverse()
    expect(dividerFigures({ samples: falling })?.codes).toEqual(['fallingWeight'])
  })

  it('[D92] given a piece badly weighed, when the drift is taken, then the Theil–Sen slope stands where least squares would not', () => {
    const offs = [0, 1_000, 2_000, 9_000].map((off, hour) => ({ atMs: at('9:00') + hour * 3_600_000, off }))
    expect(slope(offs)).toBe(2_000)
    expect(slope(offs.slice(0, 1))).toBeNull()
    const ten = Array.from({ length: 10 }, (_, hour) => ({
      atMs: hour * 3_600_000,
      off: hour === 4 ? 500_000 : hour * 100,
    }))
    expect(slope(ten)).toBeCloseTo(100, 6)
  })

  it('[D92] given Kendall’s S, when it is made normal, then as worked by hand: ten rising values without ties give S 45 and variance 125', () => {
    const ten = Array.from({ length: 10 }, (_, hour) => ({ atMs: hour, off: hour }))
    expect(kendallZ(ten)).toBeCloseTo(44 / Math.sqrt(125), 9)
    expect(kendallZ(ten.map(({ off }) => ({ atMs: 1, off })))).toBe(0)
  })

  it('[D92] given samples of another scaled weight, when they are pooled, then each counts against its own', () => {
    const found = dividerFigures({ samples: [sample('9:00', [120, 120, 120]), sample('10:00', [60, 60, 60], 60)] })
    expect(found).toMatchObject({ offMilligrams: 0, scaledMilligrams: 60_000, codes: ['onWeight'] })
    expect(dividerFigures({ samples: [] })).toBeNull()
  })

  it('[D96] given dough pieces of a dough sold by weight, when they are baked, then less by the bake loss and more by the topping', () => {
    expect(expectedBaked({ bakeLossPercent: 12_500 }, 4_000, [120_000, 128_000])).toEqual([109_000, 116_000])
  })
})
