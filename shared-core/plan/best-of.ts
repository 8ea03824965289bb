import type { BakeLoad, BakeOff } from './bake-off/bake-off.ts'
import { expectedOf } from './bake-off/expected.ts'
import { fitted, solved } from './solved.ts'

/**
 * Planned anew, unless the loads of another plan do better as they are: a day that is given more never seems to bring
 * less because a search ended elsewhere.
 * @param known plans of the same day under other limits
 */
export function bestOf(given: BakeOff, known: readonly (readonly BakeLoad[])[], effort = 1): readonly BakeLoad[] {
  return bestFitted(given, [solved(given, effort), ...known])
}

/** Of plans, the one that does best under these limits, each as soon as it can where it does not fit as it is. */
export function bestFitted(given: BakeOff, plans: readonly (readonly BakeLoad[])[]): readonly BakeLoad[] {
  const all = plans.map((loads) => fitted(given, loads))
  const worth = all.map((loads) => expectedOf(given, loads).profit)
  return all[worth.indexOf(Math.max(...worth))] ?? []
}
