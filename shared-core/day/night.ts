import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Event, EventType } from './events.ts'
import { changeoverMark } from './marks.ts'
import type { State } from './state.ts'

/** A night: nothing was done for so long, and the date is another. A shop that works past midnight works on. */
const NIGHT_MS = 4 * 3_600_000

/**
 * When a day ended that is still open though a night has passed: with the last thing that was done in it.
 * @param localDate the shop's date now, YYYY-MM-DD
 * @returns null while the day is going on, and without an open day
 */
export function endedBeforeNight(
  { day, lastActAtMs }: State,
  { nowMs, localDate }: { readonly nowMs: EpochMs; readonly localDate: string },
): EpochMs | null {
  if (day === null || localDate <= day.label || nowMs - lastActAtMs < NIGHT_MS) return null
  return epochMs(Math.max(lastActAtMs, day.openedAtMs))
}

/**
 * Whether an event is work of the day. What is not: a list for tomorrow, a note, a set-up, a slip, and what a script
 * posts through the night, such as the oven's heat. None of these may keep yesterday open.
 */
export function isWork(event: Event): boolean {
  if (event.type === 'marked') return event.mark.kind !== 'oven' && event.mark.kind !== 'changeover'
  if (event.type === 'unmarked') return event.markId !== changeoverMark()
  return !NO_WORK.has(event.type)
}

const NO_WORK: ReadonlySet<EventType> = new Set<EventType>([
  'setUpChanged',
  'setUpPlanned',
  'setUpDropped',
  'loadListSet',
  'plannedDone',
  'loadsForbidden',
  'noted',
  'noteCleared',
  'unsureSettled',
  'takenBack',
  'wantedSet',
  'importNoted',
  'orderTaken',
  'orderChanged',
  'orderEnded',
  'orderShort',
  'standingSet',
  'standingEnded',
  'portionsLeft',
  'mixesPlanned',
  'mixesOrdered',
  'mixDropped',
  'placeRead',
])
