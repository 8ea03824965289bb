import { describe, expect, it } from 'vitest'
import { compound } from '../../shared-core/demand/compound.ts'
import { negativeBinomial, quantile } from '../../shared-core/demand/pieces.ts'

/**
 * Panjer's recursion. Case A by hand; all numbers computed with R actuar 3.3-2 (`aggregateDist`, "recursive") outside this
 * project, case B by direct convolution too.
 */

const INF = Number.POSITIVE_INFINITY
const SIZES = [0.5, 0.2, 0.1, 0.05, 0.03, 0.05, 0, 0, 0, 0, 0, 0.07]

describe('customers who take several', () => {
  it('[Q57] given 3 customers who take 1, 2 or 3, when they are summed up, then case A', () => {
    const demand = compound({ mean: 3, dispersion: INF }, [0.5, 0.3, 0.2])
    const chances = [
      0.049787068368, 0.074680602552, 0.100818813445, 0.125090009274, 0.125883490676, 0.119092223382, 0.105065105831,
      0.085507706293, 0.066468094003, 0.049192578092, 0.034734530767,
    ]
    for (const [x, chance] of chances.entries()) expect(demand.cdf(x) - demand.cdf(x - 1)).toBeCloseTo(chance, 11)
    expect(demand.mean).toBeCloseTo(5.1, 9)
    expect(demand.variance).toBeCloseTo(10.5, 8)
  })

  it('[Q57] given 40 customers, single to dozen, when they are summed up, then case B', () => {
    const demand = compound({ mean: 40, dispersion: INF }, SIZES)
    const sums = [
      [50, 0.003589402],
      [75, 0.0907851686],
      [100, 0.4107171057],
      [110, 0.5698341254],
      [120, 0.7119645945],
      [130, 0.822890074],
      [140, 0.8997082942],
      [150, 0.9475051581],
      [160, 0.9745001281],
      [180, 0.9951133694],
      [200, 0.9992727169],
      [250, 0.9999975813],
    ] as const
    for (const [x, sum] of sums) expect(demand.cdf(x)).toBeCloseTo(sum, 9)
    expect(demand.mean).toBeCloseTo(107.6, 7)
    expect(demand.variance).toBeCloseTo(625.2, 5)
    expect(demand.cdf(0)).toBeCloseTo(4.248354255292e-18, 28)
    const parts = [0.5, 0.6, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95, 0.99]
    expect(parts.map((part) => quantile(demand, part))).toEqual([106, 112, 120, 124, 128, 134, 141, 151, 172])
    // Without the lumps one in ten days would run out at 121.
    expect(quantile(negativeBinomial(107.6, INF), 0.9)).toBe(121)
  })

  it('[Q57] given negative binomial customers, when they are summed up, then case C', () => {
    const demand = compound({ mean: 40, dispersion: 20 }, SIZES)
    const sums = [
      [100, 0.4526604087],
      [113, 0.6005802496],
      [120, 0.6724042077],
      [150, 0.8862425376],
      [200, 0.9895520007],
      [250, 0.9994658378],
    ] as const
    for (const [x, sum] of sums) expect(demand.cdf(x)).toBeCloseTo(sum, 9)
    expect([0.5, 0.75, 0.8, 0.9, 0.95].map((part) => quantile(demand, part))).toEqual([105, 129, 136, 154, 169])
    expect(demand.cdf(0)).toBeCloseTo(2.867971991e-10, 18)
  })

  it('[Q57] given customers who only take dozens, when they are summed up, then whole dozens of a Poisson', () => {
    const dozens = compound({ mean: 0.5, dispersion: INF }, [...new Array<number>(11).fill(0), 1])
    for (const n of [0, 1, 2, 4, 7]) {
      const customers = negativeBinomial(0.5, INF).cdf(n)
      expect(dozens.cdf(12 * n)).toBeCloseTo(customers, 12)
      expect(dozens.cdf(12 * n + 11)).toBeCloseTo(customers, 12)
    }
    expect(dozens.mean).toBeCloseTo(6, 9)
    expect(quantile(dozens, 0.9)).toBe(12)
  })

  it('[Q57] given sizes that are no chances, when they are summed up, then it is refused', () => {
    expect(() => compound({ mean: 3, dispersion: INF }, [0.5, 0.4])).toThrow('sum to 1')
    expect(() => compound({ mean: 800, dispersion: INF }, [1])).toThrow('too many customers')
  })
})
