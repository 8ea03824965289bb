import type { LineView } from './line-view.ts'
import type { ShelfView } from './shelf-view.ts'

/** Keys of the acts that can be read on this screen: what a pedal may do. */
export function actsOnShow(shelves: readonly ShelfView[], line: LineView): ReadonlySet<string> {
  const ofShelves = shelves.map(({ key }) => `${key.act}:${key.loadId ?? key.plannedId}`)
  const ofStations = [line.pull, line.kettleKey, line.boardKey].flatMap((key) => key?.dueKey ?? [])
  return new Set([...ofShelves, ...ofStations])
}
