import type { State } from '../../shared-core/day/state.ts'
import { orderId, standingId } from '../../shared-core/ids.ts'
import type { DetailsTold } from '../../shared-core/live/order-details.ts'
import type { DetailsBook, WrittenDetails } from './details-book.ts'

/** An order of a date that one that stands has. @example 'abc1234567.1.2026-11-27' */
const OF_STANDING = /^(.+)\.\d{4}-\d{2}-\d{2}$/

/**
 * Whom an order, or a standing order, is for, as the shop's state has it: the order of a date has what its standing one
 * says, until something is said of it alone.
 * @param id also of an order that ended and is not forgotten yet, and of a date whose order was not made yet
 * @returns null: nothing was written, or it was deleted
 */
export function detailsOf(state: State, book: DetailsBook, id: string): DetailsTold | null {
  const one = state.orders.get(orderId(id)) ?? state.standing.get(standingId(id))
  if (one?.details === 0) return null
  const ids = forgottenWith(id)
  const version = one?.details ?? null
  const [, from] = ids
  // Never a later one of its own: that was taken back, or the journal did not take it, and it may be somebody else's name.
  const written =
    ids.flatMap((any) => book.find(any, version) ?? [])[0] ?? (from === undefined ? null : book.find(from, null))
  if (written === null || isEmpty(written)) return null
  const { name, phone, note } = written
  return { id, version: version ?? written.version, name, phone, note }
}

function isEmpty({ name, phone, note }: WrittenDetails): boolean {
  return name === '' && phone === '' && note === ''
}

/** What is forgotten with an order: of a date, the standing one too that it has it from (`DetailsBook.forget`). */
export function forgottenWith(id: string): readonly string[] {
  const from = OF_STANDING.exec(id)?.[1]
  return from === undefined ? [id] : [id, from]
}
