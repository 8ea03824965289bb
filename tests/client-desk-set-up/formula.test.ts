import { describe, expect, it } from 'vitest'
import { draftOf } from '../../client/desk/set-up/draft.ts'
import { degreesIn } from '../../client/desk/set-up/fields/degrees-field.tsx'
import { bakersTable, trialFlour } from '../../client/desk/set-up/formula/bakers-table.ts'
import { lastChange } from '../../client/desk/set-up/formula/formula-acts.tsx'
import { addable, formulaLineToAdd, lineToAdd, withLines } from '../../client/desk/set-up/formula/formula-edit.ts'
import { allergensTold } from '../../client/desk/set-up/parts/by-ingredients.tsx'
import { inLanguage } from '../../client/desk/set-up/picks.ts'
import { placeOf } from '../../client/desk/set-up/route.ts'
import { toldChanges } from '../../client/desk/set-up/told-changes.ts'
import type { Version } from '../../client/desk/set-up/versions.ts'
import { deskWords } from '../../client/words/desk.ts'
import { setUpWords } from '../../client/words/set-up.ts'
import { wordsFor } from '../../client/words/words.ts'
import { allergensOfDough, allergensOfFormula } from '../../shared-core/dough/allergens.ts'
import { doughId, formulaId, ingredientId } from '../../shared-core/ids.ts'
import { defaultDoughRoom, newFormula } from '../../shared-core/shop/default-dough-room.ts'
import type { Formula } from '../../shared-core/shop/formula.ts'
import { pickableIngredients } from '../../shared-core/shop/pickable-ingredients.ts'
import { applySetUp } from '../../shared-core/shop/set-up-apply.ts'
import type { SetUpChange } from '../../shared-core/shop/set-up-change.ts'
import { shopMisfits } from '../../shared-core/shop/set-up-rules.ts'
import type { Language, Shop } from '../../shared-core/shop/shop.ts'
import { must } from '../../shared-core/support.ts'
import { epochMs } from '../../shared-core/units.ts'
import { doughRoomFile } from '../core/shop/formula-file.ts'
import { shopOf } from '../core/shop/set-up-file-maker.ts'
import { shopWith } from '../core/support/shop.ts'

const SHOP = shopOf(doughRoomFile())
const PLAIN = must(SHOP.formulas, formulaId('plain'))
const ingredient = (id: string) => must(SHOP.ingredients, ingredientId(id))
const change = (parts: Partial<Formula>): SetUpChange => ({ entity: 'formula', value: { ...PLAIN, ...parts } })

describe('a formula that is typed', () => {
  it('given a flour to add, then it has what is missing to 100 %; anything else one percent', () => {
    const lines = PLAIN.lines.filter(({ ingredientId: id }) => id !== 'rye')
    expect(lineToAdd(SHOP, lines, ingredient('rye'))).toEqual({ ingredientId: 'rye', percent: 2_500 })
    expect(lineToAdd(SHOP, PLAIN.lines, ingredient('rye')).percent).toBe(1_000)
    expect(lineToAdd(SHOP, lines, ingredient('salt')).percent).toBe(1_000)
  })

  it('given an ingredient that stands there, then it is added at the other time, and not a third time', () => {
    const water = formulaLineToAdd(SHOP, PLAIN.lines, ingredient('water'))
    expect(water.at).toBe('mixIn')
    const more = (lines: Formula['lines']) => addable(SHOP, lines, 2).map(({ id }) => id)
    expect(more(PLAIN.lines)).toContain('water')
    expect(more([...PLAIN.lines, water])).not.toContain('water')
    expect(more([])).not.toContain('old')
  })

  it('[D7] given the first mix-in, then it has a time within the mixing; when the last is gone, there is none', () => {
    const bare = withLines(
      PLAIN,
      PLAIN.lines.filter(({ at }) => at === 'start'),
    )
    expect(bare.mixInMs).toBeNull()
    expect(withLines(bare, PLAIN.lines).mixInMs).toBe(600_000)
    expect(withLines({ ...bare, mixMs: 300_000 as Formula['mixMs'] }, PLAIN.lines).mixInMs).toBe(300_000)
    expect(withLines(PLAIN, PLAIN.lines).mixInMs).toBe(PLAIN.mixInMs)
  })

  it('given 50 lb of flour, then all and bowl stand beside each line, and each dough’s pieces by weight', () => {
    const table = bakersTable(SHOP, PLAIN, 22_679_619)
    const row = (key: string) => table.rows.find((one) => one.key === key)
    // By hand: 57 % of 50 lb are 28.5 lb of water; 6.25 lb of it are in the culture, 2 lb in the soaked seeds.
    expect(row('water')?.inAll).toBeCloseTo(28.5 * 453_592.37, -1)
    expect(Math.round((row('water')?.inBowl ?? 0) / 28_349.523125)).toBe(Math.round(20.25 * 16))
    expect(row('seeds')).toMatchObject({ percent: 5_000, at: 'mixIn', inBowl: 0 })
    expect(row('culture')).toMatchObject({ percent: null, inAll: null, name: 'Culture' })
    expect(table.totalPercent).toBe(164_600)
    // 82.3 lb less 1.5 % are 1297.05 oz: 305 pieces of 4.25 oz.
    expect(table.makes.map(({ dough, pieces }) => [dough.id, pieces])).toEqual([['plain', 305]])
  })

  it('given a mixer, then weights are shown for the most that it takes', () => {
    expect(trialFlour(SHOP)).toEqual({ thousandths: 50_000, unit: 'lb' })
    expect(trialFlour(shopWith())).toEqual({ thousandths: 25_000, unit: 'kg' })
  })
})

describe('temperatures of the form', () => {
  it.each([
    [{ thousandths: 24_000, unit: 'C' }, 'F', false, 75.2],
    [{ thousandths: 24_000, unit: 'F' }, 'C', true, 13.3],
    [{ thousandths: 76_500, unit: 'F' }, 'F', false, 76.5],
  ] as const)('given %j in °%s, a difference: %s, then %s', (value, unit, isDifference, shown) => {
    expect(degreesIn(value, unit, isDifference)).toBe(shown)
  })
})

describe('a shop that begins with formulas', () => {
  it.each(['en', 'es'] as const)(
    'given the usual ingredients in %s, then a new formula of them fits as it is',
    (language) => {
      const ingredients = pickableIngredients(language).map((value): SetUpChange => ({ entity: 'ingredient', value }))
      const shop = applySetUp(shopWith(), ingredients)
      const formula = { ...newFormula(shop), id: formulaId('plain'), name: 'Plain' }
      expect(formula.lines.map(({ percent }) => percent)).toEqual([100_000, 55_000, 2_000, 1_500, 500])
      const room = defaultDoughRoom(shop.profile)
      const then = applySetUp(shop, [
        { entity: 'formula', value: formula },
        { entity: 'doughRoom', value: room },
      ])
      expect(shopMisfits(then)).toEqual([])
    },
  )

  it('given another language, then picked ingredients are called so, and typed names stay', () => {
    const shop = applySetUp(
      shopWith(),
      pickableIngredients('en').map((value) => ({ entity: 'ingredient', value })),
    )
    const salt = must(shop.ingredients, ingredientId('salt'))
    const own = applySetUp(shop, [{ entity: 'ingredient', value: { ...salt, name: 'Sea salt' } }])
    const then = draftOf(own, inLanguage(own, 'es'))
    expect(then.ingredients.get(ingredientId('water'))?.name).toBe('Agua')
    expect(then.ingredients.get(ingredientId('salt'))?.name).toBe('Sea salt')
  })
})

describe('what follows from the ingredients', () => {
  it('given a formula with seeds in a soaker, then each allergen is told with the ingredients that bring it', () => {
    const { say } = tellingIn('en', SHOP)
    expect(allergensTold(SHOP, allergensOfFormula(SHOP, PLAIN), say)).toEqual([
      'wheat (High-gluten flour)',
      'sesame (Seeds)',
    ])
    // Entered at the dough itself: no ingredient brings it.
    expect(allergensTold(SHOP, allergensOfDough(SHOP, doughId('plain')), say).join()).not.toContain('egg')
  })
})

describe('what will change in a formula, in words', () => {
  const told = (changes: readonly SetUpChange[], language: Language) => {
    const then = draftOf(SHOP, changes)
    return toldChanges(SHOP, changes, tellingIn(language, then)).flatMap(({ what, lines }) => [what, ...lines])
  }

  it('given other percentages, warmth, folds and a dough room, then each is told in its unit', () => {
    const changes: readonly SetUpChange[] = [
      change({
        lines: PLAIN.lines.map((line) => (line.ingredientId === 'salt' ? { ...line, percent: 1_900 } : line)),
        doughAt: { thousandths: 24_500, unit: 'C' },
        mixMs: 660_000 as Formula['mixMs'],
        bulk: null,
      }),
      { entity: 'doughRoom', value: null },
    ]
    expect(told(changes, 'en')).toEqual([
      'Formula Plain',
      'Formula: High-gluten flour 97.5 %, Rye flour 2.5 %, Water 57 %, Salt 2 %, Instant yeast 0.6 %, Seeds 5 % → High-gluten flour 97.5 %, Rye flour 2.5 %, Water 57 %, Salt 1.9 %, Instant yeast 0.6 %, Seeds 5 %',
      'Dough temperature wished: 76 °F → 24.5 °C',
      'Mixing: 12 min → 11 min',
      'Bulk ferment: 2 – 2.5 – 3 h; Folds 30 min, 60 min; Chilled in bulk 8 – 12 – 20 h → No bulk ferment',
      'Dough room',
      'not said',
    ])
    expect(told(changes, 'es')).toContain('Amasado: 12 min → 11 min')
  })
})

describe('a formula’s last change and its card', () => {
  it('given versions, then the newest that touched the formula, and not only its place, is the last', () => {
    const version = (seq: number, id: string, what: Version['told'][number]['what']): Version => ({
      seq,
      atMs: epochMs(seq * 1_000),
      device: null,
      isPlanned: false,
      told: [{ entity: 'formula', id, name: id, what, fields: [] }],
      lost: 0,
    })
    const versions = [version(9, 'plain', 'moved'), version(8, 'rye', 'changed'), version(7, 'plain', 'changed')]
    expect(lastChange([...versions, version(6, 'plain', 'added')], PLAIN)?.seq).toBe(7)
    expect(lastChange(versions.slice(0, 2), PLAIN)).toBeNull()
  })

  it('given its address, then the card is of that formula', () => {
    expect(placeOf('#set-up/card/plain')).toEqual({ kind: 'card', formula: 'plain' })
  })
})

function tellingIn(language: Language, shop: Shop) {
  const words = deskWords(wordsFor(language, shop))
  return { words, say: setUpWords(words), shop }
}
