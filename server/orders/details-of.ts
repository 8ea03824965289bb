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
  const from = OF_STANDING.exec(id)?.[1]
  const written =
    book.find(id, one?.details ?? null) ?? (from === undefined ? null : book.find(from, one?.details ?? null))
  return written === null ? null : toldOf(id, one?.details ?? written.version, written)
}

function toldOf(id: string, version: number, { name, phone, note }: WrittenDetails): DetailsTold {
  return { id, version, name, phone, note }
}

/** What is forgotten with an order: of a date, the standing one too that it has it from (`DetailsBook.forget`). */
export function forgottenWith(id: string): readonly string[] {
  const from = OF_STANDING.exec(id)?.[1]
  return from === undefined ? [id] : [id, from]
}
