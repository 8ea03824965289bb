import type { DetailsBook } from '../../live/details-book.ts'
import type { DeskOrderWords } from '../../words/desk-orders.ts'
import type { DeskParts } from '../desk-screen.tsx'
import type { Room } from '../dough/room.ts'

/** What every part of the orders is made with. */
export interface OrdersParts extends DeskParts {
  readonly say: DeskOrderWords
  readonly room: Room
  /** Who ordered, fetched beside the state. */
  readonly book: DetailsBook
}
