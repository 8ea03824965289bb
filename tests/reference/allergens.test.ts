import { describe, expect, it } from 'vitest'
import { allergensOfVariety, namesOf } from '../../shared-core/dough/allergens.ts'
import { formulaId, ingredientId, toppingId, varietyId } from '../../shared-core/ids.ts'
import type { Allergen } from '../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../shared-core/shop/stages.ts'
import { ingredient, percents } from '../core/dough/kitchen.ts'
import { formula } from '../core/dough/room-mix.ts'
import { dough, shopWith, table, variety } from '../core/support/shop.ts'

/**
 * What ingredients hold by US law: FD&C Act section 201(qq) as amended by the FASTER Act of 2021 (nine major allergens,
 * sesame from 2023-01-01), and FDA's guidance of January 2025 for tree nuts (pine nuts count, coconut does not). Composition
 * from memory: the label of the actual product always wins.
 */
const LABELS: Readonly<Record<string, readonly Allergen[]>> = {
  'high-gluten flour': ['wheat'],
  'rye flour': [],
  'barley malt': [],
  'whole egg': ['egg'],
  butter: ['milk'],
  'soy flour': ['soy'],
  'pine nuts': ['treeNuts'],
  coconut: [],
  'sesame seed': ['sesame'],
  'poppy seed': [],
  'dried onion': [],
  'cream cheese': ['milk'],
  'smoked salmon': ['fish'],
}

describe('allergens of common bagels', () => {
  it('[D89] given the US list, when it is counted, then the nine of the acts of 2004 and 2021', () => {
    expect([...ALLERGENS].sort()).toEqual(
      ['milk', 'egg', 'fish', 'shellfish', 'treeNuts', 'peanuts', 'wheat', 'soy', 'sesame'].sort(),
    )
  })

  it.each([
    ['a plain one with barley malt', ['high-gluten flour', 'barley malt'], [], ['wheat']],
    ['one with every seed', ['high-gluten flour'], ['sesame seed', 'poppy seed', 'dried onion'], ['wheat', 'sesame']],
    ['the same with cream cheese', ['high-gluten flour'], ['sesame seed', 'cream cheese'], ['milk', 'wheat', 'sesame']],
    [
      'and with lox',
      ['high-gluten flour'],
      ['sesame seed', 'cream cheese', 'smoked salmon'],
      ['milk', 'fish', 'wheat', 'sesame'],
    ],
    ['an egg dough', ['high-gluten flour', 'whole egg', 'butter'], [], ['milk', 'egg', 'wheat']],
    ['rye alone', ['rye flour'], [], []],
    ['pine nuts and coconut', ['high-gluten flour'], ['pine nuts', 'coconut'], ['treeNuts', 'wheat']],
    ['soy flour in the dough', ['high-gluten flour', 'soy flour'], [], ['wheat', 'soy']],
  ] as const)('[D89] given %s, when its label is asked for, then what the law lists', (_, dough_, on, expected) => {
    const shop = shopWith({
      ingredients: table(Object.entries(LABELS).map(([id, contains]) => ({ ...ingredient(id, 'other'), contains }))),
      formulas: table([formula({ lines: percents(Object.fromEntries(dough_.map((id) => [id, 10]))) })]),
      doughs: table([dough({ id: 'plain', formulaId: formulaId('plain') })]),
      toppings: table([
        {
          id: toppingId('on'),
          name: 'On',
          order: 1,
          contains: [],
          madeOf: on.map((id) => ({
            ingredientId: ingredientId(id),
            weight: { thousandths: 1_000, unit: 'g' as const },
          })),
          retired: false,
        },
      ]),
      varieties: table([variety({ id: 'one', toppingId: toppingId('on') })]),
    })
    expect(namesOf(allergensOfVariety(shop, varietyId('one')))).toEqual(expected)
  })
})
