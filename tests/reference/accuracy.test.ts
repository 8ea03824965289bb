import { describe, expect, it } from 'vitest'
import { mase, pinball, wape } from '../../shared-core/demand/accuracy.ts'

// Values worked out with R forecast 8.20 (accuracy()) and by hand; those of wape and pinball are exact.

describe('how far off forecasts are, against published values', () => {
  it('[Q16] given four days forecast from seven, when scored, then wape and scaled error are those of R', () => {
    const training = [100, 110, 96, 104, 99, 121, 107]
    const [actual, forecast] = [
      [112, 118, 95, 130],
      [105, 120, 100, 118],
    ]
    expect(wape(actual, forecast)).toBeCloseTo(0.0571428571, 9)
    expect(mase(actual, forecast, training, 1)).toBeCloseTo(0.53424658, 8)
  })

  it('[Q16] given a week that repeats the last one, when scored by the week before, then the scaled error is that of R', () => {
    const training = [40, 42, 38, 45, 60, 80, 70, 44, 40, 41, 47, 66, 84, 69]
    const actual = [43, 41, 40, 50, 63, 79, 75]
    expect(mase(actual, training.slice(7), training, 7)).toBeCloseTo(0.90909091, 8)
    expect(wape(actual, training.slice(7))).toBeCloseTo(0.0511508951, 9)
  })

  it('[Q16] given days that say nothing, when scored, then nothing is said', () => {
    expect(wape([0, 0], [3, 0])).toBeNull()
    expect(wape([], [])).toBeNull()
    expect(mase([5], [4], [7, 7, 7], 1)).toBeNull()
    expect(mase([5], [4], [7, 8], 7)).toBeNull()
    expect(() => wape([1], [])).toThrow(/1 days and 0 forecasts/)
  })

  it.each([
    // came, quantile, level, loss
    [118, 100, 0.5, 9],
    [118, 112, 0.75, 4.5],
    [118, 130, 0.95, 0.6],
    [118, 90, 0.25, 7],
    [118, 75, 0.05, 2.15],
    [90, 100, 0.8, 2],
    [110, 100, 0.8, 8],
    [100, 100, 0.3, 0],
  ])('[Q16] given %d where the quantile said %d at %d, then the pinball loss is %d', (came, quantile, level, loss) => {
    expect(pinball(came, quantile, level)).toBeCloseTo(loss, 12)
  })

  it('[Q16] given pieces too few and too many, when ordered at the critical ratio, then the loss times both costs is what it cost', () => {
    // Too few costs 2.2 a piece, too many 0.5.
    expect(2.7 * pinball(120, 109, 2.2 / 2.7)).toBeCloseTo(24.2, 9)
    expect(2.7 * pinball(100, 109, 2.2 / 2.7)).toBeCloseTo(4.5, 9)
  })
})
