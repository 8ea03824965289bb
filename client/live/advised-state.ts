import type { State } from '../../shared-core/day/state.ts'
import type { Plan } from '../../shared-core/live/plan.ts'
import { withPlan } from '../../shared-core/plan/with-plan.ts'
import type { LiveState } from './shop-store.ts'
import type { View } from './view-state.ts'

/** The state with the advised loads in it, made anew only when one of the two is another: views compare by identity. */
export class AdvisedState {
  #last: { readonly asSet: State; readonly plan: Plan | null; readonly shown: State } | null = null

  /** @param view null: before the first welcome */
  of(view: View | null, plan: Plan | null): Pick<LiveState, 'shown' | 'asSet' | 'pending'> {
    if (view === null) return { shown: null, asSet: null, pending: [] }
    const { shown: asSet, pending } = view
    const last = this.#last
    if (last === null || last.asSet !== asSet || last.plan !== plan)
      this.#last = { asSet, plan, shown: withPlan(asSet, plan) }
    return { shown: this.#last?.shown ?? asSet, asSet, pending }
  }
}
