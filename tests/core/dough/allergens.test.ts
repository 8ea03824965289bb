import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  allergensOfDough,
  allergensOfFormula,
  allergensOfTopping,
  allergensOfVariety,
  namesOf,
} from '../../../shared-core/dough/allergens.ts'
import {
  doughId,
  formulaId,
  ingredientId,
  preparationId,
  shelfId,
  toppingId,
  varietyId,
} from '../../../shared-core/ids.ts'
import { contacts } from '../../../shared-core/line/contacts.ts'
import type { Allergen, Shop } from '../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../shared-core/shop/stages.ts'
import { at, batch, stateWith } from '../support/make.ts'
import { play } from '../support/play.ts'
import { dough, shopWith, table, variety } from '../support/shop.ts'
import { ingredient, percents, preparation } from './kitchen.ts'
import { formula } from './room-mix.ts'

const holding = (id: string, contains: readonly Allergen[]) => ({ ...ingredient(id, 'other'), contains })

/** What each part holds; together one variety from ingredient to label. */
interface Held {
  readonly line: readonly Allergen[]
  readonly soaked: readonly Allergen[]
  readonly seed: readonly Allergen[]
  readonly dough: readonly Allergen[]
  readonly topping: readonly Allergen[]
}

function shopOf({ line, soaked, seed, ...entered }: Held): Shop {
  return shopWith({
    ingredients: table([holding('line', line), holding('soaked', soaked), holding('seed', seed)]),
    preparations: table([preparation({ id: 'soaker', kind: 'soaker', lines: percents({ soaked: 100 }) })]),
    formulas: table([
      formula({
        lines: percents({ line: 100 }),
        preparations: [{ preparationId: preparationId('soaker'), percent: 10_000 }],
      }),
    ]),
    doughs: table([dough({ id: 'plain', formulaId: formulaId('plain'), contains: entered.dough })]),
    toppings: table([
      {
        id: toppingId('mix'),
        name: 'Mix',
        order: 1,
        contains: entered.topping,
        madeOf: [{ ingredientId: ingredientId('seed'), weight: { thousandths: 5_000, unit: 'g' as const } }],
        retired: false,
      },
    ]),
    varieties: table([variety({ id: 'all', toppingId: toppingId('mix') }), variety({ id: 'bare', topping: 'none' })]),
  })
}

const some = fc.subarray([...ALLERGENS])
const held = fc.record({ line: some, soaked: some, seed: some, dough: some, topping: some })

describe('allergens from the ingredients up', () => {
  it('[D89] given any ingredients and what was entered, when a variety is asked, then none is lost and none is added', () => {
    fc.assert(
      fc.property(held, (parts) => {
        const shop = shopOf(parts)
        const inDough = new Set([...parts.line, ...parts.soaked, ...parts.dough])
        const onTop = new Set([...parts.seed, ...parts.topping])
        const among = (...sets: ReadonlySet<Allergen>[]) => ALLERGENS.filter((one) => sets.some((set) => set.has(one)))
        expect(namesOf(allergensOfVariety(shop, varietyId('all')))).toEqual(among(inDough, onTop))
        expect(namesOf(allergensOfVariety(shop, varietyId('bare')))).toEqual(among(inDough))
        expect(namesOf(allergensOfDough(shop, doughId('plain')))).toEqual(among(inDough))
        expect(namesOf(allergensOfTopping(shop, toppingId('mix')))).toEqual(among(onTop))
      }),
      { numRuns: 60 },
    )
  })

  it('[D89] given an allergen, when it is told where it comes from, then every way it comes in', () => {
    const shop = shopOf({ line: ['wheat'], soaked: ['wheat'], seed: ['sesame'], dough: ['egg'], topping: ['sesame'] })
    const line = { kind: 'ingredient', ingredientId: 'line', preparationId: null }
    const soaked = { kind: 'ingredient', ingredientId: 'soaked', preparationId: 'soaker' }
    expect(allergensOfVariety(shop, varietyId('all'))).toEqual([
      { allergen: 'egg', from: [{ kind: 'dough', doughId: 'plain' }] },
      { allergen: 'wheat', from: [line, soaked] },
      {
        allergen: 'sesame',
        from: [
          { kind: 'topping', toppingId: 'mix' },
          { kind: 'ingredient', ingredientId: 'seed', preparationId: null },
        ],
      },
    ])
    expect(namesOf(allergensOfFormula(shop, formula({ lines: percents({ line: 100 }) })))).toEqual(['wheat'])
  })

  it('[D89] given ids that the set-up does not know, when they are asked, then nothing is told', () => {
    const shop = shopWith()
    expect(allergensOfVariety(shop, varietyId('gone'))).toEqual([])
    expect(allergensOfDough(shop, doughId('gone'))).toEqual([])
    expect(allergensOfTopping(shop, toppingId('gone'))).toEqual([])
  })

  it('[D90] given a dough whose flour says wheat, when it is boiled, then the kettle has had wheat, though nobody entered it', () => {
    const shop = shopOf({ line: ['wheat'], soaked: [], seed: [], dough: [], topping: [] })
    const state = stateWith({ shop, batches: [batch({ id: 'p', pieces: 48 })] })
    play(state, { type: 'dip', doughId: doughId('plain'), varietyId: null, pieces: 12 }, { nowMs: at('6:00') })
    play(
      state,
      {
        type: 'load',
        shelfId: shelfId('s1'),
        plannedId: null,
        lines: [{ varietyId: varietyId('all'), pieces: 12 }],
      },
      { nowMs: at('6:05') },
    )
    expect(contacts(state).kettle.map(({ contains }) => contains)).toEqual([['wheat']])
  })
})
