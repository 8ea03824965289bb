import { applyEntry } from '../../../shared-core/day/apply.ts'
import type { Act } from '../../../shared-core/day/commands.ts'
import type { Entry } from '../../../shared-core/day/events.ts'
import type { Line, State } from '../../../shared-core/day/state.ts'
import { forkState } from '../../../shared-core/day/state-json.ts'
import { shelfId } from '../../../shared-core/ids.ts'
import { at } from './make.ts'
import type { When } from './play.ts'
import { decided, entryOf, outcome, tap } from './play.ts'

/** A day being written down: each act is decided and folded at its clock time, and its entry kept. */
export interface Recording {
  /** The state before the first entry. */
  readonly start: State
  readonly state: State
  readonly entries: Entry[]
  /** @throws when it is not taken */
  at(clock: string, act: Act, when?: When): void
  /** Loads shelf 1, and takes all of it out. */
  bake(inAt: string, outAt: string, contents: readonly Line[]): void
  fold(entry: Entry): void
}

export function record(from: State): Recording {
  const state = forkState(from)
  const entries: Entry[] = []
  const day: Recording = {
    start: forkState(from),
    state,
    entries,
    at: (clock, act, parts = {}) => {
      const when = { id: `rec${String(state.seq).padStart(7, '0')}`, nowMs: at(clock), ...parts }
      const decision = decided(state, act, when)
      if (decision.kind !== 'taken') throw new Error(`${clock} ${act.type}: ${outcome(decision)}`)
      day.fold(entryOf(state, tap(act, when), decision, when))
    },
    bake: (inAt, outAt, contents) => {
      day.at(inAt, { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: contents })
      const load = [...state.loads.values()].at(-1)
      if (load === undefined) throw new Error('nothing was loaded')
      day.at(outAt, { type: 'out', loadId: load.id, from: load.phase, lines: null })
    },
    fold: (entry) => {
      applyEntry(state, entry)
      entries.push(entry)
    },
  }
  return day
}
