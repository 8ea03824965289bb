import type { Line, State } from '../day/state.ts'
import type { OrderId, VarietyId } from '../ids.ts'
import { linesOf } from '../line/contents.ts'
import { piecesOf } from '../line/lines.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { estimateOf } from '../stock/estimate.ts'
import { leaksOf } from '../stock/leak.ts'
import { onTheWay } from '../stock/on-the-way.ts'
import type { EpochMs } from '../units.ts'
import { byDue } from './due-on.ts'
import type { Order, OrderLine } from './order.ts'
import type { AssignedLine, SpokenFor } from './spoken-for.ts'
import { assigned, fits, keptByOrder, spokenFor } from './spoken-for.ts'

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
 * is not there for it. Mixed lines take first what no other order needs by name or what is on the way for those, each piece of
 * the variety that has most left for each one taken (D'Hondt's method, as `stock/assorted.ts`), regular sizes first, never
 * one that must not be in it.
 */
export function pickOf(state: State, order: Order, nowMs: EpochMs): Pick {
  const { shop } = state
  const kept = keptByOrder(state).get(order.id) ?? []
  const there = shop === null ? new Map<VarietyId, number>() : forSale(state, nowMs)
  const others = [...state.orders.values()].filter(({ id }) => id !== order.id)
  takeNamed(
    there,
    spokenFor(
      state,
      others.filter((one) => byDue(one, order) < 0),
    ),
  )
  const shares = assigned(order, kept)
  // Lines by name choose before mixed ones, and what replaces comes last.
  const named = new Map(shares.flatMap((share) => (share.line.varietyId === null ? [] : [keepNamed(share, there)])))
  const later = laterNeeds(
    state,
    others.filter((one) => byDue(one, order) > 0),
    nowMs,
  )
  const mixed = new Map(
    shares.flatMap((share) => (share.line.varietyId === null ? [keepMixed(shop, share, there, later)] : [])),
  )
  const lines = shares.map((share): PickLine => {
    const keep = named.get(share.line) ?? mixed.get(share.line) ?? []
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

/** Pieces that later orders need by name of what lies there, as no load brings enough for them. */
function laterNeeds(state: State, orders: readonly Order[], nowMs: EpochMs): ReadonlyMap<VarietyId, number> {
  const needs = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of spokenFor(state, orders))
    if (varietyId !== null) needs.set(varietyId, (needs.get(varietyId) ?? 0) + pieces)
  for (const [varietyId, coming] of needs.size === 0 ? [] : onTheWay(state, nowMs))
    if (needs.has(varietyId)) needs.set(varietyId, Math.max(0, (needs.get(varietyId) ?? 0) - piecesOf(coming)))
  return needs
}

function takeNamed(there: Map<VarietyId, number>, spoken: readonly SpokenFor[]): void {
  for (const { varietyId, pieces } of spoken) if (varietyId !== null) take(there, varietyId, pieces)
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

function keepNamed({ line, kept }: AssignedLine, there: Map<VarietyId, number>): [OrderLine, readonly Line[]] {
  const { varietyId, pieces } = line
  if (varietyId === null) return [line, []]
  const taken = take(there, varietyId, pieces - piecesOf(kept))
  return [line, taken === 0 ? [] : [{ varietyId, pieces: taken }]]
}

/** What later orders need is taken last. */
function keepMixed(
  shop: Shop | null,
  { line, kept }: AssignedLine,
  there: Map<VarietyId, number>,
  later: ReadonlyMap<VarietyId, number>,
): [OrderLine, readonly Line[]] {
  if (shop === null) return [line, []]
  const open = line.pieces - piecesOf(kept)
  const free = new Map([...there].map(([id, pieces]) => [id, Math.max(0, pieces - (later.get(id) ?? 0))]))
  const first = mixedOf(shop, line, open, free)
  for (const { varietyId, pieces } of first) take(there, varietyId, pieces)
  const rest = mixedOf(shop, line, open - piecesOf(first), there)
  return [line, linesOf(sums([...first, ...rest]), shop)]
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

/**
 * Mixed pieces out of what is there, each of the variety that has most left for each one taken; regular sizes first.
 * @param there is lessened by what is taken
 * @returns fewer than `pieces` where there are not as many
 */
export function mixedOf(
  shop: Shop,
  line: Parameters<typeof fits>[0],
  pieces: number,
  there: Map<VarietyId, number>,
): readonly Line[] {
  const fitting = inUse(shop.varieties).filter(({ id }) => fits(line, id))
  const taken = new Map<VarietyId, number>()
  for (const isRegular of [true, false]) {
    const some = fitting.filter(({ size }) => (size === 'regular') === isRegular)
    const all = new Map(some.map(({ id }) => [id, there.get(id) ?? 0]))
    while ([...taken.values()].reduce((sum, n) => sum + n, 0) < pieces) {
      let best: VarietyId | null = null
      for (const { id } of some) {
        const has = taken.get(id) ?? 0
        if (has >= (all.get(id) ?? 0)) continue
        const bestHas = best === null ? 0 : (taken.get(best) ?? 0)
        if (best === null || (all.get(id) ?? 0) * (bestHas + 1) > (all.get(best) ?? 0) * (has + 1)) best = id
      }
      if (best === null) break
      taken.set(best, (taken.get(best) ?? 0) + 1)
    }
  }
  for (const [id, n] of taken) there.set(id, (there.get(id) ?? 0) - n)
  return linesOf(taken, shop)
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
