import { describe, expect, it } from 'vitest'
import { negativeBinomial, quantile } from '../../../shared-core/demand/pieces.ts'
import { Together, togetherOf } from '../../../shared-core/demand/together.ts'
import { summed } from '../plan/brute.ts'

const ITEMS = [
  { mean: 60, dispersion: 12 },
  { mean: 25, dispersion: 6 },
  { mean: 4, dispersion: 2 },
  { mean: 40, dispersion: 30 },
]

/** Days on which every item sells the same multiple of what was expected. */
function learnt(factors: readonly number[]): number {
  const together = new Together()
  for (const factor of factors) together.learn(ITEMS.map((demand) => ({ demand, asked: demand.mean * factor })))
  return together.shared
}

describe('items that stray together', () => {
  it('[Q41] given items that know nothing of each other, when summed, then nearly the exact sum', () => {
    const exact = summed(ITEMS.map(({ mean, dispersion }) => negativeBinomial(mean, dispersion)))
    const sum = togetherOf(ITEMS, 0)
    expect(sum.mean).toBe(exact.mean)
    expect(sum.variance).toBeCloseTo(exact.variance, 9)
    for (const part of [0.1, 0.5, 0.8, 0.95])
      expect(Math.abs(quantile(sum, part) - quantile(exact, part))).toBeLessThanOrEqual(1)
  })

  it('[Q41] given a part that all share, when summed, then the variance has it for each pair', () => {
    const [mean, squares] = [129, 60 ** 2 + 25 ** 2 + 4 ** 2 + 40 ** 2]
    expect(togetherOf(ITEMS, 0.03).variance).toBeCloseTo(
      togetherOf(ITEMS, 0).variance + 0.03 * (mean ** 2 - squares),
      9,
    )
    // One item alone shares with nothing.
    expect(togetherOf(ITEMS.slice(0, 1), 0.03).variance).toBe(togetherOf(ITEMS.slice(0, 1), 0).variance)
  })

  it('[Q41] given days that are all more or all less, when learnt, then more is shared than of days as expected', () => {
    const calm = learnt(Array.from({ length: 60 }, () => 1))
    const rough = learnt(Array.from({ length: 60 }, (_, n) => (n % 2 === 0 ? 1.4 : 0.6)))
    expect(calm).toBe(0)
    expect(rough).toBeGreaterThan(0.05)
    // One day that sold five times as much is one odd day.
    expect(learnt([5])).toBeLessThan(learnt([]) + 0.03)
    expect(learnt([])).toBeCloseTo(0.02, 12)
  })
})
