import type { State } from '../day/state.ts'
import type { ShelfId } from '../ids.ts'
import type { Shelf, Shop } from '../shop/shop.ts'

/** The shelves in use in the set-up's order: not retired, or retired with a load still on them. */
export function shelvesInOrder(state: State, shop: Shop): readonly Shelf[] {
  const loaded = new Set([...state.loads.values()].map((load) => load.shelfId))
  return [...shop.shelves.values()].filter((shelf) => !shelf.retired || loaded.has(shelf.id)).sort(byOrder)
}

/**
 * The shelves in the order in which they come to hand. A rotating oven turns one way: from the shelf that was touched
 * last, which stands at the door, on through the list and round. Any other oven is as the set-up lists it.
 * @example rotating, shelves 1 2 3, shelf 2 touched last // 2 3 1
 */
export function turnOrder(state: State, shop: Shop): readonly Shelf[] {
  const shelves = shelvesInOrder(state, shop)
  const door = doorShelf(state, shop)
  const from = shelves.findIndex((shelf) => shelf.id === door)
  return from <= 0 ? shelves : [...shelves.slice(from), ...shelves.slice(0, from)]
}

/** The shelf that stands at a rotating oven's door; the first one before any was touched. Null for other ovens. */
export function doorShelf(state: State, shop: Shop): ShelfId | null {
  if (shop.oven.kind !== 'rotating') return null
  let door: Shelf | null = null
  let touchedMs = -1
  for (const shelf of shelvesInOrder(state, shop)) {
    const atMs = state.shelves.get(shelf.id)?.touchedAtMs ?? -1
    if (door === null || atMs > touchedMs) {
      door = shelf
      touchedMs = atMs
    }
  }
  return door?.id ?? null
}

function byOrder(one: Shelf, other: Shelf): number {
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}
