import type { EpochMs } from '../units.ts'
import type { Ruler } from './ruler.ts'
import type { State } from './state.ts'
import type { StepList } from './step-list.ts'
import { stepList } from './step-list.ts'

/**
 * What must be done around the changeover, worked back from the oven being empty of bagels; a slip of today moves all of
 * it that is not done.
 * @returns null without a second menu, before the day is open, and where the shop has no such steps
 */
export function changeoverList(state: State, nowMs: EpochMs, ruler: Ruler | null): StepList | null {
  if (ruler === null || ruler.changeover === null || state.day === null) return null
  return stepList(state, nowMs, 'changeover', ruler.changeover.fromMs)
}
