import type { Line, State } from '../day/state.ts'
import type { OrderId, VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import type { Shop } from '../shop/shop.ts'
import { estimateOf } from '../stock/estimate.ts'
import { leaksOf } from '../stock/leak.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { byDue } from './due-on.ts'
import { mixedOf } from './mixed-of.ts'
import type { Order, OrderLine } from './order.ts'
import type { PickAhead } from './pick-mixed.ts'
import { pickMixed } from './pick-mixed.ts'
import type { AssignedLine, SpokenFor } from './spoken-for.ts'
import { assigned, keptByOrder, spokenFor } from './spoken-for.ts'

/** What goes into an order's bag. */
export interface Pick {
  readonly orderId: OrderId
  /** One for each line of the order, in its order. */
  readonly lines: readonly PickLine[]
  /** All together, in the set-up's order: kept already, and lying there for it. One touch keeps the latter. */
  readonly kept: readonly Line[]
  readonly keep: readonly Line[]
  /** Pieces that are neither kept nor there. */
  readonly missing: number
}

export interface PickLine {
  readonly line: OrderLine
  readonly kept: readonly Line[]
  /** What lies there for it; of a mixed line, what there is most of. */
  readonly keep: readonly Line[]
  readonly missing: number
  /** In place of what is missing, of what there is plenty of: a question to whoever ordered. */
  readonly instead: readonly Line[]
}

/**
 * What is kept for an order, what lies there for it, and what is missing. What orders that are due before it need by name
 * is not there for it; mixed lines take nothing that others need (`pick-mixed.ts`).
 * @param ahead what is still expected today, where that is known: then mixed lines leave walk-ins' part as well
 */
export function pickOf(state: State, order: Order, nowMs: EpochMs, ahead: PickAhead | null = null): Pick {
  const { shop } = state
  const kept = keptByOrder(state).get(order.id) ?? []
  const there = shop === null ? new Map<VarietyId, number>() : forSale(state, nowMs)
  const others = spokenFor(state, [...state.orders.values()].filter(({ id }) => id !== order.id).sort(byDue))
  const isBefore = ({ orderId }: SpokenFor) => byDue(must(state.orders, orderId), order) < 0
  for (const one of others.filter(isBefore)) if (one.varietyId !== null) take(there, one.varietyId, one.pieces)
  const shares = assigned(order, kept)
  // Lines by name choose before mixed ones, and what replaces comes last.
  const picked = new Map<OrderLine, readonly Line[]>()
  for (const share of shares) if (share.line.varietyId !== null) picked.set(share.line, keepNamed(share, there))
  const picking = {
    state,
    nowMs,
    others: others.filter((one) => one.varietyId === null || !isBefore(one)),
    there,
    ahead,
  }
  for (const { line, kept: has } of [...shares].sort(fewestFirst))
    if (line.varietyId === null) picked.set(line, pickMixed(picking, line, line.pieces - piecesOf(has)))
  const lines = shares.map((share): PickLine => {
    const keep = picked.get(share.line) ?? []
    const missing = Math.max(0, share.line.pieces - piecesOf(share.kept) - piecesOf(keep))
    return { ...share, keep, missing, instead: insteadOf(shop, share.line, missing, there) }
  })
  const summed = (some: readonly Line[]) => (shop === null ? some : linesOf(sums(some), shop))
  return {
    orderId: order.id,
    lines,
    kept: summed(kept),
    keep: summed(lines.flatMap(({ keep }) => keep)),
    missing: lines.reduce((sum, { missing }) => sum + missing, 0),
  }
}

function fewestFirst(one: AssignedLine, other: AssignedLine): number {
  return other.line.without.length - one.line.without.length
}

function forSale(state: State, nowMs: EpochMs): Map<VarietyId, number> {
  const leaks = leaksOf(state)
  const salesFrom = state.shop?.counter.salesFrom ?? 'taps'
  return new Map(
    [...state.stock.values()].map((stock) => {
      const lots = stock.lots.filter(({ readyAtMs }) => readyAtMs <= nowMs)
      return [stock.varietyId, estimateOf(leaks, { stock, lots, nowMs, salesFrom }).likely]
    }),
  )
}

function keepNamed({ line, kept }: AssignedLine, there: Map<VarietyId, number>): readonly Line[] {
  const { varietyId, pieces } = line
  const taken = varietyId === null ? 0 : take(there, varietyId, pieces - piecesOf(kept))
  return varietyId === null || taken === 0 ? [] : [{ varietyId, pieces: taken }]
}

/** One that was ordered by name is replaced by others; a mixed line has looked at all that fit already. */
function insteadOf(
  shop: Shop | null,
  line: OrderLine,
  missing: number,
  there: Map<VarietyId, number>,
): readonly Line[] {
  if (shop === null || missing === 0 || line.varietyId === null) return []
  return mixedOf(shop, { varietyId: null, without: [line.varietyId] }, missing, there)
}

/** @returns how many of them are there */
function take(there: Map<VarietyId, number>, id: VarietyId, pieces: number): number {
  const has = there.get(id) ?? 0
  const takes = Math.max(0, Math.min(has, pieces))
  there.set(id, has - takes)
  return takes
}

function sums(lines: readonly Line[]): ReadonlyMap<VarietyId, number> {
  const all = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of lines) all.set(varietyId, (all.get(varietyId) ?? 0) + pieces)
  return all
}
