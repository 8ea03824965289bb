import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BakeOff } from '../../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { anyShop } from '../../reference/bake-off/any-shop.ts'
import { scorePlans } from '../../reference/bake-off/score.ts'

const DAYS = { days: 1_500, seed: 5 }
/** The search works on its own expectation, which is off by a few thousandths of what is sold. */
const NOISE = 0.002

describe('how much is tried', () => {
  it('[I105] given three shops, when ten times as much is tried, then a plan is no worse, and the same each time', () => {
    for (const given of busyShops(3)) {
      const [usual, long] = [planBakeOff(given), planBakeOff(given, 10)]
      expect(planBakeOff(given)).toEqual(usual)
      const [usually, longer, idle] = scorePlans(given, [usual, long, { loads: [] }], DAYS)
      if (usually === undefined || longer === undefined || idle === undefined)
        throw new Error('three plans, three scores')
      const gain = usually.profit - idle.profit
      expect(gain).toBeGreaterThan(0)
      expect(longer.profit - idle.profit).toBeGreaterThan((1 - NOISE) * gain)
    }
  })
})

/** Generated ones in which something is worth baking. */
function busyShops(count: number): BakeOff[] {
  return fc
    .sample(anyShop(), { numRuns: 60, seed: 7 })
    .filter((given) => planBakeOff(given, 0.02).loads.length >= 8)
    .slice(0, count)
}
