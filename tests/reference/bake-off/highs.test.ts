import highs from 'highs'
import { describe, expect, it } from 'vitest'
import type { BakeOff, VarietyGiven } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { violationsOf } from './feasible.ts'
import { madeShop, madeVariety, orderOf } from './made-shop.ts'
import type { Optimum } from './optimum.ts'
import { solveBeforeOpening, solveOneRush, solveOrdersOnly } from './optimum.ts'
import { scorePlans } from './score.ts'

/** Optima proven by HiGHS (npm package highs), on shops for which the problem is a mixed-integer program. */
const solver = await highs()

const DAYS = { days: 4_000, seed: 11 }
/** What the planner must reach of what baking adds, at the least. */
const PART_REACHED = 0.99

const oven = (shelves: number, pieces: number, mustBeEmptyMin = 660): BakeOff['oven'] => ({
  readyMin: 270,
  mustBeEmptyMin,
  firstSideMin: 3.5,
  handlingMin: 1,
  shelves: Array.from({ length: shelves }, (_, n) => ({ name: String(n + 1), pieces })),
})
/** Kettle and boards that are never short. */
const LINE = { kettle: { pieces: 72, cycleMin: 0.5 }, boards: { count: 60, pieces: 6, maxWaitMin: 8 } }

const rush = (name: string, at: number, mean: number, own: Partial<VarietyGiven> & { dispersion?: number } = {}) => {
  const variety = madeVariety({ name, mean, bakeMin: 19, stalePerHour: 0.3, ...own })
  const profile: VarietyGiven['demand']['profile'] = [
    [at, 0],
    [at + 1, 1],
  ]
  return { ...variety, demand: { ...variety.demand, profile } }
}

const RUSHES: [string, BakeOff][] = [
  [
    'one shelf, four rushes',
    madeShop({
      ...LINE,
      open: 300,
      oven: oven(1, 36),
      varieties: [
        rush('Plain', 325, 36),
        rush('Sesame', 350, 24, { dispersion: 3, price: 1.6 }),
        rush('Poppy', 365, 16, { price: 2.4, lostSale: 1 }),
        rush('Onion', 390, 22, { dispersion: 20, cost: 0.9 }),
      ],
    }),
  ],
  [
    'two shelves, dough short',
    madeShop({
      ...LINE,
      open: 300,
      oven: oven(2, 24),
      doughs: { plain: { pieces: 102 }, rye: { pieces: 36 } },
      varieties: [
        rush('Plain', 340, 44, { dispersion: 2 }),
        rush('Sesame', 340, 30, { price: 1.5, stalePerHour: 0.6 }),
        rush('Poppy', 365, 36, { price: 2.2 }),
        rush('Rye', 350, 40, { dough: 'rye', price: 2.6, cost: 0.8 }),
      ],
    }),
  ],
]

const BEFORE_OPENING: [string, BakeOff][] = [
  [
    'three lengths of bake that do not mix',
    madeShop({
      ...LINE,
      oven: oven(2, 36, 344),
      doughs: { plain: { pieces: 300 }, rye: { pieces: 54 } },
      varieties: [
        ['Plain', 14, 70, 8, 'plain'] as const,
        ['Sesame', 14, 40, 3, 'plain'] as const,
        ['Poppy', 19, 44, 20, 'plain'] as const,
        ['Onion', 19, 25, 2, 'plain'] as const,
        ['Rye', 24, 60, 6, 'rye'] as const,
      ].map(([name, bakeMin, mean, dispersion, dough], n) =>
        madeVariety({ name, bakeMin, mean, dispersion, dough, price: 1.6 + 0.2 * n, stalePerHour: 0 }),
      ),
    }),
  ],
]

const ORDERS: [string, BakeOff][] = [
  [
    'more orders than the oven can bake in time',
    madeShop({
      ...LINE,
      oven: oven(2, 36),
      varieties: [
        madeVariety({ name: 'Plain', bakeMin: 14 }),
        madeVariety({ name: 'Sesame', bakeMin: 14, price: 1.6, stalePerHour: 0.2 }),
        madeVariety({ name: 'Poppy', bakeMin: 19, price: 2.6 }),
        madeVariety({ name: 'Rye', bakeMin: 24, price: 2.2, lostSale: 1.5 }),
      ],
      orders: [
        orderOf(325, 48, 'Plain'),
        orderOf(330, 36, 'Rye'),
        orderOf(345, 60, 'Poppy'),
        orderOf(350, 48, 'Sesame'),
        orderOf(365, 36, 'Rye'),
        orderOf(380, 72, 'Plain'),
        orderOf(380, 42, 'Poppy'),
        orderOf(400, 30, 'Sesame'),
      ],
    }),
  ],
  [
    'two customers who pay little but must not be let down',
    madeShop({
      ...LINE,
      oven: oven(1, 36),
      varieties: [
        madeVariety({ name: 'Plain', bakeMin: 14 }),
        madeVariety({ name: 'Sesame', bakeMin: 14, price: 0.9, lostSale: 3 }),
      ],
      orders: [
        orderOf(315, 72, 'Plain'),
        orderOf(315, 36, 'Sesame'),
        orderOf(345, 72, 'Plain'),
        orderOf(345, 36, 'Sesame'),
      ],
    }),
  ],
]

describe.each<[string, (given: BakeOff) => Optimum, [string, BakeOff][]]>([
  ['each variety in one rush', (given) => solveOneRush(solver, given), RUSHES],
  ['all baked before the opening', (given) => solveBeforeOpening(solver, given), BEFORE_OPENING],
  ['orders only', (given) => solveOrdersOnly(solver, given), ORDERS],
])('%s', (_kind, solve, shops) => {
  it.each(shops)('%s: the planner comes close to the proven optimum', (_what, given) => {
    const optimum = solve(given)
    const plan = planBakeOff(given)
    expect(violationsOf(given, optimum)).toEqual([])
    expect(violationsOf(given, plan)).toEqual([])
    const [best, planned, nothing] = scorePlans(given, [optimum, plan, { loads: [] }], DAYS)
    if (best === undefined || planned === undefined || nothing === undefined)
      throw new Error('three plans, three scores')
    // The program's value is the expectation that the simulation estimates.
    expect(Math.abs(best.profit - optimum.profit)).toBeLessThan(4 * best.standardError + 1e-6)
    expect(planned.profit - nothing.profit).toBeGreaterThan(PART_REACHED * (best.profit - nothing.profit))
  })
})
