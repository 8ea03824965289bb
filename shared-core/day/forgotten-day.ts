import { commandId } from '../ids.ts'
import { epochMs } from '../units.ts'
import { applyEntry } from './apply.ts'
import { closing } from './decide-day.ts'
import type { Context } from './decision.ts'
import type { Event } from './events.ts'
import { endedBeforeNight } from './night.ts'
import type { State } from './state.ts'
import { forkState } from './state-json.ts'
import { eventVersion } from './upcast.ts'

/** A day that nobody closed, closed: what happens in its stead, and the state as it is then. */
export interface ForgottenDay {
  readonly events: readonly Event[]
  readonly state: State
}

/**
 * The close that nobody tapped yesterday, found by the first act of a new morning; null when there is none to make up
 * for. Without it the account, the load list and the questions of a day would run on for ever. It counts from the last
 * thing that was done; loads that are still to come are kept, as they were typed for today.
 */
export function forgottenDay(state: State, { nowMs, deviceId, localDate }: Context): ForgottenDay | null {
  const { day, recordedAtMs } = state
  const atMs = endedBeforeNight(state, { nowMs, localDate })
  if (day === null || atMs === null) return null
  const facts = closing(state, day, { atMs, closedOn: day.label, crewMinutes: null, isLate: true })
  const events: readonly Event[] = facts.map((fact) => ({ v: eventVersion(fact.type), atMs, ...fact }))
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
