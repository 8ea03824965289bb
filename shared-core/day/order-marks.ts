import type { OrderId } from '../ids.ts'
import type { Order } from '../orders/order.ts'
import type { EpochMs } from '../units.ts'

/** Orders that are due about the same time, as one mark on the ruler. */
export interface OrderMark {
  /** The same as long as its first order is. */
  readonly key: OrderId
  /** When the first of them is due. */
  readonly atMs: EpochMs
  /** Soonest first. */
  readonly orders: readonly Pick<Order, 'id' | 'mark' | 'dueAtMs'>[]
  /** Pieces ordered, without those of items made to order. */
  readonly pieces: number
}

/** On a ruler of ten hours a hand's breadth wide, marks nearer than this would lie on each other. */
const GATHER_MS = 10 * 60_000

/**
 * The orders of a day as marks on its ruler, soonest first. Those due within ten minutes of the first one are gathered
 * into its mark. Whoever waits at the counter is no mark: they stand in the kitchen's queue, and there are many of them.
 * @param orders as `dueOn` gives them @param span outside of it nothing can be drawn
 */
export function orderMarks(
  orders: readonly Order[],
  { fromMs, toMs }: { readonly fromMs: EpochMs; readonly toMs: EpochMs },
): readonly OrderMark[] {
  const due = orders
    .filter(({ way, dueAtMs }) => way !== 'here' && dueAtMs >= fromMs && dueAtMs <= toMs)
    .sort((one, other) => one.dueAtMs - other.dueAtMs || (one.id < other.id ? -1 : 1))
  const groups: Order[][] = []
  for (const order of due) {
    const group = groups[groups.length - 1]
    const first = group?.[0]
    if (group !== undefined && first !== undefined && order.dueAtMs - first.dueAtMs < GATHER_MS) group.push(order)
    else groups.push([order])
  }
  return groups.flatMap(([first, ...others]) => (first === undefined ? [] : [markOf(first, others)]))
}

function markOf(first: Order, others: readonly Order[]): OrderMark {
  const orders = [first, ...others]
  const pieces = orders.reduce((sum, { lines }) => sum + lines.reduce((all, line) => all + line.pieces, 0), 0)
  return {
    key: first.id,
    atMs: first.dueAtMs,
    orders: orders.map(({ id, mark, dueAtMs }) => ({ id, mark, dueAtMs })),
    pieces,
  }
}
