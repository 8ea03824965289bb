import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { contactCostOf } from '../../../shared-core/plan/bake-off/contact.ts'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { anyShop } from '../../reference/bake-off/any-shop.ts'
import { violationsOf } from '../../reference/bake-off/feasible.ts'
import { madeShop, madeVariety, orderOf } from '../../reference/bake-off/made-shop.ts'
import { anyLimits, brokenBy, limited } from './limits.ts'

/** A small part of the usual effort: limits hold for any. */
const EFFORT = 0.02

describe('what a shop adds to the problem', () => {
  it('[I100] given any shop with limits of its own, when it is planned, then they hold beside those of the core', () => {
    let loads = 0
    fc.assert(
      fc.property(anyShop(), anyLimits, (shop, limits) => {
        const given = limited(shop, limits)
        const plan = planBakeOff(given, EFFORT)
        expect(violationsOf(given, plan)).toEqual([])
        expect(brokenBy(given, plan.loads)).toEqual([])
        loads += plan.loads.length
      }),
      { numRuns: 120 },
    )
    expect(loads).toBeGreaterThan(100)
  })

  it('[I100] given the same shops, when they are planned without their limits, then each limit would be broken', () => {
    const broken = new Set<string>()
    fc.assert(
      fc.property(anyShop(), anyLimits, (shop, limits) => {
        for (const what of brokenBy(limited(shop, limits), planBakeOff(shop, EFFORT).loads)) broken.add(what)
      }),
      { numRuns: 60 },
    )
    expect([...broken].sort()).toEqual([
      'a board that is not wet yet',
      'a dip before the kettle boils',
      'a dip before the water is back at the boil',
      'in before its last dip',
      'of a dough that is not there yet',
      'on a shelf that is not there yet',
      'on a shelf that must be empty',
    ])
  })

  it('[I101] given additions that say nothing new, when it is planned, then to the same loads as without them', () => {
    fc.assert(
      fc.property(anyShop(), (given) => {
        expect(planBakeOff(withNothingNew(given), EFFORT)).toEqual(planBakeOff(given, EFFORT))
      }),
      { numRuns: 40 },
    )
  })

  it('[I102] given an order that must be packed and driven, when it is planned, then it is ready that much sooner', () => {
    const order = orderOf(480, 36)
    const ready = (own: object) => readyAt(madeShop({ orders: [{ ...order, ...own }] }))
    expect(ready({})).toBeGreaterThan(450)
    expect(ready({ leadMin: 40 })).toBeLessThanOrEqual(440 + 1e-6)
    // Cooling for slicing counts where it is longer than that before walk-ins: 15 minutes.
    expect(ready({ coolMin: 75 })).toBeLessThanOrEqual(420 + 1e-6)
    expect(ready({ coolMin: 10 })).toBe(ready({}))
  })

  it('[I103] given a variety that sells hot, when an order is due soon after the oven is ready, then it is filled', () => {
    // Ready 270, in the kettle from 250; 16 minutes in the oven: out at 286 at the soonest.
    const orders = [orderOf(290, 36)]
    expect(planBakeOff(madeShop({ orders })).loads).toEqual([])
    const hot = madeShop({ orders, varieties: [madeVariety({ coolMin: 0 })] })
    const [load, ...others] = planBakeOff(hot).loads
    expect(others).toEqual([])
    expect(load?.lines).toEqual([['Plain', 36]])
    expect(load?.out).toBeLessThanOrEqual(290)
  })

  it('[I104] given dough that is worth more tomorrow than today, when it is planned, then it is kept', () => {
    const shop = (carryValue: number) =>
      madeShop({ doughs: { plain: { pieces: 600, carryValue } }, varieties: [madeVariety({ mean: 80 })] })
    const baked = (carryValue: number) =>
      planBakeOff(shop(carryValue))
        .loads.flatMap(({ lines }) => lines)
        .reduce((sum, [, pieces]) => sum + pieces, 0)
    expect(baked(0.6)).toBeLessThan(baked(0))
    expect(baked(0.6)).toBeGreaterThan(0)
    // Price and lost sale together are 2.60, baking costs 0.50.
    expect(baked(2.2)).toBe(0)
  })
})

describe('contact', () => {
  const demand = { mean: 60, dispersion: 8 }
  const plain = { ...madeVariety(demand), name: 'Plain', avoids: ['sesame'] }
  const seeded = { ...madeVariety(demand), name: 'Sesame', brings: ['sesame'] }
  const shop = (own: Partial<BakeOff>) => madeShop({ varieties: [seeded, plain], ...own })
  const met = (given: BakeOff) => contactCostOf({ ...given, contactCost: 1 }, planBakeOff(given).loads)

  it('[I106] given a variety that should avoid another, when contact costs, then it is boiled before it', () => {
    expect(met(shop({}))).toBeGreaterThan(0)
    const careful = shop({ contactCost: 50 })
    expect(met(careful)).toBe(0)
    const lines = planBakeOff(careful).loads.flatMap((load) => load.lines.map(([name]) => name))
    expect(lines.indexOf('Sesame')).toBeGreaterThan(lines.lastIndexOf('Plain'))
    expect(lines).toContain('Plain')
  })

  it('[I106] given what is in the water now, when a wash is due, then the variety that avoids it is boiled after that', () => {
    const washes = [400]
    const given = shop({ varieties: [plain], contactNow: ['sesame'], contactCost: 50, washes })
    const starts = planBakeOff(given).loads.map(({ kettleStart }) => kettleStart)
    expect(starts.length).toBeGreaterThan(0)
    expect(Math.min(...starts)).toBeGreaterThanOrEqual(400)
    expect(planBakeOff(shop({ varieties: [plain], contactNow: ['sesame'], contactCost: 50 })).loads).toEqual([])
  })
})

function readyAt(given: BakeOff): number {
  const { loads } = planBakeOff(given)
  expect(loads.reduce((sum, { lines }) => sum + (lines[0]?.[1] ?? 0), 0)).toBe(36)
  return Math.max(...loads.map(({ out }) => out + given.coolMin))
}

function withNothingNew(given: BakeOff): BakeOff {
  const { kettle, boards, oven, coolMin } = given
  return {
    ...given,
    kettle: { ...kettle, readyMin: 0, recoveryMin: 0 },
    boards: { ...boards, rewetMin: 0 },
    oven: {
      ...oven,
      shelves: oven.shelves.map((shelf) => ({ ...shelf, readyMin: 0, emptyByMin: oven.mustBeEmptyMin })),
    },
    doughs: Object.fromEntries(
      Object.entries(given.doughs).map(([name, dough]) => [name, { ...dough, notBeforeMin: 0, carryValue: 0 }]),
    ),
    varieties: given.varieties.map((variety) => ({ ...variety, coolMin })),
    orders: given.orders.map((order) => ({ ...order, leadMin: 0, coolMin: 0 })),
  }
}
