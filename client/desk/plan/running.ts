import type { Line, Load, State } from '../../../shared-core/day/state.ts'
import { plannedId } from '../../../shared-core/ids.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { ShownLoad } from './wishes.ts'

/** Loads that are in the oven, in the form in which the plan's are drawn: they are there, and stay. */
export function runningLoads({ loads, batches }: Pick<State, 'loads' | 'batches'>): readonly ShownLoad[] {
  return [...loads.values()].map((load) => ({ key: load.id, load: asShown(load, linesIn(load, batches)) }))
}

function linesIn({ id }: Load, batches: State['batches']): readonly Line[] {
  const own = [...batches.values()].filter((batch) => batch.stage === 'oven' && batch.loadId === id)
  return own.flatMap(({ varietyId, pieces }) => (varietyId === null ? [] : [{ varietyId, pieces }]))
}

function asShown({ id, shelfId, loadedAtMs, flippedAtMs, flip, out }: Load, lines: readonly Line[]): ShownLoad['load'] {
  const outAtMs: EpochMs = out?.targetAtMs ?? loadedAtMs
  return {
    id: plannedId(id),
    shelfId,
    kettleAtMs: null,
    dips: 0,
    inAtMs: loadedAtMs,
    flipAtMs: flippedAtMs ?? flip?.targetAtMs ?? null,
    outAtMs,
    readyAtMs: outAtMs,
    lines,
    isPinned: false,
    isLast: false,
    why: [],
    contacts: [],
  }
}
