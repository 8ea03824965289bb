import type { ShelfId } from '../ids.ts'
import { shelfId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { LineToday, LoadOnLine } from './line-today.ts'

/** A place in the oven that takes one load at a time: a shelf, or a part of a hearth's floor. */
export interface Place {
  readonly shelfId: ShelfId
  readonly name: string
  readonly pieces: number
}

const PART = '#'

/**
 * Shelves take a load each. A hearth's floor takes several: it is planned in parts of a kettle-full, as boards come in
 * rounds of that; which part is which nobody has to know.
 */
export function placesOf(shop: Shop, { shelves }: Pick<LineToday, 'shelves'>): readonly Place[] {
  return shelves.flatMap((id): readonly Place[] => {
    const shelf = must(shop.shelves, id)
    if (shop.oven.kind !== 'hearth' || shelf.floorBoards === null)
      return [{ shelfId: id, name: id, pieces: shelf.pieces }]
    const floor = shelf.floorBoards * shop.boards.pieces
    const part = Math.min(floor, Math.max(shop.boards.pieces, shop.kettle.pieces))
    return Array.from({ length: Math.max(1, Math.floor(floor / part)) }, (_, n) => ({
      shelfId: id,
      name: `${id}${PART}${n + 1}`,
      pieces: part,
    }))
  })
}

/** The place of a load by its shelf; loads on one floor are spread over its parts by their time. */
export function placeName(
  places: readonly Place[],
  { shelfId: id, inMinute }: Pick<LoadOnLine, 'shelfId' | 'inMinute'>,
): string {
  const own = places.filter((place) => place.shelfId === id)
  return own[Math.abs(Math.round(inMinute)) % Math.max(1, own.length)]?.name ?? id
}

/** The shelf of a place. @example shelfOf('floor#2') // 'floor' */
export function shelfOf(name: string): ShelfId {
  return shelfId(name.split(PART)[0] ?? name)
}
