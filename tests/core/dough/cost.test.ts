import { describe, expect, it } from 'vitest'
import { bakedOf, pieceCost } from '../../../shared-core/dough/cost.ts'
import { formulaId, ingredientId, toppingId, varietyId } from '../../../shared-core/ids.ts'
import type { Ingredient } from '../../../shared-core/shop/formula.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { dough, shopWith, table, variety } from '../support/shop.ts'
import { ingredient, PLAIN_LINES } from './kitchen.ts'
import { formula } from './room-mix.ts'

const grams = (amount: number) => ({ thousandths: amount * 1_000, unit: 'g' as const })
const priced = (id: string, cents: number, kilograms: number): Ingredient => ({
  ...ingredient(id, 'other'),
  price: { cents, per: { thousandths: kilograms * 1_000, unit: 'kg' } },
})

/** 120 g pieces of the formula of the reference values (161.1 %), a loss of 1.5 %, 12 % of bake loss; 5 g of seed on top. */
function costShop(ingredients: readonly Ingredient[], parts: Partial<Shop> = {}): Shop {
  return shopWith({
    ingredients: table(ingredients),
    formulas: table([formula({ lines: PLAIN_LINES, lossPercent: 1_500, bakeLossPercent: 12_000 })]),
    doughs: table([dough({ id: 'plain', formulaId: formulaId('plain'), pieceWeight: grams(120) })]),
    toppings: table([
      {
        id: toppingId('seed'),
        name: 'Seed',
        order: 1,
        contains: [],
        madeOf: [{ ingredientId: ingredientId('seeds'), weight: grams(5) }],
        retired: false,
      },
    ]),
    varieties: table([variety({ id: 'seeded', toppingId: toppingId('seed') })]),
    ...parts,
  })
}

/** Cents a kilogram: flour costs a tenth of a cent a gram. */
const ALL = [priced('flour', 100, 1), priced('water', 0, 1), priced('salt', 1_000, 1), priced('malt', 300, 1)]
const COSTS = [...ALL, priced('yeast', 800, 1), priced('seeds', 600, 1)]

describe('the cost of a piece', () => {
  it('[D91] given a price for everything, when a piece is reckoned, then by its share of the dough with its loss, and its topping; hand-worked', () => {
    const cost = pieceCost(costShop(COSTS), varietyId('seeded'))
    // 120 / 0.985 = 121.8274 g of dough; of it flour 75.6222 g, salt 1.5124, malt 1.1343, yeast 0.4537; 5 g of seed.
    const doughCents = 75.6222 * 0.1 + 1.51244 * 1 + 1.13433 * 0.3 + 0.453733 * 0.8
    expect(cost?.doughCents).toBeCloseTo(doughCents, 3)
    expect(cost?.toppingCents).toBeCloseTo(3, 9)
    expect(cost?.cents).toBeCloseTo(doughCents + 3, 3)
    expect(cost).toMatchObject({ unpriced: [], missing: [], bakedMilligrams: 110_600 })
    const dough_ = cost?.lines.filter(({ of }) => of === 'dough').reduce((sum, line) => sum + line.milligrams, 0)
    expect(dough_).toBeCloseTo(121_827.411, 2)
  })

  it('[D91] given no price for yeast and seed, when a piece is reckoned, then they are named and only the rest is summed up', () => {
    const bare = [...ALL, ingredient('yeast', 'yeast'), ingredient('seeds', 'other')]
    const cost = pieceCost(costShop(bare), varietyId('seeded'))
    const whole = pieceCost(costShop(COSTS), varietyId('seeded'))
    expect(cost?.unpriced).toEqual(['yeast', 'seeds'])
    expect(cost?.cents).toBeCloseTo((whole?.cents ?? 0) - 3 - 0.453733 * 0.8, 3)
  })

  it.each([
    ['no formula', { formulaId: null }, ['formula']],
    ['no piece weight', { pieceWeight: null }, ['pieceWeight']],
    ['neither', { formulaId: null, pieceWeight: null }, ['formula', 'pieceWeight']],
  ])(
    '[D91] given a dough with %s, when a piece is reckoned, then what is missing is said and the topping alone counts',
    (_, parts, missing) => {
      const plain = dough({ id: 'plain', formulaId: formulaId('plain'), pieceWeight: grams(120), ...parts })
      const cost = pieceCost(costShop(COSTS, { doughs: table([plain]) }), varietyId('seeded'))
      expect(cost).toMatchObject({ missing, doughCents: 0, cents: 3, bakedMilligrams: null })
    },
  )

  it('[D91] given a variety that is not there, when it is reckoned, then nothing', () => {
    expect(pieceCost(costShop(COSTS), varietyId('gone'))).toBeNull()
  })

  it.each([
    [120_000, 12_500, 105_000],
    [122_222, 10_000, 110_000],
  ])(
    '[D91] given %i mg of dough and a bake loss of %i thousandths of a percent, when it is baked, then %i mg',
    (piece, loss, baked) => {
      expect(bakedOf({ bakeLossPercent: loss }, piece)).toBe(baked)
    },
  )
})
