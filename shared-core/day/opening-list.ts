import { plannedAhead } from '../line/planned.ts'
import type { EpochMs } from '../units.ts'
import type { Ruler } from './ruler.ts'
import type { State } from './state.ts'
import type { StepList } from './step-list.ts'
import { stepList } from './step-list.ts'

/** While no day is open the list shows up so long before its first line: the evening before plans, it does not open. */
const SHOWN_BEFORE_MS = 4 * 3_600_000
/** A day that nobody opened so long after its first load was due began without the board: its steps are not late, they are past. */
const BEGUN_WITHIN_MS = 3_600_000

/**
 * What must be done before the first load, worked back from it: the first planned load that is still to come, where it
 * is planned for a time, else the oven being ready.
 * @param ruler of the day that `nowMs` stands in; null without a set-up
 * @returns null once the day's first load went in, where the shop has no such steps, at night long before them, and where nobody
 * opened the day until long after the first load was due
 */
export function openingList(state: State, nowMs: EpochMs, ruler: Ruler | null): StepList | null {
  if (ruler === null || isFirstLoadIn(state)) return null
  const list = stepList(state, nowMs, 'opening', firstLoadAt(state, ruler))
  if (list === null || (state.day?.openedAtMs ?? nowMs) - list.zeroAtMs > BEGUN_WITHIN_MS) return null
  if (state.day !== null) return list
  const [first] = list.lines
  const isOver = state.lastDay !== null && list.zeroAtMs <= state.lastDay.closedAtMs
  const isFar = first !== undefined && first.dueAtMs - nowMs > SHOWN_BEFORE_MS
  return isOver || isFar ? null : list
}

/** Whether an oven shelf was touched since the day was opened; what stands in it from the day before does not count. */
export function isFirstLoadIn({ day, shelves, loads }: State): boolean {
  if (day === null) return false
  for (const { touchedAtMs } of shelves.values()) if (touchedAtMs >= day.openedAtMs) return true
  for (const { loadedAtMs } of loads.values()) if (loadedAtMs >= day.openedAtMs) return true
  return false
}

/** A load for "as soon as a shelf is free" goes in once the oven is ready. */
function firstLoadAt(state: State, { ovenReadyMs }: Ruler): EpochMs {
  const [first] = plannedAhead(state)
  return first?.inAtMs ?? ovenReadyMs
}
