import type { State } from '../../shared-core/day/state.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { withPlan } from '../../shared-core/plan/with-plan.ts'

/** The state with the advised loads in it, made anew only when one of the two is another: views compare by identity. */
export class AdvisedState {
  #last: { readonly asSet: State; readonly plan: Plan | null; readonly advised: State } | null = null

  of(asSet: State | null, plan: Plan | null): State | null {
    if (asSet === null) return null
    const last = this.#last
    if (last !== null && last.asSet === asSet && last.plan === plan) return last.advised
    const advised = withPlan(asSet, plan)
    this.#last = { asSet, plan, advised }
    return advised
  }
}
