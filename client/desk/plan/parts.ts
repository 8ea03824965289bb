import type { Plan } from '../../../shared-core/live/plan.ts'
import type { BakePlanWords } from '../../words/desk-plan.ts'
import type { DeskParts } from '../desk-screen.tsx'
import type { Room } from '../dough/room.ts'
import type { ShownLoad, Wishes } from './wishes.ts'

/** What every page of the plan's place is made with. */
export interface PlanParts extends DeskParts {
  readonly say: BakePlanWords
  readonly room: Room
  readonly date: string
}

/** What every part of one day's plan is made with. */
export interface DayParts extends PlanParts {
  /** As it stands, or as it would be with what is being tried. */
  readonly plan: Plan
  readonly shown: readonly ShownLoad[]
  /** Those that are in the oven already: drawn, never moved. */
  readonly running: readonly ShownLoad[]
  readonly wishes: Wishes
  readonly onWishes: (wishes: Wishes) => void
  readonly chosen: string | null
  readonly onChoose: (key: string | null) => void
}
