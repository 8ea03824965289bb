import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formulaFigures } from '../../../shared-core/dough/formula-figures.ts'
import { preparationLines, seedMilligrams, totalPercent } from '../../../shared-core/dough/percents.ts'
import { roundedToScale } from '../../../shared-core/dough/round.ts'
import {
  doughMilligramsOf,
  doughOf,
  doughToMix,
  exactLines,
  flourFor,
  sheetLines,
} from '../../../shared-core/dough/scale.ts'
import { ingredientId, preparationId } from '../../../shared-core/ids.ts'
import type { Formula } from '../../../shared-core/shop/formula.ts'
import '../../fixed-seed.ts'
import { anyDoughRoom } from '../shop/formula-maker.ts'
import { shopWith, table } from '../support/shop.ts'
import { doughRoom, INGREDIENTS, PLAIN_LINES, percents, preparation } from './kitchen.ts'
import { formula } from './room-mix.ts'

const SPONGE = preparation({ id: 'sponge', lines: percents({ flour: 100, water: 60, yeast: 0.2 }) })
const SOAKER = preparation({ id: 'soaker', kind: 'soaker', lines: percents({ seeds: 100, water: 150 }) })
const shop = shopWith({ ingredients: INGREDIENTS, preparations: table([SPONGE, SOAKER]), doughRoom: doughRoom() })

const SEEDED = formula({
  lines: [...percents({ flour: 100, water: 75, salt: 2, yeast: 0.6 }), ...percents({ seeds: 12, raisins: 8 }, 'mixIn')],
  preparations: [
    { preparationId: preparationId('sponge'), percent: 20_000 },
    { preparationId: preparationId('soaker'), percent: 10_000 },
  ],
})

describe('a mix sheet', () => {
  it('[D20] given a pre-ferment and a soaker, when 10 kg of flour are mixed, then it is the overall formula less what they hold', () => {
    const found = exactLines(shop, SEEDED, 10_000_000).map(({ key, at, milligrams }) => [
      key,
      at,
      Math.round(milligrams),
    ])
    expect(found).toEqual([
      ['flour', 'start', 8_000_000],
      ['water', 'start', 7_500_000 - 1_200_000 - 1_500_000],
      ['salt', 'start', 200_000],
      ['yeast', 'start', 60_000 - 4_000],
      ['seeds', 'mixIn', 200_000],
      ['raisins', 'mixIn', 800_000],
      ['sponge', 'start', 3_204_000],
      ['soaker', 'mixIn', 2_500_000],
    ])
  })

  it('[D20] given an ingredient at both times, when it is listed, then the later line has a key of its own', () => {
    const twice = formula({ lines: [...percents({ flour: 100, salt: 1 }), ...percents({ salt: 1 }, 'mixIn')] })
    expect(sheetLines(shop, twice, 1_000_000).map(({ key, at }) => [key, at])).toEqual([
      ['flour', 'start'],
      ['salt', 'start'],
      ['salt+', 'mixIn'],
    ])
  })

  it('[D20] given any formula that the set-up takes, when it is scaled, then its lines sum to the dough and none is negative', () => {
    fc.assert(
      fc.property(anyDoughRoom, fc.integer({ min: 1, max: 200_000_000 }), (room, flour) => {
        const within = shopWith(room)
        for (const of of room.formulas.values()) {
          const lines = exactLines(within, of, flour)
          const sum = lines.reduce((total, { milligrams }) => total + milligrams, 0)
          expect(sum / ((flour * totalPercent(of.lines)) / 100_000)).toBeCloseTo(1, 9)
          expect(lines.every(({ milligrams }) => milligrams >= 0)).toBe(true)
          expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length)
        }
      }),
    )
  })

  it('[D20] given pieces and a loss, when dough and flour are reckoned, then flour for the dough of some flour is that flour', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1_000, max: 500_000_000 }), fc.integer({ min: 0, max: 30_000 }), (flour, loss) => {
        const of = formula({ lines: PLAIN_LINES, lossPercent: loss })
        expect(Math.abs(flourFor(of, doughOf(of, flour)) - flour)).toBeLessThanOrEqual(1)
        const dough = doughToMix(of, flour)
        expect(Math.abs(dough * (1 - loss / 100_000) - flour)).toBeLessThanOrEqual(1)
      }),
    )
  })
})

/** Weights of a sheet: a few large lines, a few small ones. */
const anyWeights = fc.array(
  fc.oneof(fc.double({ min: 0, max: 3e4, noNaN: true }), fc.double({ min: 0, max: 5e7, noNaN: true })),
  { minLength: 1, maxLength: 10 },
)
const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, one) => sum + one, 0)

describe('weights that a scale can show', () => {
  it.each([
    [[8_938_547.5, 5_094_972.1, 178_771], 5_000, [8_940_000, 5_095_000, 179_000]],
    [[1_000_400, 1_000_400, 1_000_400], 1_000, [1_001_000, 1_000_000, 1_000_000]],
    [[1_000_300, 1_000_900, 1_000_700], 1_000, [1_000_000, 1_001_000, 1_001_000]],
    [[53_631.3], 5_000, [53_500]],
    [[2_000], 5_000, [2_000]],
    [[], 5_000, []],
  ])('[D21] given %j, when rounded to %i, then %j', (exact, step, expected) => {
    expect(roundedToScale(exact, step)).toEqual(expected)
  })

  it('[D21] given any weights, when they are rounded, then the total is kept to half a step and each line to one', () => {
    fc.assert(
      fc.property(anyWeights, fc.constantFrom(100, 1_000, 2_000, 5_000, 28_350, 45_359), (exact, step) => {
        const rounded = roundedToScale(exact, step)
        exact.forEach((weight, n) => {
          expect(Math.abs((rounded[n] ?? 0) - weight)).toBeLessThanOrEqual(step + 1e-6)
          if (weight >= 100 * step) expect((rounded[n] ?? 0) % step).toBe(0)
        })
        if (exact.some((weight) => weight >= 100 * step))
          expect(Math.abs(sumOf(rounded) - sumOf(exact))).toBeLessThanOrEqual(step / 2 + 1e-6)
      }),
    )
  })

  it('[D21] given coarse weights only, when they are rounded, then their total is the exact one to the nearest step', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 500_000, max: 5e7, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (exact) => {
          expect(sumOf(roundedToScale(exact, 5_000))).toBe(Math.round(sumOf(exact) / 5_000) * 5_000)
        },
      ),
    )
  })

  it('[D21] given a small weight of ten grams or more, when it is rounded, then it is off by half a percent at most', () => {
    fc.assert(
      fc.property(fc.double({ min: 10_000, max: 499_000, noNaN: true }), (weight) => {
        const [yeast = 0] = roundedToScale([weight, 20_000_000], 5_000)
        expect(Math.abs(yeast - weight) / weight).toBeLessThanOrEqual(0.005)
      }),
    )
  })

  it('[D21] given the scale’s step, when a sheet is made, then its dough is what was wanted to half a step', () => {
    const lines = sheetLines(shop, SEEDED, 12_345_678)
    expect(Math.abs(doughMilligramsOf(lines) - doughOf(SEEDED, 12_345_678))).toBeLessThanOrEqual(2_500)
    expect(lines.every(({ milligrams }) => Number.isInteger(milligrams) && milligrams > 0)).toBe(true)
  })
})

describe('a preparation', () => {
  const culture = preparation({ id: 'culture', lines: percents({ flour: 100, water: 80 }), seedPercent: 20_000 })

  it('[D22] given seed, when it is built, then as much is kept back: its lines alone sum to what mixes take', () => {
    expect(preparationLines(culture, 1_800_000).map(({ milligrams }) => milligrams)).toEqual([1_000_000, 800_000])
    expect(seedMilligrams(culture, 1_800_000)).toBe(200_000)
  })

  it('[D22] given any amount, when it is built, then what goes in sums exactly to it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 200_000 }), { minLength: 1 }),
        fc.nat(90_000_000),
        (shares, amount) => {
          const lines = shares.map((percent) => ({ ingredientId: ingredientId('flour'), percent }))
          const made = preparationLines({ lines }, amount)
          expect(sumOf(made.map(({ milligrams }) => milligrams))).toBe(amount)
          expect(made.every(({ milligrams }) => milligrams >= 0)).toBe(true)
        },
      ),
    )
  })
})

describe('the figures of a formula', () => {
  it('[D23] given a soaker, when hydration is told, then its water stands apart and the pre-ferment’s is counted', () => {
    expect(formulaFigures(shop, SEEDED)).toEqual({
      flour: 100_000,
      hydration: 60_000,
      soakerWater: 15_000,
      salt: 2_000,
      yeast: 600,
      malt: 0,
      mixIns: 8_000,
      total: 197_600,
      prefermentedFlour: 20_000,
      warnings: [],
    })
  })

  const warned = (shares: { readonly [key: string]: number }, parts: Partial<Formula> = {}) =>
    formulaFigures(shop, { ...formula({ lines: percents(shares) }), ...parts }).warnings.map(
      ({ code, is }) => `${code} ${is}`,
    )

  it.each([
    [{ flour: 100, water: 57, salt: 2, yeast: 0.6, malt: 1.5 }, []],
    [{ flour: 100, water: 45, salt: 1, yeast: 0.08, malt: 0 }, []],
    [{ flour: 100, water: 60, salt: 2.5, yeast: 3, malt: 6 }, []],
    [{ flour: 100, water: 44.9, salt: 0.9, yeast: 0.07 }, ['hydration low', 'salt low', 'yeast low']],
    [
      { flour: 100, water: 60.1, salt: 2.6, yeast: 3.1, malt: 6.1 },
      ['hydration high', 'salt high', 'yeast high', 'malt high'],
    ],
    [{ flour: 90, rye: 5, water: 55, salt: 2, yeast: 1 }, ['flour-sum low']],
  ])('[D23] given %j, when it is looked at, then %j is unusual', (shares, expected) => {
    expect(warned(shares)).toEqual(expected)
  })

  it('[D23] given a culture that raises it, when there is no yeast, then nothing is unusual in that', () => {
    const culture = preparation({ id: 'culture', seedPercent: 20_000 })
    const within = { ...shop, preparations: table([culture]) }
    const lines = percents({ flour: 100, water: 55, salt: 2 })
    const of = formula({ lines, preparations: [{ preparationId: culture.id, percent: 20_000 }] })
    expect(formulaFigures(within, of).warnings).toEqual([])
    expect(formulaFigures(within, formula({ lines })).warnings.map(({ code }) => code)).toEqual(['yeast'])
  })
})
