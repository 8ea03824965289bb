import { describe, expect, it } from 'vitest'
import type { BakeLoad, BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { expectedOf } from '../../../shared-core/plan/bake-off/expected.ts'
import { wavesPlan } from '../../../shared-core/plan/bake-off/waves.ts'
import { bakeOffOf } from '../../../shared-core/plan/bake-off-of.ts'
import { joined } from '../../../shared-core/plan/joined.ts'
import { solved } from '../../../shared-core/plan/solved.ts'
import { violationsOf } from '../../reference/bake-off/feasible.ts'
import { scorePlan } from '../../reference/bake-off/score.ts'
import { lines } from '../support/make.ts'
import { asking, eveningLine, orderedAt } from './plan-day-support.ts'

/** The scored problem alone: no dough is worth anything tomorrow, boards are wet at once, one cooling for all. */
function scored(ordered = lines('sesame', 24)): BakeOff {
  const given = bakeOffOf(asking({ line: eveningLine({ ordered: orderedAt('6:00', ordered) }) }))
  const { rewetMin: _, ...boards } = given.boards
  const doughs = Object.fromEntries(Object.entries(given.doughs).map(([key, { pieces }]) => [key, { pieces }]))
  return { ...given, boards, doughs }
}

describe('what loads are expected to bring', () => {
  it.each([
    ['with an order at the opening', scored()],
    ['without', scored([])],
  ])('[I43] %s agrees with 2,000 simulated days, for the plan and for equal waves', (_name, given) => {
    for (const loads of [solved(given, 0.2), wavesPlan(given).loads]) {
      const simulated = scorePlan(given, { loads }, { days: 2_000 })
      const expected = expectedOf(given, loads)
      // 1 % of what is sold in all, and three standard errors of the simulated mean.
      const slack = 3 * simulated.standardError + 0.01 * 160 * 270
      expect(Math.abs(expected.profit - simulated.profit)).toBeLessThan(slack)
      expect(expected.lost).toBeCloseTo(simulated.lost, -1)
      expect(expected.left).toBeCloseTo(simulated.left, -1)
      expect(Math.abs(expected.ageMin - simulated.age)).toBeLessThan(4)
    }
  })

  it('[I43] one variety by hand: 40 there and nobody asks are all left; none there and 40 ask are all lost', () => {
    const [first] = scored([]).varieties
    if (first === undefined) throw new Error('the shop has varieties')
    const none = { ...scored([]), varieties: [{ ...first, onShelf: 40, demand: { ...first.demand, mean: 0 } }] }
    expect(expectedOf(none, [])).toMatchObject({ lost: 0, left: 40, missing: 0 })
    const asked = { ...scored([]), varieties: [{ ...first, onShelf: 0, demand: { ...first.demand, mean: 40 } }] }
    expect(expectedOf(asked, []).lost).toBeCloseTo(40, 6)
    expect(expectedOf(asked, []).profit).toBeCloseTo(-40 * first.lostSale, 4)
  })
})

describe('dough that keeps its worth for tomorrow', () => {
  it('[I43] is weighed once: baking it is as dear as where a piece costs so much more', () => {
    const given = scored([])
    const kept = Object.entries(given.doughs).map(([key, { pieces }]) => [key, { pieces, carryValue: KEPT_CENTS }])
    const dearer = given.varieties.map((one) => ({ ...one, cost: one.cost + KEPT_CENTS }))
    const loads = solved({ ...given, doughs: Object.fromEntries(kept) }, 0.2)
    expect(loads).toEqual(solved({ ...given, varieties: dearer }, 0.2))
    expect(loads).not.toEqual(solved(given, 0.2))
  })
})

/** Most of what a piece costs. */
const KEPT_CENTS = 30

describe('equal waves', () => {
  it('[I42] are feasible, come every 90 minutes and bring less than the plan', () => {
    const given = scored()
    const waves = wavesPlan(given).loads
    expect(violationsOf(given, { loads: waves })).toEqual([])
    expect(waves.length).toBeGreaterThan(3)
    const wave = (load: BakeLoad) => Math.floor((load.in - given.oven.readyMin) / 90)
    expect(new Set(waves.map(wave)).size).toBeGreaterThan(2)
    for (const load of waves) expect(load.in - given.oven.readyMin - 90 * wave(load)).toBeLessThan(45)
    expect(expectedOf(given, waves).profit).toBeLessThan(expectedOf(given, solved(given, 0.2)).profit)
  })
})

describe('small loads', () => {
  it('[I45] are put together where that costs less than a load is worth; dough and pieces stay', () => {
    const given = scored([])
    const loads = solved(given, 0.2)
    const together = joined(given, loads)
    expect(together.length).toBeLessThan(loads.length)
    const pieces = (some: readonly BakeLoad[]) => some.flatMap((one) => one.lines).reduce((sum, [, n]) => sum + n, 0)
    expect(pieces(together)).toBe(pieces(loads))
    const lost = expectedOf(given, loads).profit - expectedOf(given, together).profit
    expect(lost).toBeLessThan(50 * (loads.length - together.length))
    expect(violationsOf(given, { loads: together })).toEqual([])
  })
})
