import { describe, expect, it } from 'vitest'
import { foreseen, updated } from '../../../shared-core/stock/gamma-poisson.ts'
import { meanAboveNone, unitLoss } from '../../../shared-core/stock/unit-loss.ts'

const meanOf = ({ shape, exposure }: { shape: number; exposure: number }) => shape / exposure

describe('the gamma–Poisson posterior', () => {
  // Source: Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.6, the asthma mortality example: prior
  // Gamma(3.0, 5.0); 3 deaths in 200,000 people give Gamma(6.0, 7.0) with mean 0.86; 30 in ten years Gamma(33.0, 25.0)
  // with mean 1.32. Quoted from memory; the book's two digits are the tolerance.
  it.each([
    [3, 2, 6, 7, 0.86],
    [30, 20, 33, 25, 1.32],
  ])(
    '[S29] given the book’s prior, when %i events are seen in %i, then Gamma(%i, %i)',
    (events, exposure, shape, rate, mean) => {
      const after = updated({ shape: 3, exposure: 5 }, { events, exposure })
      expect(after).toEqual({ shape, exposure: rate })
      expect(Math.abs(meanOf(after) - mean)).toBeLessThan(0.005)
    },
  )

  // The predictive is negative binomial with α and β / x. Mean and variance summed from its probabilities, which are
  // reckoned here by the ratio of neighbours, p(y + 1) / p(y) = (α + y) / (y + 1) · x / (β + x).
  it.each([
    [6, 7, 2],
    [33, 25, 10],
    [0.8, 3, 1.5],
  ])(
    '[S29] given Gamma(%d, %d), when %d more is exposed, then mean and variance are those of its probabilities',
    (shape, exposure, further) => {
      const success = further / (exposure + further)
      let chance = (1 - success) ** shape
      let [mean, square] = [0, 0]
      for (let events = 0; events < 400; events += 1) {
        mean += events * chance
        square += events * events * chance
        chance *= ((shape + events) / (events + 1)) * success
      }
      const told = foreseen({ shape, exposure }, further)
      expect(told.mean).toBeCloseTo(mean, 9)
      expect(told.variance).toBeCloseTo(square - mean * mean, 8)
    },
  )
})

describe('the unit normal loss', () => {
  // φ(z) − z·(1 − Φ(z)), computed with Python's math.erf. Off the table's places the straight
  // line is high by at most h²/8 times the curvature at 0, 0.25² · 0.4 / 8 = 0.003.
  it.each([
    [0, 0.398942],
    [0.25, 0.286345],
    [1, 0.083315],
    [2, 0.008491],
    [-1, 1.083315],
    [0.6, 0.168673],
    [1.37, 0.039159],
    [4, 0.000007],
  ])('[S31] given z = %d, then L(z) is %d', (z, loss) => {
    expect(Math.abs(unitLoss(z) - loss)).toBeLessThan(0.003)
  })

  it('[S27] given means and doubts, then what is left on average is never below either bound', () => {
    for (let mean = -20; mean <= 20; mean += 1)
      for (const sd of [0, 0.5, 3, 10]) expect(meanAboveNone(mean, sd)).toBeGreaterThanOrEqual(Math.max(0, mean))
  })
})
