import type { State } from '../../shared-core/day/state.ts'
import type { CommandId } from '../../shared-core/ids.ts'
import type { Order } from '../../shared-core/orders/order.ts'
import type { Journal } from '../journal/journal.ts'

export interface TakenOrder {
  /** As it was taken; it may have been changed or handed over since. */
  readonly order: Order
  readonly commandId: CommandId | null
  readonly seq: number
}

/** The order that a command took; null: it took none. */
export function orderTakenBy(journal: Pick<Journal, 'answerOf' | 'entriesAfter'>, id: CommandId): TakenOrder | null {
  const answer = journal.answerOf(id)
  if (answer?.kind !== 'taken') return null
  for (const entry of journal.entriesAfter(answer.seq - 1, 1)) {
    for (const event of entry.events) {
      if (event.type !== 'orderTaken' || !event.order.id.startsWith(`${id}.`)) continue
      return { order: event.order, commandId: id, seq: answer.seq }
    }
  }
  return null
}

/** An open order that a till or a file calls so, whoever brought it; null: there is none. */
export function openOrderOf(state: State, ref: string): TakenOrder | null {
  const order = [...state.orders.values()].find((one) => one.ref === ref)
  return order === undefined ? null : { order, commandId: null, seq: state.seq }
}
