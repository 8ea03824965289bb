import jstat from 'jstat'
import { describe, expect, it } from 'vitest'
import type { Pieces } from '../../shared-core/demand/pieces.ts'
import { expectedSold, fromChances, negativeBinomial, quantile } from '../../shared-core/demand/pieces.ts'
import { howMany } from '../../shared-core/plan/how-many.ts'
import { foreseen, updated } from '../../shared-core/stock/gamma-poisson.ts'

/**
 * Worked examples and tables of the newsvendor's problem. Inputs of the four examples are published (their pages are named
 * beside them); the tables were computed with scipy.stats and cross-checked in R (qpois, qnbinom), outside this project.
 */

/** One variety, one use, every left piece fetches the salvage. */
function best(demand: Pieces, money: { readonly price: number; readonly cost: number; readonly salvage: number }) {
  const asked = {
    demand,
    stock: [{ pieces: 0, chance: 1 }],
    later: null,
    worth: {
      uses: [{ part: 1, worthCents: money.price }],
      costCents: money.cost,
      dayOldCents: money.salvage,
      isAssumed: false,
    },
    unit: 1,
    besides: 0,
  }
  const amount = howMany(new Map([['one', asked]]), 10_000).get('one')
  if (amount === undefined) throw new Error('no amount')
  return amount
}

/** A demand that is no whole number: the smallest whole stock that reaches the ratio is asked. */
function continuous(mean: number, variance: number, cdf: (n: number) => number): Pieces {
  return { mean, variance, cdf }
}

describe('worked examples', () => {
  // neoprimate.github.io, the discrete newsvendor: 10, 12, 14, 16, 18, 20 with frequency 1, 1, 2, 1, 0, 1.
  const chances = Array.from({ length: 21 }, (_, n) => (({ 10: 1, 12: 1, 14: 2, 16: 1, 20: 1 })[n] ?? 0) / 6)

  it('[Q40, Q42] given price 10, cost 4, salvage 1, when F(14) equals the ratio 2/3, then 14 are enough', () => {
    const demand = fromChances(chances)
    expect(demand.cdf(14)).toBeLessThan(0.6666666666666667)
    expect(quantile(demand, 6 / 9)).toBe(14)
    expect(best(demand, { price: 10, cost: 4, salvage: 1 }).pieces).toBe(14)
  })

  it('[Q40] given six sixths that sum to a digit less than 1, when all are to be covered, then 20 is the answer', () => {
    expect(quantile(fromChances(chances), 1)).toBe(20)
  })

  it('[Q40] given eight tenths that sum to a digit less than 0.8, when 0.8 are to be covered, then the eighth is enough', () => {
    const tenths = fromChances(new Array<number>(10).fill(0.1))
    expect(tenths.cdf(7)).toBeLessThan(0.8)
    expect(quantile(tenths, 0.8)).toBe(7)
  })

  it.each([
    // tutorsglobe.com, the newsvendor question: 1168.324247, so 1169 whole ones.
    ['Normal(1000, 200)', 1000, 200, { price: 140, cost: 100, salvage: 90 }, 1169],
    // essayzeus.com: 111.199793 and 113.733264.
    ['Normal(115, 15)', 115, 15, { price: 20, cost: 14, salvage: 5 }, 112],
    ['Normal(115, 5)', 115, 5, { price: 20, cost: 14, salvage: 5 }, 114],
    // Cachon & Terwiesch, Matching Supply with Demand (inputs from memory): 4185.954677.
    ['Normal(3192, 1181)', 3192, 1181, { price: 5, cost: 1, salvage: 0 }, 4186],
  ])(
    '[Q42] given %s, when it is decided, then the smallest whole number over the quantile',
    (_, mean, sd, money, pieces) => {
      expect(
        best(
          continuous(mean, sd * sd, (n) => jstat.normal.cdf(n, mean, sd)),
          money,
        ).pieces,
      ).toBe(pieces)
    },
  )

  it('[Q42] given Uniform(80, 150) and the ratio 0.4, when it is decided, then 108', () => {
    const uniform = continuous(115, 4900 / 12, (n) => Math.min(1, Math.max(0, (n - 80) / 70)))
    expect(best(uniform, { price: 20, cost: 14, salvage: 5 }).pieces).toBe(108)
  })
})

type Row = readonly [mean: number, k: number, ratio: number, q: number, before: number, at: number]
const INF = Number.POSITIVE_INFINITY
const QUANTILES: readonly Row[] = [
  [12, INF, 0.5, 12, 0.4615973331, 0.5759652486],
  [12, INF, 0.6, 13, 0.5759652486, 0.6815356321],
  [12, INF, 0.6667, 13, 0.5759652486, 0.6815356321],
  [12, INF, 0.75, 14, 0.6815356321, 0.7720245323],
  [12, INF, 0.8, 15, 0.7720245323, 0.8444156525],
  [12, INF, 0.9, 17, 0.8987089926, 0.9370337032],
  [12, INF, 0.95, 18, 0.9370337032, 0.9625835103],
  [40, INF, 0.5, 40, 0.4789711389, 0.5419181784],
  [40, INF, 0.6, 41, 0.5419181784, 0.6033299241],
  [40, INF, 0.6667, 43, 0.6618173011, 0.7162241633],
  [40, INF, 0.75, 44, 0.7162241633, 0.7656849472],
  [40, INF, 0.8, 45, 0.7656849472, 0.8096500884],
  [40, INF, 0.9, 48, 0.8804172908, 0.9075311614],
  [40, INF, 0.95, 51, 0.9473719509, 0.9612598078],
  [100, INF, 0.5, 100, 0.4867012017, 0.5265621985],
  [100, INF, 0.6, 102, 0.566028532, 0.6047210158],
  [100, INF, 0.6667, 104, 0.6422865341, 0.6784072247],
  [100, INF, 0.75, 107, 0.7452613331, 0.7755916609],
  [100, INF, 0.8, 108, 0.7755916609, 0.8036752977],
  [100, INF, 0.9, 113, 0.8928045795, 0.9094776168],
  [100, INF, 0.95, 117, 0.9477845107, 0.9571551275],
  [100, 5, 0.5, 93, 0.4931565684, 0.5022343953],
  [100, 5, 0.6, 105, 0.5971744142, 0.605290671],
  [100, 5, 0.75, 126, 0.7463221273, 0.7522703518],
  [100, 5, 0.8, 135, 0.7961299644, 0.8011567489],
  [100, 5, 0.9, 161, 0.8975922182, 0.9004186958],
  [100, 5, 0.95, 185, 0.9490501812, 0.9505659961],
  [100, 20, 0.5, 98, 0.4889280923, 0.5053920192],
  [100, 20, 0.6, 104, 0.5855577551, 0.6009988886],
  [100, 20, 0.75, 115, 0.7394777245, 0.7514835524],
  [100, 20, 0.8, 120, 0.7958635938, 0.8060429181],
  [100, 20, 0.9, 132, 0.8948824319, 0.9010099961],
  [100, 20, 0.95, 143, 0.9477087322, 0.9511191362],
  [100, 50, 0.5, 99, 0.4845429025, 0.5076853869],
  [100, 50, 0.6, 104, 0.597996845, 0.6196714438],
  [100, 50, 0.75, 111, 0.7379938704, 0.755408661],
  [100, 50, 0.8, 114, 0.7880485507, 0.8032530337],
  [100, 50, 0.9, 123, 0.8985238591, 0.9073438863],
  [100, 50, 0.95, 130, 0.9482482635, 0.9533178727],
]

describe('quantiles of pieces', () => {
  it.each(QUANTILES)(
    '[Q40] given mean %d, k %d, when %d is to be covered, then %d',
    (mean, k, ratio, q, before, at) => {
      const demand = negativeBinomial(mean, k)
      expect(quantile(demand, ratio)).toBe(q)
      // Ten printed digits.
      expect(Math.abs(demand.cdf(q - 1) - before)).toBeLessThan(6e-11)
      expect(Math.abs(demand.cdf(q) - at)).toBeLessThan(6e-11)
    },
  )

  it('[Q40] given dispersions under 1 and means in the thousands, when held to jstat, then they agree within its error', () => {
    for (const [mean, k] of [
      [0.3, 0.31],
      [7, 0.05],
      [3000, 40],
      [5000, 2000],
    ] as const) {
      const demand = negativeBinomial(mean, k)
      for (const n of [0, mean / 2, mean, mean * 2].map(Math.round))
        expect(Math.abs(demand.cdf(n) - jstat.ibeta(k / (k + mean), k, n + 1))).toBeLessThan(1e-7)
    }
    for (const n of [900, 1000, 1100])
      expect(negativeBinomial(1000, INF).cdf(n)).toBeCloseTo(1 - jstat.lowRegGamma(n + 1, 1000), 9)
  })
})

describe('what a stock sells', () => {
  const MONEY = { price: 3, cost: 0.8, salvage: 0.3 }
  const SOLD: readonly (readonly [k: number, stock: number, sold: number, profit: number])[] = [
    [INF, 100, 96.013900319, 209.23753086],
    [INF, 108, 98.762233938, 212.65803163],
    [INF, 109, 98.95855864, 212.68810833],
    [INF, 110, 99.129118538, 212.64862005],
    [INF, 120, 99.897280093, 209.72265625],
    [INF, 121, 99.919949422, 209.28386344],
    [INF, 122, 99.93802283, 208.83266164],
    [20, 100, 90.269930033, 193.72881109],
    [20, 108, 93.528397509, 198.52667327],
    [20, 109, 93.868255186, 198.944289],
    [20, 110, 94.194060167, 199.32396245],
    [20, 120, 96.753614618, 201.23475947],
    [20, 121, 96.9475717, 201.25844359],
    [20, 122, 97.131714006, 201.25562782],
  ]

  it.each(SOLD)('[Q42] given mean 100 and k %d, when %d are there, then %d are sold', (k, stock, sold, profit) => {
    const expected = expectedSold(negativeBinomial(100, k), stock)
    expect(expected).toBeCloseTo(sold, 8)
    const { price, cost, salvage } = MONEY
    expect(price * expected + salvage * (stock - expected) - cost * stock).toBeCloseTo(profit, 7)
  })

  it('[Q42] given these prices, when it is decided, then 109 of a Poisson and 121 of a negative binomial', () => {
    expect(best(negativeBinomial(100, INF), MONEY).pieces).toBe(109)
    const amount = best(negativeBinomial(100, 20), MONEY)
    expect(amount.pieces).toBe(121)
    expect(amount.underCents).toBeCloseTo(2.2, 9)
    expect(amount.overCents).toBeCloseTo(0.5, 9)
  })
})

describe('a rate that is learnt', () => {
  it.each([
    // prior shape and exposure, counts, exposures, then posterior, predictive variance and quantiles .5 .8 .9 .95
    [4, 2, [3, 5, 2, 6], [1, 1, 1, 1], 20, 6, 3.88888889, [3, 5, 6, 7]],
    [25, 0.25, [92, 118, 104], [1, 1, 1], 339, 3.25, 136.40236686, [104, 114, 119, 124]],
    [25, 0.25, [84, 110, 60], [0.84, 1, 0.55], 279, 2.64, 145.71280992, [105, 116, 121, 126]],
  ] as const)(
    '[Q40] given Gamma(%d, %d), when %j come, then its quantiles are those of scipy',
    (shape, exposure, counts, over, shapeThen, exposureThen, variance, quantiles) => {
      const posterior = counts.reduce<{ shape: number; exposure: number }>(
        (prior, events, n) => updated(prior, { events, exposure: over[n] ?? 0 }),
        { shape, exposure },
      )
      expect(posterior.shape).toBe(shapeThen)
      expect(posterior.exposure).toBeCloseTo(exposureThen, 12)
      const ahead = foreseen(posterior, 1)
      expect(ahead.variance).toBeCloseTo(variance, 8)
      const demand = negativeBinomial(ahead.mean, posterior.shape)
      expect(demand.variance).toBeCloseTo(variance, 8)
      expect([0.5, 0.8, 0.9, 0.95].map((part) => quantile(demand, part))).toEqual(quantiles)
    },
  )

  it('[Q40] given the first of these, when its chances are asked for, then they are those of scipy', () => {
    const demand = negativeBinomial(20 / 6, 20)
    const chances = [0, 1, 2, 3].map((n) => demand.cdf(n) - demand.cdf(n - 1))
    const scipy = [0.04582096, 0.13091704, 0.19637555, 0.20572677]
    for (const [n, chance] of chances.entries()) expect(chance).toBeCloseTo(scipy[n] ?? Number.NaN, 8)
  })
})
