import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { OrdersAt } from './due-on.ts'
import { dueOn } from './due-on.ts'
import type { Order } from './order.ts'
import { packMsOf } from './packs.ts'
import { keptByOrder, stillNeeded } from './spoken-for.ts'

/** What is ordered for an instant and not kept yet, as the planner takes it. */
export interface LineOrder {
  readonly dueAtMs: EpochMs
  /** What packing and loading take before it is due. */
  readonly leadMs: number
  /** What the pieces must cool before that; 0: as before they are sold. */
  readonly coolMs: number
  readonly lines: readonly OrderedLine[]
}

export interface OrderedLine {
  /** Null: mixed, of any variety that is not in `without`. */
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  readonly pieces: number
}

/** Orders that are due within such a span are one for the planner, due with the first: it looks at each of them again and again. */
const TOGETHER_MS = 15 * 60_000

/**
 * What the orders of a date still ask of the oven. What is kept needs no baking.
 * @returns by due time; those of a quarter of an hour that are packed alike are one
 */
export function orderedOn(state: State, at: OrdersAt): readonly LineOrder[] {
  const { shop } = state
  if (shop === null) return []
  const groups = new Map<string, LineOrder>()
  const kept = keptByOrder(state)
  for (const order of dueOn(state, at)) {
    const spoken = stillNeeded(order, kept.get(order.id) ?? [])
    for (const isPacked of [false, true]) {
      const some = spoken.filter((one) => one.isPacked === isPacked)
      if (some.length === 0) continue
      const pieces = some.reduce((sum, one) => sum + one.pieces, 0)
      const leadMs = leadOf(shop, order, isPacked ? pieces : 0)
      const coolMs = isPacked ? shop.orders.sliceCoolMs : 0
      const dueAtMs = epochMs(order.dueAtMs - (order.dueAtMs % TOGETHER_MS))
      const key = `${dueAtMs} ${leadMs} ${coolMs}`
      const lines = [...(groups.get(key)?.lines ?? []), ...some]
      groups.set(key, { dueAtMs, leadMs, coolMs, lines: summed(lines) })
    }
  }
  return [...groups.values()].sort((one, other) => one.dueAtMs - other.dueAtMs)
}

/** All pieces that are ordered for a date, by variety; mixed ones by what must not be in them. */
export function piecesOn(state: State, at: OrdersAt): readonly OrderedLine[] {
  return summed(orderedOn(state, at).flatMap(({ lines }) => lines))
}

/** A van is loaded besides, and all of it is boxed before. */
function leadOf(shop: Shop, { runId, lines }: Order, packedPieces: number): number {
  const run = runId === null ? undefined : shop.runs.get(runId)
  if (run === undefined) return packMsOf(shop, packedPieces)
  return (
    run.loadMs +
    packMsOf(
      shop,
      lines.reduce((sum, { pieces }) => sum + pieces, 0),
    )
  )
}

function summed(lines: readonly OrderedLine[]): readonly OrderedLine[] {
  const sums = new Map<string, OrderedLine>()
  for (const { varietyId, without, pieces } of lines) {
    const key = varietyId ?? ` ${[...without].sort().join(' ')}`
    sums.set(key, { varietyId, without, pieces: pieces + (sums.get(key)?.pieces ?? 0) })
  }
  return [...sums.values()]
}
