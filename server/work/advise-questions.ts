import type { Today } from '../../shared-core/demand/today.ts'
import type { Outlook } from '../../shared-core/live/outlook.ts'
import type { Plan, PlanFigures } from '../../shared-core/live/plan.ts'
import type { BakeOff } from '../../shared-core/plan/bake-off/bake-off.ts'
import type { LineToday } from '../../shared-core/plan/line-today.ts'
import type { WhatIfAnswer, WhatIfChange } from '../../shared-core/plan/what-if.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { PlanJson } from '../plan/plan-instance.ts'
import type { Question } from './questions.ts'

export interface AdviseQuestions {
  /** Which loads when, and what the rest of today will then probably bring; null while the shop has no set-up. */
  readonly advise: Question<AdviseAsked, Advised | null>
  /** A day's plan that nobody is told of; null: nothing is known of what will be asked for, or of the shop. */
  readonly plan: Question<PlanOf, Plan | null>
  /** The same with what people would set and forbid, beside the day without any of that; null as above. */
  readonly planTry: Question<PlanOf & { readonly freeLine: LineToday }, TriedPlan | null>
  /** The day as it is, and with one thing another way; null as above. */
  readonly whatIf: Question<PlanOf & { readonly change: WhatIfChange }, WhatIfAnswer | null>
  /** Plans a problem that has nothing to do with this shop. */
  readonly bakeOff: Question<BakeOff, PlanJson>
}

export interface AdviseAsked {
  readonly today: Today
  readonly noonMs: EpochMs
  /** Null: advice on loads is switched off. */
  readonly line: LineToday | null
  /** The plan that stands, which is not changed without need. */
  readonly before: Plan | null
  /** Not made anew: the outlook is of the day with the plan that stands. */
  readonly isPlanKept: boolean
  /** Of the entry on which this rests. */
  readonly seq: number
}

export interface Advised {
  readonly outlook: Outlook
  readonly plan: Plan | null
  /** How long planning took, in ms of the thread's time. */
  readonly planMs: number
}

/** A day as it would be planned. */
export interface PlanOf {
  readonly line: LineToday
  readonly noonMs: EpochMs
  /** The day as far as it has come; null: it is not open. */
  readonly today: Today | null
  readonly before: Plan | null
  readonly seq: number
}

export interface TriedPlan {
  readonly plan: Plan
  /** Of the day with nothing set and nothing forbidden. */
  readonly free: PlanFigures
}
