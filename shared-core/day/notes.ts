import type { EpochMs } from '../units.ts'
import { isFirstLoadIn } from './opening-list.ts'
import type { Ruler } from './ruler.ts'
import type { Note } from './said.ts'
import type { State } from './state.ts'

/** Notes that wait at once: more are no longer read. */
export const NOTES_MAX = 30

/** Notes that nobody has cleared, oldest first. */
export function notesWaiting({ notes }: State): readonly Note[] {
  return [...notes.values()].sort((one, other) => one.atMs - other.atMs || (one.id < other.id ? -1 : 1))
}

/**
 * Notes that stand on the wall: at the start of a shift only, as later the line has the wall. The morning's start is
 * until the first load; the afternoon's, where there is a second menu, is the changeover.
 * @returns oldest first
 */
export function notesOnWall(state: State, nowMs: EpochMs, ruler: Ruler | null): readonly Note[] {
  const isMorning = state.day === null || !isFirstLoadIn(state)
  const changeover = ruler?.changeover ?? null
  const isAfternoon = changeover !== null && nowMs >= changeover.fromMs && nowMs < changeover.toMs
  return isMorning || isAfternoon ? notesWaiting(state) : []
}
