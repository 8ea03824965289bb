import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { LineActDue } from '../../shared-core/line/act-due.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'

/** What a touch on a shelf's key does; null where nothing is planned for it, so that a person must say what goes in. */
export function actOfShelf(state: State, key: ShelfKey): Act | null {
  const { shelfId, loadId, plannedId, lines, act } = key
  if (loadId === null) return lines.length === 0 ? null : { type: 'load', shelfId, plannedId, lines }
  if (act === 'flip') return { type: 'flip', loadId }
  const load = state.loads.get(loadId)
  return load === undefined ? null : { type: 'out', loadId, from: load.phase, lines: null }
}

/** What a pedal does when this act is on show; null where it cannot be done without a choice. */
export function actOfDue(state: State, due: LineActDue): Act | null {
  const { act, doughId, varietyId, pieces, batchId, lines, shelfId, plannedId, loadId } = due
  switch (act) {
    case 'pull':
    case 'dip':
      return doughId === null ? null : { type: act, doughId, varietyId, pieces }
    case 'lift':
      return batchId === null ? null : { type: 'lift', batchId }
    case 'board':
      return lines.length === 0 ? null : { type: 'board', lines }
    case 'load':
      return shelfId === null || lines.length === 0 ? null : { type: 'load', shelfId, plannedId, lines }
    case 'flip':
      return loadId === null ? null : { type: 'flip', loadId }
    case 'out': {
      const load = loadId === null ? undefined : state.loads.get(loadId)
      return load === undefined ? null : { type: 'out', loadId: load.id, from: load.phase, lines: null }
    }
  }
}
