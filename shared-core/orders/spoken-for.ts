import type { Line, State } from '../day/state.ts'
import type { OrderId, VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { itemIsBegun } from './item-steps.ts'
import type { Order, OrderLine } from './order.ts'

/** Pieces that an order still needs: ordered and not kept yet. */
export interface SpokenFor {
  readonly orderId: OrderId
  readonly dueAtMs: EpochMs
  /** Null: any variety that is not in `without`. */
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  readonly pieces: number
  /** They are sliced or bagged: they must have cooled for it, and it takes its time. */
  readonly isPacked: boolean
}

/** What is kept for each order, keep by keep; pieces of one variety may stand in several lines. */
export function keptByOrder({ keeps }: Pick<State, 'keeps'>): ReadonlyMap<OrderId, readonly Line[]> {
  const kept = new Map<OrderId, readonly Line[]>()
  for (const { orderId, lines } of keeps.values())
    if (orderId !== undefined) kept.set(orderId, [...(kept.get(orderId) ?? []), ...lines])
  return kept
}

/**
 * What open orders still need of the rods: pieces by variety that are not kept yet, mixed ones as such, and the bagels of
 * things made to order of which nothing is begun.
 * @param orders in any order; what is needed comes in theirs
 */
export function spokenFor(state: State, orders: Iterable<Order>): readonly SpokenFor[] {
  const kept = keptByOrder(state)
  return [...orders].flatMap((order) => stillNeeded(order, kept.get(order.id) ?? []))
}

/** The same of one order. */
export function stillNeeded(order: Order, kept: readonly Line[]): readonly SpokenFor[] {
  return [...stillToKeep(order, kept), ...bagelsOf(order)]
}

/** An order's pieces less those that are kept for it. What is kept counts for lines of that variety before mixed ones. */
export function stillToKeep(order: Order, kept: readonly Line[]): readonly SpokenFor[] {
  return assigned(order, kept).flatMap(({ line, kept: has }) => {
    const pieces = line.pieces - has.reduce((sum, one) => sum + one.pieces, 0)
    if (pieces <= 0) return []
    const { varietyId, without, sliced, bagged } = line
    return [{ orderId: order.id, dueAtMs: order.dueAtMs, varietyId, without, pieces, isPacked: sliced || bagged }]
  })
}

export interface AssignedLine {
  readonly line: OrderLine
  readonly kept: readonly Line[]
}

/**
 * Which kept pieces are for which line, in the order's lines' order. Of mixed lines the one that takes fewest varieties
 * chooses first. What fits no line is for none.
 */
export function assigned({ lines }: Pick<Order, 'lines'>, kept: readonly Line[]): readonly AssignedLine[] {
  const free = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of kept) free.set(varietyId, (free.get(varietyId) ?? 0) + pieces)
  const has = new Map<OrderLine, readonly Line[]>()
  for (const line of byChoice(lines)) {
    let open = line.pieces
    const its: Line[] = []
    for (const [varietyId, pieces] of free) {
      if (!fits(line, varietyId)) continue
      const takes = Math.min(open, pieces)
      if (takes === 0) continue
      its.push({ varietyId, pieces: takes })
      free.set(varietyId, pieces - takes)
      open -= takes
    }
    has.set(line, its)
  }
  return lines.map((line) => ({ line, kept: has.get(line) ?? [] }))
}

/** Whether pieces of a variety may be for a line. */
export function fits({ varietyId, without }: Pick<OrderLine, 'varietyId' | 'without'>, id: VarietyId): boolean {
  return varietyId === null ? !without.includes(id) : varietyId === id
}

function byChoice(lines: readonly OrderLine[]): readonly OrderLine[] {
  const choice = ({ varietyId, without }: OrderLine) =>
    varietyId === null ? -without.length : Number.NEGATIVE_INFINITY
  return [...lines].sort((one, other) => choice(one) - choice(other) || 0)
}

function bagelsOf(order: Order): readonly SpokenFor[] {
  const pieces = new Map<VarietyId, number>()
  for (const item of order.items)
    if (item.varietyId !== null && !itemIsBegun(item)) pieces.set(item.varietyId, (pieces.get(item.varietyId) ?? 0) + 1)
  return [...pieces].map(([varietyId, sum]) => ({
    orderId: order.id,
    dueAtMs: order.dueAtMs,
    varietyId,
    without: [],
    pieces: sum,
    isPacked: false,
  }))
}
