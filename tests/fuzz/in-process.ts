import type { Outcome, Target } from './fuzz.ts'
import { fuzz } from './fuzz.ts'
import { ShopAtWork } from './shop-at-work.ts'
import { commandTargets } from './targets/command-targets.ts'
import { doorTargets } from './targets/door-targets.ts'
import { importTargets } from './targets/import-targets.ts'
import { setUpTargets } from './targets/set-up-targets.ts'

/** All that comes in, read and decided without a network. */
export function allTargets(shop = new ShopAtWork()): readonly Target[] {
  return [...commandTargets(shop), ...importTargets(shop), ...doorTargets(), ...setUpTargets(shop)]
}

/** Cases spread over all targets by their weights. @param told hears of each target when it is through */
export function fuzzAll(
  { cases, seed }: { readonly cases: number; readonly seed: number },
  told: (outcome: Outcome) => void = () => undefined,
): readonly Outcome[] {
  const targets = allTargets()
  const weights = targets.reduce((sum, { weight }) => sum + weight, 0)
  return targets.map((target, index) => {
    const share = Math.ceil((cases * target.weight) / weights)
    // Targets draw different values from one seed.
    const outcome = fuzz(target, { cases: share, seed: seed + index * 1_000_003 })
    told(outcome)
    return outcome
  })
}
