import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Order, OrderLine, StandingOrder } from '../../shared-core/orders/order.ts'
import type { AskedLine } from '../../shared-core/orders/order-commands.ts'

const NOBODY = { name: '', phone: '', note: '' } as const

/**
 * Acts by which screens hear that nothing is said any more of whom orders are for: the same orders, their details
 * written once more, with nothing in them. A screen keeps what it has read until `Order.details` is another number.
 * @param ids of which the details were deleted, those of standing orders with all their dates
 */
export function saidNoMore(state: State, ids: readonly string[]): readonly Act[] {
  const dozenPieces = state.shop?.orders.dozenPieces ?? 1
  const isMeant = (id: string, standingId: string | null) =>
    ids.includes(id) || (standingId !== null && ids.includes(standingId))
  const orders = [...state.orders.values()].filter(
    ({ id, details, standing }) => details > 0 && isMeant(id, standing?.standingId ?? null),
  )
  const standing = [...state.standing.values()].filter(({ id, details }) => details > 0 && isMeant(id, null))
  return [
    ...orders.map((order) => orderAgain(order, dozenPieces)),
    ...standing.map((one) => standingAgain(one, dozenPieces)),
  ]
}

function orderAgain({ id: orderId, mark, dueAtMs, way, runId, stop, lines, isPaid }: Order, dozenPieces: number): Act {
  const asked = { mark, dueAtMs, way, runId, stop, isPaid, items: [] }
  const same = lines.map((line) => askedAgain(line, dozenPieces))
  return { type: 'changeOrder', orderId, keepsItems: true, ...asked, lines: same, details: NOBODY }
}

function standingAgain(standing: StandingOrder, dozenPieces: number): Act {
  const { id: standingId, mark, way, runId, stop, dueMinute, lines, isPaid, recurrence, onHolidays } = standing
  const asked = { mark, way, runId, stop, dueMinute, isPaid, recurrence, onHolidays }
  const same = lines.map((line) => askedAgain(line, dozenPieces))
  return { type: 'setStanding', standingId, ...asked, lines: same, details: NOBODY }
}

/** A dozen was another number of pieces where they do not add up: then they are told as pieces. */
function askedAgain({ dozens, pieces, ...line }: OrderLine, dozenPieces: number): AskedLine {
  const besides = pieces - dozens * dozenPieces
  return besides >= 0 ? { ...line, dozens, pieces: besides } : { ...line, dozens: 0, pieces }
}
