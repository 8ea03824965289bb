import type { Keep, State } from '../day/state.ts'
import type { Touched, Trace } from '../day/trace.ts'
import type { KeepId, OrderId } from '../ids.ts'

/**
 * What stands in the way of a command's take-back: pieces that were kept since for an order that it took, and the end
 * since of an order whose pieces it had given back. Taken back all the same, it would leave pieces that are kept for an
 * order that is not there, and nobody would fetch or release them.
 * @returns whether a row that a later command touched is such a keep or order
 */
export function keptSince(state: State, { touched }: Trace): (row: Touched) => boolean {
  const before = new Map<string, unknown>()
  const keptFor = new Set<string | undefined>()
  for (const row of touched) {
    if (row.table === 'orders') before.set(row.id, row.before)
    if (row.table === 'keeps') keptFor.add((row.before as Keep | null)?.orderId)
  }
  return (row) => {
    if (row.table === 'orders')
      return keptFor.has(row.id) && !before.has(row.id) && !state.orders.has(row.id as OrderId)
    if (row.table !== 'keeps') return false
    const orderId = ((row.before as Keep | null) ?? state.keeps.get(row.id as KeepId))?.orderId
    return orderId !== undefined && before.get(orderId) === null
  }
}
