import { describe, expect, it } from 'vitest'
import type { BakeLoad, BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { violationsOf } from './feasible.ts'
import { loadReadyAt, madeShop, madeVariety, orderOf } from './made-shop.ts'
import type { Score } from './score.ts'
import { scorePlans } from './score.ts'

/**
 * Bake-offs so small that every plan on a grid of minutes can be tried: the best of them on some days against the planner's
 * on others. The planner may use any minute, so that it may do better.
 */
const GRID_MIN = 5
const TRIED = { days: 120, seed: 21 }
const JUDGED = { days: 8_000, seed: 22 }
const PART_REACHED = 0.99

const oven = (readyMin: number, mustBeEmptyMin: number): BakeOff['oven'] => ({
  ...madeShop().oven,
  readyMin,
  mustBeEmptyMin,
  shelves: [{ name: '1', pieces: 36 }],
})
const PROFILE = [
  [360, 0],
  [420, 0.15],
  [480, 0.55],
  [540, 0.75],
  [900, 1],
] as const
const walkIns = (mean: number, dispersion: number) => ({ mean, dispersion, profile: PROFILE })

const pieceCounts = (most: number) => Array.from({ length: most / 6 }, (_, n) => 6 * (n + 1))
const minutes = (from: number, to: number) =>
  Array.from({ length: Math.floor((to - from) / GRID_MIN) + 1 }, (_, n) => from + GRID_MIN * n)
/** Every load of Plain within the oven's hours: 16 minutes in it, 15 to cool. */
const everyLoad = ({ oven: { readyMin, mustBeEmptyMin } }: BakeOff) =>
  minutes(readyMin + 31, mustBeEmptyMin + 15).flatMap((at) => pieceCounts(36).map((pieces) => loadReadyAt(at, pieces)))

const twoLoads = madeShop({
  oven: oven(340, 416),
  varieties: [{ ...madeVariety({ stalePerHour: 0.4 }), demand: walkIns(44, 9) }],
  orders: [orderOf(470, 10)],
})
const oneLoadOfTwo = madeShop({
  oven: oven(370, 425),
  doughs: { plain: { pieces: 48 } },
  varieties: [
    { ...madeVariety({ stalePerHour: 0.5 }), demand: walkIns(40, 4) },
    { ...madeVariety({ name: 'Rye', price: 1.2, cost: 0.9, lostSale: 2.4 }), demand: walkIns(25, 2), onShelf: 6 },
  ],
})
const inTheMorning = madeShop({
  now: 425,
  oven: oven(300, 520),
  running: [loadReadyAt(446, 24)],
  doughs: { plain: { pieces: 54 } },
  varieties: [{ ...madeVariety({ stalePerHour: 0.3, onShelf: 9 }), demand: walkIns(110, 40) }],
  orders: [orderOf(500, 20)],
})

const KINDS: [string, BakeOff, BakeLoad[][]][] = [
  [
    'up to two loads of one variety',
    twoLoads,
    everyLoad(twoLoads).flatMap((load, n, all) => [[load], ...all.slice(n + 1).map((other) => [load, other])]),
  ],
  [
    'loads of two varieties that share the dough',
    oneLoadOfTwo,
    everyLoad(oneLoadOfTwo)
      .flatMap((load) => {
        const pieces = load.lines[0]?.[1] ?? 0
        const split = pieceCounts(pieces - 6).map((rye) => ({
          ...load,
          lines: [
            ['Plain', pieces - rye],
            ['Rye', rye],
          ] as const,
        }))
        return [load, { ...load, lines: [['Rye', pieces] as const] }, ...split]
      })
      .flatMap((load, n, all) => [[load], ...all.slice(n + 1).map((other) => [load, other])]),
  ],
  [
    'a re-plan with a load in the oven',
    inTheMorning,
    everyLoad(inTheMorning).flatMap((load, n, all) => [[load], ...all.slice(n + 1).map((other) => [load, other])]),
  ],
]

describe('where every plan can be tried', () => {
  it.each(KINDS)('%s: the planner comes close to the best', (_what, given, candidates) => {
    const plans = candidates.map((loads) => ({ loads })).filter((plan) => violationsOf(given, plan).length === 0)
    expect(plans.length).toBeGreaterThan(200)
    const tried = scorePlans(given, plans, TRIED)
    const bestOf = tried.reduce((best, { profit }, n) => (profit > (tried[best]?.profit ?? 0) ? n : best), 0)
    const best = plans[bestOf] ?? { loads: [] }
    const plan = planBakeOff(given)
    expect(violationsOf(given, plan)).toEqual([])
    const [planned, enumerated, nothing] = scorePlans(given, [plan, best, { loads: [] }], JUDGED)
    expect(added(planned, nothing)).toBeGreaterThan(PART_REACHED * added(enumerated, nothing))
  })
})

/** What baking adds. */
function added(score: Score | undefined, nothing: Score | undefined): number {
  return (score?.profit ?? Number.NaN) - (nothing?.profit ?? Number.NaN)
}
