import { ovenMark } from '../../../shared-core/day/marks.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { ShelfId } from '../../../shared-core/ids.ts'
import { shelvesInOrder } from '../../../shared-core/line/turn.ts'
import type { Shop, Temperature } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** A place in the oven at which its heat is read, with the newest reading of the day as it was typed. */
export interface ReadingPlace {
  /** Null: the oven as a whole. */
  readonly shelfId: ShelfId | null
  readonly last: (Temperature & { readonly atMs: EpochMs }) | null
}

/** The oven as a whole first; its shelves by themselves where it has more than one. */
export function readingPlaces(state: State, shop: Shop): readonly ReadingPlace[] {
  const shelves = shelvesInOrder(state, shop).filter(({ retired }) => !retired)
  const ids = [null, ...(shelves.length > 1 ? shelves.map(({ id }) => id) : [])]
  return ids.map((shelfId) => {
    const mark = state.marks.get(ovenMark(shelfId))
    return { shelfId, last: mark?.kind === 'oven' ? { ...mark.read, atMs: mark.atMs } : null }
  })
}

/** Hotter than any deck, colder than any room: a slip of the finger. In degrees of the unit. */
const RANGE = { C: { least: -30, most: 600 }, F: { least: -20, most: 1_112 } } as const

/** @returns null while it is no whole number of degrees that an oven can have */
export function readDegrees(text: string, unit: 'C' | 'F'): number | null {
  if (!/^\s*-?\d{1,4}\s*$/.test(text)) return null
  const degrees = Number(text)
  return degrees >= RANGE[unit].least && degrees <= RANGE[unit].most ? degrees : null
}
