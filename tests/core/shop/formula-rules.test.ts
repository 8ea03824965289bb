import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formulaId, ingredientId, preparationId } from '../../../shared-core/ids.ts'
import type { Formula, Preparation } from '../../../shared-core/shop/formula.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import { doughRoomFile } from './formula-file.ts'
import { fullFile, problemsOfFile, shopOf, withValue } from './set-up-file-maker.ts'
import { anyShop } from './shop-maker.ts'

const FILE = doughRoomFile()

describe('a file that says what doughs are made of', () => {
  it('[D1] given a file from before there was a dough room, then it reads: nothing is made of anything, by hand', () => {
    const shop = shopOf(fullFile())
    expect(shop).toMatchObject({ doughRoom: null, mixer: { name: 'Mixer', washMs: 600_000 } })
    expect([shop.ingredients.size, shop.preparations.size, shop.formulas.size]).toEqual([0, 0, 0])
    for (const dough of shop.doughs.values())
      expect(dough).toMatchObject({ formulaId: null, pieceWeight: null, shapedBy: 'hand', labelWeight: null })
    for (const topping of shop.toppings.values()) expect(topping.madeOf).toEqual([])
  })

  it('[D2] given decimals, then the shop holds thousandths and milliseconds in the unit that was entered', () => {
    const shop = shopOf(FILE)
    const formula = shop.formulas.get(formulaId('plain'))
    expect(formula?.lines.map(({ percent, at }) => [percent, at])).toEqual([
      [97_500, 'start'],
      [2_500, 'start'],
      [57_000, 'start'],
      [2_000, 'start'],
      [600, 'start'],
      [5_000, 'mixIn'],
    ])
    expect(formula).toMatchObject({
      lossPercent: 1_500,
      doughAt: { thousandths: 76_000, unit: 'F' },
      mixMs: 720_000,
      mixInMs: 600_000,
      restMs: 420_000,
      bulk: { foldsMs: [1_800_000, 3_600_000], window: { targetMs: 9_000_000, unit: 'h' } },
      daysAhead: 2,
      decideByMinute: 630,
    })
    expect(shop.doughRoom).toMatchObject({
      fromMinute: 540,
      scaleStep: { thousandths: 250, unit: 'oz' },
      surplusTo: 'plain',
      tapAt: { thousandths: 58_500, unit: 'F' },
      coolsIn: 2_700_000,
    })
    expect(shop.preparations.get(preparationId('culture'))).toMatchObject({
      seedPercent: 20_000,
      fedWith: { thousandths: 500_000, unit: 'g' },
    })
  })

  it('[D2] given the same file, then its export read again is the same shop', () => {
    expect(shopOf(JSON.parse(JSON.stringify(toSetUpFile(shopOf(FILE)))))).toEqual(shopOf(FILE))
  })

  it.each([
    ['/formulas/0/lines/0/percent', -1, 'A number from 0.001 to 300.'],
    ['/formulas/0/lines/0/at', 'end', '"start" or "mixIn".'],
    ['/formulas/0/doughAt/unit', 'K', '"C" or "F".'],
    ['/formulas/0/daysAhead', 4, 'A whole number from 1 to 3.'],
    ['/formulas/0/decideBy', '25:00', 'A time of day from "00:00" to "23:59", with two digits each.'],
    ['/ingredients/0/kind', 'grain', expect.stringContaining('"flour", "water", "salt"')],
    ['/ingredients/0/bag', 50, 'An object with "amount", "unit".'],
    ['/preparations/0/lines', [], 'A list of 1 to 30 lines.'],
    ['/doughRoom/rollers', 0, 'A whole number from 1 to 20.'],
    ['/doughs/0/pieceWeight/unit', 'stone', '"g", "kg", "oz" or "lb".'],
  ])('[D2] given %s as %j, then the file says what would be right there', (path, value, right) => {
    expect(problemsOfFile(withValue(FILE, path, value))).toContainEqual({ path, wrong: expect.any(String), right })
  })
})

/** One thing wrong each, in the file that people write: what is said, and where. */
const WRONG: readonly (readonly [string, string, unknown, string, string])[] = [
  [
    '[D3]',
    '/formulas/0/lines/1/percent',
    1,
    '/formulas/0/lines',
    'The flours sum to 98.5 %: 1.5 % is missing. 100 % in all.',
  ],
  [
    '[D3]',
    '/formulas/0/lines/1/percent',
    2.501,
    '/formulas/0/lines',
    'The flours sum to 100.001 %: 0.001 % is too much. 100 % in all.',
  ],
  [
    '[D3]',
    '/preparations/0/lines/0/percent',
    90,
    '/preparations/0/lines',
    'The flours of a pre-ferment sum to 90 %: 10 % is missing. 100 % in all.',
  ],
  [
    '[D3]',
    '/preparations/1/lines/0/percent',
    50,
    '/preparations/1/lines',
    'The parts of a soaker without its water sum to 50 %: 50 % is missing. 100 % in all.',
  ],
  [
    '[D4]',
    '/formulas/0/lines/4/ingredient',
    'yest',
    '/formulas/0/lines/4/ingredient',
    'There is no ingredient "yest". The id of an ingredient: "high-gluten", "rye", "water", "salt", "yeast", "seeds", "old".',
  ],
  [
    '[D4]',
    '/ingredients/4/retired',
    true,
    '/formulas/0/lines/4/ingredient',
    'Its ingredient "yeast" is retired. An ingredient in use, or this retired too.',
  ],
  [
    '[D4]',
    '/formulas/0/preparations/0/preparation',
    'sponge',
    '/formulas/0/preparations/0/preparation',
    'There is no preparation "sponge". The id of a preparation: "culture", "soaked-seeds".',
  ],
  [
    '[D4]',
    '/preparations/1/lines/1/ingredient',
    'milk',
    '/preparations/1/lines/1/ingredient',
    'There is no ingredient "milk". The id of an ingredient: "high-gluten", "rye", "water", "salt", "yeast", "seeds", "old".',
  ],
  [
    '[D4]',
    '/doughs/0/formula',
    'sour',
    '/doughs/0/formula',
    'There is no formula "sour". The id of a formula: "plain".',
  ],
  [
    '[D4]',
    '/formulas/0/retired',
    true,
    '/doughs/0/formula',
    'Its formula "plain" is retired. A formula in use, or this retired too.',
  ],
  [
    '[D4]',
    '/toppings/0/madeOf/0/ingredient',
    'gold',
    '/toppings/0/madeOf/0/ingredient',
    'There is no ingredient "gold". The id of an ingredient: "high-gluten", "rye", "water", "salt", "yeast", "seeds", "old".',
  ],
  [
    '[D5]',
    '/formulas/0/preparations/1/percent',
    6,
    '/formulas/0/preparations',
    'Its preparations hold 6 % of "seeds", the formula has 5 %. At least as much in the formula, which counts what its preparations hold.',
  ],
  [
    '[D6]',
    '/formulas/0/lines/3/ingredient',
    'water',
    '/formulas/0/lines',
    '"water" stands twice. Each ingredient once at the start, once as a mix-in.',
  ],
  [
    '[D6]',
    '/formulas/0/preparations/1/preparation',
    'culture',
    '/formulas/0/preparations',
    '"culture" stands twice. Each preparation once.',
  ],
  [
    '[D6]',
    '/preparations/1/lines/1/ingredient',
    'seeds',
    '/preparations/1/lines',
    '"seeds" stands twice. Each ingredient once.',
  ],
  [
    '[D7]',
    '/formulas/0/mixInsAfter',
    null,
    '/formulas/0/mixInsAfter',
    'There are mix-ins and no time for them. Within the 12 min of mixing.',
  ],
  [
    '[D7]',
    '/formulas/0/mixInsAfter',
    { minutes: 12.5 },
    '/formulas/0/mixInsAfter',
    'Mix-ins go in after 12.5 min, when mixing is over. 12 min or before.',
  ],
  [
    '[D7]',
    '/formulas/0/lines/5/at',
    'start',
    '/formulas/0/mixInsAfter',
    'There is a time for mix-ins and no mix-in. None of the two, or both.',
  ],
  [
    '[D8]',
    '/formulas/0/bulk/folds',
    [{ minutes: 60 }, { minutes: 60 }],
    '/formulas/0/bulk/folds',
    'A fold comes no later than the one before it. Each later than the one before.',
  ],
  [
    '[D8]',
    '/formulas/0/bulk/folds',
    [{ minutes: 181 }],
    '/formulas/0/bulk/folds',
    'A fold after 181 min, when the bulk ferment is over. Within 3 h.',
  ],
  [
    '[D8]',
    '/formulas/0/bulk/chill/target',
    4,
    '/formulas/0/bulk/chill',
    'Earliest, target and latest are 8 h, 4 h and 20 h. None longer than the next: earliest, target, latest.',
  ],
  [
    '[D9]',
    '/preparations/1/seedPercent',
    5,
    '/preparations/1/seedPercent',
    'A soaker is built from seed. 0: only pre-ferments are.',
  ],
  [
    '[D9]',
    '/preparations/0/seedPercent',
    0,
    '/preparations/0/fedWith',
    'It is fed, and not built from seed. Not fed, or the percent of seed that it is built from.',
  ],
  [
    '[D10]',
    '/doughs/0/pieceWeight',
    null,
    '/doughs/0/pieceWeight',
    'Mixed by "plain", and nobody has said what a piece weighs. The weight of one piece as it is shaped.',
  ],
  [
    '[D10]',
    '/doughs/0/pieceWeight',
    { amount: 42.5, unit: 'lb' },
    '/doughs/0/pieceWeight',
    'A piece weighs 42.5 lb. From 5 g to 3000 g; is the unit right?',
  ],
  [
    '[D11]',
    '/formulas/0/doughAt',
    { degrees: 76, unit: 'C' },
    '/formulas/0/doughAt',
    'The dough is wished at 76 °C. From 5 °C to 45 °C (41 °F to 113 °F); is the unit right?',
  ],
  [
    '[D11]',
    '/doughRoom/hotTapAt',
    { degrees: 50, unit: 'F' },
    '/doughRoom/hotTapAt',
    'The hot tap runs at 50 °F, colder than the cold one. 58.5 °F or more.',
  ],
  [
    '[D12]',
    '/doughRoom/coolerBy',
    '09:00',
    '/doughRoom/coolerBy',
    'The last tray is in the cooler by 09:00, and work begins at 09:00. After 09:00.',
  ],
  [
    '[D12]',
    '/doughRoom/surplusTo',
    'sour',
    '/doughRoom/surplusTo',
    'There is no formula "sour". The id of a formula: "plain".',
  ],
]

describe('what does not fit in a dough room', () => {
  it('given all that the file says, then it fits', () => {
    expect(problemsOfFile(FILE)).toEqual([])
  })

  it.each(WRONG)('%s given %s as %j, then at %s: %s', (_rule, path, value, at, sentence) => {
    const said = problemsOfFile(withValue(FILE, path, value)).map((one) => [one.path, `${one.wrong} ${one.right}`])
    expect(said).toContainEqual([at, sentence])
  })

  it('[D4] given a retired formula of a retired ingredient, then it fits: old records name them', () => {
    const old = {
      ...FILE.formulas[0],
      id: 'old',
      retired: true,
      mixInsAfter: null,
      lines: [{ ingredient: 'old', percent: 50 }],
    }
    expect(problemsOfFile({ ...FILE, formulas: [...FILE.formulas, old] })).toEqual([])
  })

  it('[D3] given an ingredient that cannot be read, then nothing is said of sums that need it', () => {
    const broken = withValue(FILE, '/ingredients/1/kind', 'grain')
    expect(problemsOfFile(broken).map(({ path }) => path)).toEqual(['/ingredients/1/kind'])
  })
})

/** Changes by hand after which a formula no longer fits, whatever it was. */
const SPOILED: readonly (readonly [string, (formula: Formula) => Partial<Formula> | null | undefined])[] = [
  [
    '[D3] more flour',
    ({ lines: [first, ...rest] }) => first && { lines: [{ ...first, percent: first.percent + 1 }, ...rest] },
  ],
  [
    '[D4] an unknown ingredient',
    ({ lines }) => ({ lines: [...lines, { ingredientId: ingredientId('nobody'), percent: 1, at: 'start' }] }),
  ],
  ['[D6] a line twice', ({ lines }) => ({ lines: [...lines, ...lines.slice(0, 1)] })],
  [
    '[D7] mix-ins too late',
    ({ lines, mixMs }) => (lines.some(({ at }) => at === 'mixIn') ? { mixInMs: (mixMs + 1) as never } : null),
  ],
  [
    '[D5] less water than its pre-ferment holds',
    ({ lines, preparations }) =>
      preparations.length === 0
        ? null
        : { lines: lines.map((line) => (line.ingredientId === 'i2' ? { ...line, percent: 1 } : line)) },
  ],
  [
    '[D8] a fold after the bulk',
    ({ bulk }) => bulk && { bulk: { ...bulk, foldsMs: [(bulk.window.latestMs + 1) as never] } },
  ],
]

describe('any formula that fits', () => {
  it.each(SPOILED)('%s is noticed', (_name, spoil) => {
    let tried = 0
    fc.assert(
      fc.property(anyShop, (shop) => {
        const formula = shop.formulas.get(formulaId('plain'))
        const spoilt = formula === undefined ? null : spoil(formula)
        if (formula === undefined || spoilt === null || spoilt === undefined) return
        tried++
        const formulas = new Map(shop.formulas).set(formula.id, { ...formula, ...spoilt })
        expect(shopMisfits({ ...shop, formulas }).map(({ entity, id }) => [entity, id])).toContainEqual([
          'formula',
          'plain',
        ])
      }),
      { numRuns: 40 },
    )
    expect(tried).toBeGreaterThan(5)
  })

  it('[D9] given a soaker that is fed, then it is said', () => {
    const shop = shopOf(FILE)
    const soaker = shop.preparations.get(preparationId('soaked-seeds'))
    const fed: Preparation | undefined = soaker && { ...soaker, fedWith: { thousandths: 1, unit: 'kg' } }
    if (fed === undefined) throw new Error('no soaker')
    const preparations = new Map(shop.preparations).set(fed.id, fed)
    expect(shopMisfits({ ...shop, preparations }).map(({ wrong }) => wrong)).toEqual(['A soaker is fed.'])
  })
})
