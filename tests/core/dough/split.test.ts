import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MixPieces } from '../../../shared-core/dough/mix.ts'
import { splitFlour, splitPieces } from '../../../shared-core/dough/split.ts'
import { doughId } from '../../../shared-core/ids.ts'
import '../../fixed-seed.ts'

const mixer = (least: number, most: number) => ({
  leastFlour: { thousandths: least * 1_000, unit: 'kg' as const },
  mostFlour: { thousandths: most * 1_000, unit: 'kg' as const },
})
const KG = 1_000_000
const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0)

describe('flour split into mixes', () => {
  it.each([
    [0, [], 'fits'],
    [9.9 * KG, [9.9 * KG], 'belowLeast'],
    [10 * KG, [10 * KG], 'fits'],
    [25 * KG, [25 * KG], 'fits'],
    [50 * KG, [25 * KG, 25 * KG], 'fits'],
    [50 * KG + 1, [16_666_667, 16_666_667, 16_666_667], 'fits'],
  ])('[D27] given %i mg in a mixer of 10 to 25 kg, when it is split, then %j: %s', (flour, mixes, fits) => {
    expect(splitFlour(flour, mixer(10, 25))).toMatchObject({ mixes, fits })
  })

  it('[D27] given a mixer of 20 to 25 kg, when 30 kg are split, then no equal mixes are within it and it is said', () => {
    expect(splitFlour(30 * KG, mixer(20, 25))).toMatchObject({ mixes: [15 * KG, 15 * KG], fits: 'unequal' })
  })

  it('[D27] given a mixer of 1 to 50 g by mistake, when 30 kg are split, then no more mixes are made than a day may have', () => {
    const { mixes, fits } = splitFlour(30 * KG, mixer(0.001, 0.05))
    expect([mixes.length, sum(mixes), fits]).toEqual([60, 30 * KG, 'unequal'])
  })

  it('[D27] given no mixer, when flour is split, then it is one mix', () => {
    expect(splitFlour(99 * KG, null)).toEqual({ mixes: [99 * KG], fits: 'fits', mixer: null })
  })

  it('[D27] given any flour and mixer, when it is split, then it sums exactly, is even, and within the limits if any number is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 * KG }),
        fc.nat(40),
        fc.integer({ min: 5, max: 60 }),
        (flour, least, more) => {
          const most = least + more
          const { mixes, fits } = splitFlour(flour, mixer(least, most))
          expect(sum(mixes)).toBe(flour)
          expect(Math.max(...mixes) - Math.min(...mixes)).toBeLessThanOrEqual(1)
          expect(Math.max(...mixes)).toBeLessThanOrEqual(most * KG)
          const isPossible = Array.from({ length: 301 }, (_, n) => flour / (n + 1)).some(
            (each) => Math.floor(each) >= least * KG && Math.ceil(each) <= most * KG,
          )
          expect(fits === 'fits').toBe(isPossible)
        },
      ),
    )
  })
})

const anyPieces: fc.Arbitrary<MixPieces[]> = fc
  .array(
    fc.record({ pieces: fc.integer({ min: 1, max: 400 }), pieceMilligrams: fc.constantFrom(60_000, 113_400, 120_000) }),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((list) => list.map((one, n) => ({ ...one, doughId: doughId(`d${n}`) })))

describe('pieces split over mixes', () => {
  it('[D27] given two doughs of one formula, when they are split, then each is shaped of as few mixes as can be', () => {
    const given = [
      { doughId: doughId('plain'), pieces: 80, pieceMilligrams: 120_000 },
      { doughId: doughId('mini'), pieces: 20, pieceMilligrams: 60_000 },
    ]
    const found = splitPieces([5, 5], given).map((mix) => mix.map(({ doughId: id, pieces }) => [id, pieces]))
    expect(found).toEqual([
      [['plain', 45]],
      [
        ['plain', 35],
        ['mini', 20],
      ],
    ])
  })

  it('[D27] given any pieces, when they are split, then none is lost and each mix holds its share to within a piece', () => {
    fc.assert(
      fc.property(anyPieces, fc.integer({ min: 1, max: 6 }), (given, count) => {
        const mixes = Array.from({ length: count }, () => 1)
        const split = splitPieces(mixes, given)
        for (const { doughId: id, pieces } of given) {
          const found = split.flat().filter((one) => one.doughId === id)
          expect(sum(found.map((one) => one.pieces))).toBe(pieces)
        }
        const weight = (list: readonly MixPieces[]) => sum(list.map((one) => one.pieces * one.pieceMilligrams))
        for (const mix of split) expect(Math.abs(weight(mix) - weight(given) / count)).toBeLessThanOrEqual(120_000)
        if (count > 1) expect(Math.abs(weight(split[0] ?? []) - weight(given) / count)).toBeLessThanOrEqual(60_000)
        expect(split.flat().every(({ pieces }) => pieces > 0)).toBe(true)
      }),
    )
  })
})
