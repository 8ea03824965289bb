import jstat from 'jstat'
import { describe, expect, it } from 'vitest'
import { packageCheck } from '../../shared-core/dough/package-weight.ts'
import { allowedVariation } from '../../shared-core/dough/package-weight-table.ts'
import { tOf } from '../../shared-core/dough/student-t.ts'

/** Twelve packages labelled 113 g: errors in grams; figures worked with numpy and scipy 1.17.1 by the rules of NIST HB 133. */
const SAMPLES = [
  {
    what: 'on average a little light, within the sample error limit',
    errors: [-2.1, 0.4, 1, -3.2, -0.8, 2.5, -1.1, 0, -2.6, 1.7, -0.5, -1.9],
    mean: -0.55,
    spread: 1.75266032,
    limit: 1.11358724,
    verdict: 'passes',
  },
  {
    what: 'on average too light',
    errors: [-4.1, -2.4, -1, -5.2, -2.8, -0.5, -3.1, -2, -4.6, -0.7, -1.5, -3.9],
    mean: -2.65,
    spread: 1.57104482,
    limit: 0.99819425,
    verdict: 'failsAverage',
  },
  {
    what: 'heavy on average, one package below what is allowed',
    errors: [-8, 3, 2, 4, 1, 0, 2, 3, 1, 2, 4, 3],
    mean: 1.41666667,
    spread: 3.20392751,
    limit: null,
    verdict: 'failsPackages',
  },
] as const

describe('the package-weight check', () => {
  it.each(SAMPLES)(
    '[D96] given 113 g packages $what, when they are checked, then the worked figures and verdict',
    (sample) => {
      const found = packageCheck(113_000, weighed(sample.errors))
      expect(found.averageErrorMilligrams / 1_000).toBeCloseTo(sample.mean, 7)
      expect((found.spreadMilligrams ?? 0) / 1_000).toBeCloseTo(sample.spread, 7)
      // The table of t has six digits.
      if (sample.limit !== null) expect((found.errorLimitMilligrams ?? 0) / 1_000).toBeCloseTo(sample.limit, 5)
      expect(found.verdict).toBe(sample.verdict)
    },
  )

  it.each([
    ['eleven packages', 113_000, Array<number>(11).fill(-1), 'tooFew'],
    ['a label above the table', 3_000_000, Array<number>(12).fill(1), 'notInTable'],
    ['all of them a gram light, to the milligram', 113_000, Array<number>(12).fill(-1), 'failsAverage'],
    ['all of them far too light', 113_000, Array<number>(12).fill(-9), 'failsBoth'],
    ['exactly at what is allowed', 113_000, [-7.2, ...Array<number>(11).fill(2)], 'passes'],
    ['one too light of 48, as their plan allows', 113_000, [-8, ...Array<number>(47).fill(2)], 'passes'],
    ['two too light of 48', 113_000, [-8, -8, ...Array<number>(46).fill(2)], 'failsPackages'],
  ] as const)('[D96] given %s, when it is checked, then %s', (_, label, errors, verdict) => {
    const weights = errors.map((grams) => label + grams * 1_000)
    expect(packageCheck(label, weights).verdict).toBe(verdict)
  })

  it('[D97] given the two rows that were read in the handbook (113 g, 907 g), when others are asked for, then they say that they are from memory', () => {
    expect(allowedVariation(113_000)).toMatchObject({ milligrams: 7_200, seen: true })
    expect(allowedVariation(907_000)).toMatchObject({ milligrams: 31_700, seen: true })
    // 8 oz: 7/16 oz in an auditors' forum, 0.028 lb in the row.
    expect(allowedVariation(226_796)).toMatchObject({ milligrams: 12_700, seen: false })
    expect(allowedVariation(20_000)).toMatchObject({ milligrams: 2_000, seen: false })
    expect(allowedVariation(2_700_000)).toBeNull()
  })

  it('[D97] given larger labels, when the allowed variation is looked up, then it never falls', () => {
    let last = 0
    for (let label = 1_000; label < 2_600_000; label += 1_000) {
      const allowed = allowedVariation(label)?.milligrams ?? 0
      expect(allowed).toBeGreaterThanOrEqual(last)
      last = allowed
    }
  })

  it('[D96] given the table of t, when it is held to jstat and to the printed correction factors, then they agree', () => {
    for (let freedom = 1; freedom < 120; freedom += 1) {
      expect(tOf(freedom) / jstat.studentt.inv(0.975, freedom)).toBeCloseTo(1, 6)
    }
    // Printed sample correction factors, from memory; to 0.001, as the last digit is not always rounded alike.
    const printed = [
      [12, 0.635],
      [24, 0.422],
      [48, 0.291],
      [2, 8.984],
      [5, 1.241],
      [11, 0.672],
    ] as const
    for (const [packages, factor] of printed)
      expect(Math.abs(tOf(packages - 1) / Math.sqrt(packages) - factor)).toBeLessThan(0.001)
  })
})

function weighed(errors: readonly number[]): number[] {
  return errors.map((grams) => Math.round(113_000 + grams * 1_000))
}
