import type { State } from '../../shared-core/day/state.ts'
import { orderId, standingId } from '../../shared-core/ids.ts'
import type { KnownNames } from '../../shared-core/live/order-details.ts'
import { KNOWN_NAMES_MAX } from '../../shared-core/live/order-details.ts'
import type { DetailsBook } from './details-book.ts'

/**
 * Of whom something is known, so that it can be deleted: also beside orders that were handed over and are not forgotten
 * yet.
 * @param text a part of a name, phone number, note or mark, whatever the letters' size and accents; "" finds all
 */
export function knownNames({ orders, standing }: State, book: Pick<DetailsBook, 'all'>, text: string): KnownNames {
  const sought = plain(text)
  const found = book
    .all()
    .map(({ id, day, name, phone, note }) => {
      const mark = orders.get(orderId(id))?.mark ?? standing.get(standingId(id))?.mark ?? null
      return { id, mark, day, name, phone, note }
    })
    .filter(({ name, phone, note }) => name + phone + note !== '')
    .filter(({ name, phone, note, mark }) => [name, phone, note, mark ?? ''].some((one) => plain(one).includes(sought)))
    .sort((one, other) => compared(plain(one.name), plain(other.name)) || compared(one.id, other.id))
  return { names: found.slice(0, KNOWN_NAMES_MAX), found: found.length }
}

/** Without accents and the size of letters. */
function plain(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim()
}

/** Who has no name comes last. */
function compared(one: string, other: string): number {
  if ((one === '') !== (other === '')) return one === '' ? 1 : -1
  return one < other ? -1 : one > other ? 1 : 0
}
