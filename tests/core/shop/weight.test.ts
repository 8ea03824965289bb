import { describe, expect, it } from 'vitest'
import { milligrams, weightText } from '../../../shared-core/shop/weight.ts'

describe('a weight as it was entered', () => {
  // NIST Special Publication 811 (2008), appendix B.8: 1 lb = 453.592 37 g, 1 oz = 28.349 523 125 g.
  it.each([
    [1_000, 'lb', 453_592],
    [50_000, 'lb', 22_679_619],
    [1_000, 'oz', 28_350],
    [16_000, 'oz', 453_592],
    [1_000, 'kg', 1_000_000],
    [1, 'g', 1],
  ] as const)('given %d thousandths of a %s, then %d mg', (thousandths, unit, mg) => {
    expect(milligrams({ thousandths, unit })).toBe(mg)
  })

  it('is told in its own unit', () => {
    expect(weightText({ thousandths: 25_500, unit: 'lb' })).toBe('25.5 lb')
  })
})
