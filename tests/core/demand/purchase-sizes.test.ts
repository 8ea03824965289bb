import { describe, expect, it } from 'vitest'
import { negativeBinomial } from '../../../shared-core/demand/pieces.ts'
import { piecesOfDay, purchaseSizes } from '../../../shared-core/demand/purchase-sizes.ts'
import type { SalesDay } from '../../../shared-core/demand/sales-day.ts'

function day(sold: Readonly<Record<string, readonly number[]>>): SalesDay {
  const items = Object.entries(sold).map(([id, sizes]) => {
    const purchases = sizes.map((pieces, n) => ({ minute: 400 + n, pieces }))
    return [id, { sold: purchases, unseen: 0, gone: [], offered: true }] as const
  })
  return { date: '2026-11-24', openMinute: 360, closeMinute: 900, specials: [], items: new Map(items) }
}

describe('purchases of several pieces', () => {
  it('[Q57] given purchases, when their sizes are told, then by how often each came; too few say nothing', () => {
    const days = [day({ rye: [12, 12, 6, 12, 6, 12], egg: [1, 2] }), day({ rye: [12, 12, 12, 6, 6, 600] })]
    const sizes = purchaseSizes(days)
    expect([...sizes.keys()]).toEqual(['rye'])
    expect(sizes.get('rye')?.[11]).toBeCloseTo(7 / 12, 12)
    expect(sizes.get('rye')?.[5]).toBeCloseTo(4 / 12, 12)
    expect(sizes.get('rye')?.[47]).toBeCloseTo(1 / 12, 12)
  })

  it('[Q57] given few pieces in lumps, when they are a day, then mean and variance stay what they were', () => {
    const sizes = purchaseSizes([day({ rye: [12, 12, 6, 12, 6, 12, 6, 6, 6, 12, 12, 12] })]).get('rye')
    // More variance than lumps alone make: customers vary too.
    const lumpy = piecesOfDay({ mean: 8, dispersion: 0.4 }, sizes)
    expect(lumpy.mean).toBeCloseTo(8, 6)
    expect(lumpy.variance).toBeCloseTo(8 + 64 / 0.4, 3)
    expect(lumpy.cdf(1)).toBe(lumpy.cdf(5))
    const same = piecesOfDay({ mean: 80, dispersion: 9 }, sizes)
    expect(same.cdf(70)).toBe(negativeBinomial(80, 9).cdf(70))
    const single = purchaseSizes([day({ egg: [1, 1, 2, 1, 1, 1, 1, 2, 1, 1, 1, 1] })]).get('egg')
    expect(piecesOfDay({ mean: 8, dispersion: 3 }, single).cdf(5)).toBe(negativeBinomial(8, 3).cdf(5))
  })
})
