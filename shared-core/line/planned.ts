import type { PlannedLoad, State } from '../day/state.ts'
import type { ShelfId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import type { ExpectedLoad } from './fill.ts'
import { fillShelves } from './fill.ts'

/**
 * The planned loads that are still to come, soonest first. A load without a time keeps its place in the list: it counts
 * as planned for the time of the latest load before it, so that a list of times and "as soon as a shelf is free" mixed
 * still has one order.
 */
export function plannedAhead(state: State): readonly PlannedLoad[] {
  let placeMs = 0
  const placed = [...state.planned.values()]
    .filter((planned) => !planned.done)
    .sort(byListed)
    .map((planned) => {
      placeMs = Math.max(placeMs, planned.inAtMs ?? 0)
      return { planned, placeMs: planned.inAtMs ?? placeMs }
    })
  return placed
    .sort((one, other) => one.placeMs - other.placeMs || byListed(one.planned, other.planned))
    .map(({ planned }) => planned)
}

/**
 * The planned load that a shelf takes next: the soonest that is planned for it or, of those for any shelf, the first
 * that falls to it when shelves are filled in the order in which they come free. No two shelves are given the same one.
 * @returns null when nothing is planned for it
 */
export function plannedForShelf(state: State, shelfId: ShelfId): PlannedLoad | null {
  const next = expectedLoads(state, state.recordedAtMs).find((expected) => expected.shelf.id === shelfId)
  return next?.planned ?? null
}

/** When and where each planned load that is not done is expected to go in, soonest first; empty without a set-up or a shelf. */
export function expectedLoads(state: State, nowMs: EpochMs): readonly ExpectedLoad[] {
  const { shop } = state
  return shop === null ? [] : fillShelves({ state, shop, nowMs }, plannedAhead(state))
}

/** Planned loads that no shelf takes: all of them are over for today. They stay in the list and can be loaded all the same. */
export function loadsWithoutShelf(state: State, nowMs: EpochMs): readonly PlannedLoad[] {
  const placed = new Set(expectedLoads(state, nowMs).map(({ planned }) => planned.id))
  return plannedAhead(state).filter(({ id }) => !placed.has(id))
}

function byListed(one: PlannedLoad, other: PlannedLoad): number {
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}
