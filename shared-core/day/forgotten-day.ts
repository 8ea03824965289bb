import { commandId } from '../ids.ts'
import { epochMs } from '../units.ts'
import { applyEntry } from './apply.ts'
import { dayClosed } from './decide-day.ts'
import type { Context } from './decision.ts'
import type { Event } from './events.ts'
import type { State } from './state.ts'
import { forkState } from './state-json.ts'
import { eventVersion } from './upcast.ts'

/** A night: nothing has been tapped for so long, and the date is another. A shop that works past midnight taps on. */
const NIGHT_MS = 4 * 3_600_000

/** A day that nobody closed, closed: what happens in its stead, and the state as it is then. */
export interface ForgottenDay {
  readonly events: readonly Event[]
  readonly state: State
}

/**
 * The close that nobody tapped yesterday, found by the first act of a new morning; null when there is none to make up
 * for. Without it the account, the load list and the questions of a day would run on for ever. It counts from the last
 * thing that was tapped; loads that are still to come are kept, as they were typed for today.
 */
export function forgottenDay(state: State, { nowMs, deviceId, localDate }: Context): ForgottenDay | null {
  const { day, recordedAtMs } = state
  if (day === null || localDate <= day.label || nowMs - recordedAtMs < NIGHT_MS) return null
  const atMs = epochMs(Math.max(recordedAtMs, day.openedAtMs))
  const fact = dayClosed(state, day, { atMs, closedOn: day.label, crewMinutes: null, isForgotten: true })
  const events: readonly Event[] = [{ v: eventVersion(fact.type), atMs, ...fact }]
  const fork = forkState(state)
  applyEntry(fork, {
    seq: state.seq + 1,
    commandId: commandId('forgotten'),
    deviceId,
    recordedAtMs: epochMs(Math.max(nowMs, recordedAtMs)),
    told: { type: 'closeDay' },
    events,
  })
  return { events, state: fork }
}
