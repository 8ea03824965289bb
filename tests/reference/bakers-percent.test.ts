import { describe, expect, it } from 'vitest'
import { formulaFigures } from '../../shared-core/dough/formula-figures.ts'
import { totalPercent } from '../../shared-core/dough/percents.ts'
import { doughToMix, exactLines, flourFor } from '../../shared-core/dough/scale.ts'
import type { Formula } from '../../shared-core/shop/formula.ts'
import { milligrams } from '../../shared-core/shop/weight.ts'
import { INGREDIENTS, PLAIN_LINES, percents, preparation } from '../core/dough/kitchen.ts'
import { formula } from '../core/dough/room-mix.ts'
import { shopWith, table } from '../core/support/shop.ts'

/**
 * Baker's percentages against worked examples. The rule, and the input of the first: kingarthurbaking.com/pro/bakers-percentage
 * ("flour weight is always expressed as 100%"). All results: exact arithmetic outside this project (Python's fractions),
 * printed to six places of a pound or four of a gram. Weights here are whole milligrams, so half a milligram is allowed
 * where the flour is rounded to one, and half of the last printed place.
 */
const shop = shopWith({ ingredients: INGREDIENTS })
const POUND = 453_592.37
const plain = formula({ lines: PLAIN_LINES })

/** Milligrams of each line of a dough, by ingredient. */
function weights(of: Formula, doughMilligrams: number, within = shop): { readonly [key: string]: number } {
  const lines = exactLines(within, of, flourFor(of, doughMilligrams))
  return Object.fromEntries(lines.map(({ key, milligrams: weight }) => [key, weight]))
}

function expectWeights(
  found: { readonly [key: string]: number },
  expected: { readonly [key: string]: number },
  off: number,
) {
  expect(Object.keys(found)).toEqual(Object.keys(expected))
  for (const [key, weight] of Object.entries(expected)) expect(Math.abs((found[key] ?? 0) - weight)).toBeLessThan(off)
}

describe('baker’s percentages', () => {
  it('50 lb flour, 33 water, 1 salt, 0.6 yeast are 100, 66, 2 and 1.2 %: 169.2 % in all', () => {
    const of = formula({
      lines: percents({ flour: 100, water: (33 / 50) * 100, salt: (1 / 50) * 100, yeast: (0.6 / 50) * 100 }),
    })
    expect(formulaFigures(shop, of)).toMatchObject({ hydration: 66_000, salt: 2_000, yeast: 1_200, total: 169_200 })
  })

  it('and make 60 lb of dough of 35.460993 lb flour', () => {
    const of = formula({ lines: percents({ flour: 100, water: 66, salt: 2, yeast: 1.2 }) })
    const pounds = { flour: 35.460993, water: 23.404255, salt: 0.70922, yeast: 0.425532 }
    expectWeights(weights(of, 60 * POUND), scaled(pounds, POUND), 1e-6 * POUND + 0.5)
  })

  it('120 pieces of 4.25 oz are 31.875 lb of dough: 19.785847 lb flour', () => {
    expect(Math.round(((120 * milligrams({ thousandths: 4_250, unit: 'oz' })) / POUND) * 1_000)).toBe(31_875)
    const pounds = { flour: 19.785847, water: 11.277933, salt: 0.395717, malt: 0.296788, yeast: 0.118715 }
    expectWeights(weights(plain, 31.875 * POUND), scaled(pounds, POUND), 1e-6 * POUND + 0.5)
  })

  it('120 pieces of 120 g are 14 400 g of dough: 8 938.5475 g flour', () => {
    const grams = { flour: 8938.5475, water: 5094.9721, salt: 178.771, malt: 134.0782, yeast: 53.6313 }
    expectWeights(weights(plain, 120 * 120_000), scaled(grams, 1_000), 0.6)
  })

  it('with 1.5 % lost in bowl and bench, 14 619.2893 g of dough: 9 074.6675 g flour', () => {
    const dough = doughToMix({ lossPercent: 1_500 }, 120 * 120_000)
    expect(Math.abs(dough - 14_619_289.3)).toBeLessThan(0.5)
    const grams = { flour: 9074.6675, water: 5172.5605, salt: 181.4933, malt: 136.12, yeast: 54.448 }
    expectWeights(weights(plain, dough), scaled(grams, 1_000), 0.9)
  })

  it('a kilogram of dough at 161.1 % takes 620.7325 g of flour', () => {
    expect(totalPercent(plain.lines)).toBe(161_100)
    expect(Math.abs(flourFor(plain, 1_000_000) - 620_732.5)).toBeLessThan(0.6)
  })

  it('8 pieces of 110 g at 100/50/3/2/0.5 take 565.9164 g of flour, as percentages sum to 155.5', () => {
    const of = formula({ lines: percents({ flour: 100, water: 50, malt: 3, salt: 2, yeast: 0.5 }) })
    expect(totalPercent(of.lines)).toBe(155_500)
    expect(Math.abs(flourFor(of, 8 * 110_000) - 565_916.4)).toBeLessThan(0.6)
  })

  it('10 kg of flour at 57 %, a fifth of it pre-fermented at 60 %: 2 and 1.2 kg ahead, 8 and 4.5 kg into the bowl', () => {
    const within = shopWith({ ingredients: INGREDIENTS, preparations: table([preparation({ id: 'sponge' })]) })
    const of = formula({
      lines: percents({ flour: 100, water: 57 }),
      preparations: [{ preparationId: preparation({ id: 'sponge' }).id, percent: 20_000 }],
    })
    const found = Object.fromEntries(exactLines(within, of, 10_000_000).map((line) => [line.key, line.milligrams]))
    expect(found).toEqual({ flour: 8_000_000, water: 4_500_000, sponge: 3_200_000 })
    expect(formulaFigures(within, of)).toMatchObject({ hydration: 57_000, prefermentedFlour: 20_000 })
  })

  /** Common practice, no source: a dough of 50 lb of flour gives 26 to 30 dozen pieces of 4 oz or a little over. */
  it('50 lb of flour give about 26 dozen of 4.1 oz', () => {
    const dough = (50 * POUND * totalPercent(plain.lines)) / 100_000
    const dozens = dough / milligrams({ thousandths: 4_100, unit: 'oz' }) / 12
    expect(dozens).toBeGreaterThan(25)
    expect(dozens).toBeLessThan(30)
  })
})

/**
 * What a piece loses in kettle and oven: dough = baked / (1 − loss), exact arithmetic outside this project. That bread loses
 * 9.8 to 11.5 %: bakingbusiness.com, baker's dictionary, "Bake-Out Loss".
 */
describe('bake loss', () => {
  it.each([
    [110_000, 10_000, 122_222],
    [110_000, 11_500, 124_294],
    [110_000, 13_000, 126_437],
    [milligrams({ thousandths: 4_000, unit: 'oz' }), 12_000, milligrams({ thousandths: 4_545.455, unit: 'oz' })],
  ])('%i mg baked at a loss of %i thousandths of a percent are %i mg of dough', (baked, loss, expected) => {
    expect(Math.abs(doughToMix({ lossPercent: loss }, baked) - expected)).toBeLessThanOrEqual(1)
  })

  it.each([
    [120_000, 105_000, 12_500],
    [113_400, 100_000, 11_817],
  ])('%i mg of dough that come out at %i mg lost %i thousandths of a percent', (dough, baked, loss) => {
    expect(Math.abs(doughToMix({ lossPercent: loss }, baked) - dough)).toBeLessThanOrEqual(1)
  })
})

function scaled(weightsIn: { readonly [key: string]: number }, unit: number): { readonly [key: string]: number } {
  return Object.fromEntries(Object.entries(weightsIn).map(([key, weight]) => [key, weight * unit]))
}
