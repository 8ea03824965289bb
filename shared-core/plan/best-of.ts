import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { expectedOf } from './bake-off/expected.ts'
import { fitted, solved } from './solved.ts'

/**
 * Planned anew, unless the loads of another plan do better as they are: a day that is given more never seems to bring
 * less because a search ended elsewhere.
 * @param known plans of the same day under other limits
 */
export function bestOf(given: BakeOff, known: readonly (readonly BakeLoad[])[], effort = 1): readonly BakeLoad[] {
  const plans = [solved(given, effort), ...known.map((loads) => fitted(given, loads))]
  const worth = plans.map((loads) => expectedOf(given, loads).profit)
  return plans[worth.indexOf(Math.max(...worth))] ?? []
}
