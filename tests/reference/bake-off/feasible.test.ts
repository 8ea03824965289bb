import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { planBakeOff } from '../../../shared-core/plan/bake-off/plan-bake-off.ts'
import { anyShop } from './any-shop.ts'
import { violationsOf } from './feasible.ts'
import { scorePlans } from './score.ts'

/** A small part of the usual effort: what is tested holds for any. */
const EFFORT = 0.02
const DAYS = { days: 120, seed: 3 }

describe('the planner, given any bake-off at all', () => {
  it('plans what is feasible, the same again, and never worse than baking nothing', () => {
    let baked = 0
    let idle = 0
    fc.assert(
      fc.property(anyShop(), (given) => {
        const before = JSON.stringify(given)
        const plan = planBakeOff(given, EFFORT)
        expect(violationsOf(given, plan)).toEqual([])
        expect(planBakeOff(given, EFFORT)).toEqual(plan)
        expect(JSON.stringify(given)).toBe(before)
        const [planned, nothing] = scorePlans(given, [plan, { loads: [] }], DAYS)
        if (planned === undefined || nothing === undefined) throw new Error('two plans, two scores')
        // A plan may be right and yet lose on these few days: three standard errors.
        expect(planned.profit).toBeGreaterThanOrEqual(nothing.profit - 3 * planned.standardError - 1e-6)
        if (plan.loads.length > 0) baked++
        else idle++
      }),
      { numRuns: 200 },
    )
    // Both kinds of shops were among them.
    expect(baked).toBeGreaterThan(50)
    expect(idle).toBeGreaterThan(10)
  })
})
