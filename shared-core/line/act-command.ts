import type { Act } from '../day/commands.ts'
import type { State } from '../day/state.ts'
import type { LineActDue } from './act-due.ts'

/**
 * The command that does an act as it is shown: it names the load, batch or contents that are on show, so that an
 * act that somebody else has done in the meantime is refused and not done twice.
 * @returns null when the act cannot be done from here: its load is gone, or nobody has said what the pieces become
 */
export function actCommand(due: LineActDue, state: State): Act | null {
  const { doughId, varietyId, pieces, lines, batchId, loadId, shelfId, plannedId } = due
  switch (due.act) {
    case 'pull':
    case 'dip':
      return doughId === null ? null : { type: due.act, doughId, varietyId, pieces }
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
