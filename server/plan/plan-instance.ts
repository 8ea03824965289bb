import type { BakeLoad, BakeOff, BakePlan } from '../../shared-core/plan/bake-off/bake-off.ts'
import { planBakeOff } from '../../shared-core/plan/bake-off/plan-bake-off.ts'

/** A plan as JSON. `planMs`: processor time of planning, in ms; all else depends on the problem alone. */
export interface PlanJson {
  readonly loads: readonly BakeLoad[]
  readonly planMs: number
}

/** Plans once, and says how long that took. */
export function planTimed(given: BakeOff): PlanJson {
  const before = process.cpuUsage()
  const { loads }: BakePlan = planBakeOff(given)
  const { user, system } = process.cpuUsage(before)
  return { loads, planMs: Math.round((user + system) / 10) / 100 }
}
