import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { ShelfKey } from '../../shared-core/line/shelf-keys.ts'

/** What a touch on a shelf's key does; null where nothing is planned for it, so that a person must say what goes in. */
export function actOfShelf(state: State, key: ShelfKey): Act | null {
  const { shelfId, loadId, plannedId, lines, act } = key
  if (loadId === null) return lines.length === 0 ? null : { type: 'load', shelfId, plannedId, lines }
  if (act === 'flip') return { type: 'flip', loadId }
  const load = state.loads.get(loadId)
  return load === undefined ? null : { type: 'out', loadId, from: load.phase, lines: null }
}
