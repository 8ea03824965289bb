import type { OrderId, VarietyId } from '../ids.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { isOnDate, standingOn } from './due-on.ts'
import type { Room } from './headroom.ts'
import { pieceAt, roomFrom, roomOf } from './headroom.ts'
import type { MixedWanted } from './mixed-flow.ts'
import { mixedFlow } from './mixed-flow.ts'
import type { Order, OrderLine } from './order.ts'
import { packMsOf } from './packs.ts'
import type { SupplyAsked } from './promise.ts'
import type { SpokenFor } from './spoken-for.ts'
import { fits, spokenFor } from './spoken-for.ts'
import type { Supply, SupplyFrom } from './supply.ts'
import { coolMs, supplyNow } from './supply.ts'
import type { WalkIns } from './walk-ins.ts'
import { walkInsOf } from './walk-ins.ts'

/** Today's pieces over time: what is there, whose it is, and what is free. */
export interface Book {
  readonly shop: Shop
  readonly nowMs: number
  readonly closesAtMs: number
  readonly supply: readonly Supply[]
  /** What open orders still need, by due time. */
  readonly others: readonly SpokenFor[]
  readonly walkIns: WalkIns
  readonly room: Room
  /** Mixed pieces of open orders, and how many of these can be had. */
  readonly mixed: readonly MixedWanted[]
  readonly mixedServed: number
}

/** What the reckoning leaves out, to find what it is that decides. */
export interface BookWithout {
  readonly walkIns?: boolean
  readonly orders?: boolean
  /** What stays out whatever is expected. */
  readonly least?: boolean
  readonly leaveOut?: OrderId
}

/** @returns null without a set-up */
export function bookOf(asked: SupplyAsked, rods: SupplyFrom['rods'], without: BookWithout = {}): Book | null {
  const { state, nowMs, closesAtMs } = asked
  const { shop } = state
  if (shop === null) return null
  const supply = supplyNow({ state, shop, nowMs, plan: asked.plan, rods })
  const orders = without.orders === true ? [] : openToday(asked).filter(({ id }) => id !== without.leaveOut)
  const others = spokenFor(state, orders)
  const walkIns = walkInsOf(asked)
  const part = without.walkIns === true ? 0 : shop.orders.walkInPercent / 100
  const takenAt = takenAtOf(shop, others, nowMs, closesAtMs)
  const room = roomOf({
    supply,
    taken: others.flatMap((one) => {
      const { varietyId, pieces } = one
      return varietyId === null ? [] : [{ varietyId, pieces, atMs: takenAt(one) }]
    }),
    walkIns: (id, atMs) => part * walkIns(id, atMs),
    rods,
    least: without.walkIns === true || without.least === true ? 0 : shop.orders.walkInLeast,
    nowMs,
    closesAtMs,
  })
  const mixed = others.flatMap((one) => (one.varietyId === null ? [mixedWanted(shop, room, one, takenAt(one))] : []))
  const grouped = together(mixed)
  const served = grouped.length === 0 ? [] : mixedFlow(room.free.map(roomFrom), grouped)
  const mixedServed = served.reduce((sum, pieces) => sum + pieces, 0)
  return { shop, nowMs, closesAtMs, supply, others, walkIns, room, mixed: grouped, mixedServed }
}

/** What is still to be handed over today, what is overdue included, soonest first. */
export function openToday({
  state,
  date,
  noonOf,
  closesAtMs,
}: Omit<SupplyAsked, 'outlook' | 'plan'>): readonly Order[] {
  const at = { date, noonMs: noonOf(date) }
  const open = [...state.orders.values()].filter(({ dueAtMs }) => dueAtMs <= closesAtMs || isOnDate(at, dueAtMs))
  return [...open, ...standingOn(state, at)].sort(
    (one, other) => one.dueAtMs - other.dueAtMs || (one.id < other.id ? -1 : 1),
  )
}

/**
 * When pieces leave the rods. What is overdue is wanted now. What is sliced or bagged is taken when its packing begins, and
 * must have been ready to be sold for what it has to cool longer for that.
 */
export function takenAtOf(
  shop: Shop,
  all: readonly SpokenFor[],
  nowMs: number,
  closesAtMs: number,
): (one: SpokenFor) => number {
  const packed = new Map<OrderId, number>()
  for (const { orderId, isPacked, pieces } of all)
    if (isPacked) packed.set(orderId, (packed.get(orderId) ?? 0) + pieces)
  return (one) => {
    const dueMs = Math.min(closesAtMs, Math.max(nowMs, one.dueAtMs))
    return one.isPacked
      ? dueMs - packMsOf(shop, packed.get(one.orderId) ?? 0) - coolsLonger(shop, one.varietyId)
      : dueMs
  }
}

/** What a piece must cool longer to be sliced than to be sold; of mixed ones, as of the variety that needs most. */
function coolsLonger(shop: Shop, varietyId: VarietyId | null): number {
  const some = varietyId === null ? inUse(shop.varieties).map(({ id }) => id) : [varietyId]
  return Math.max(0, ...some.map((id) => shop.orders.sliceCoolMs - coolMs(shop, id)))
}

/** Mixed pieces as the flow takes them. Only varieties that are in use and regular go into a mixed dozen by themselves. */
export function mixedWanted(
  shop: Shop,
  { varieties, fromMs }: Room,
  line: Pick<OrderLine, 'varietyId' | 'without' | 'pieces'>,
  atMs: number,
): MixedWanted {
  const canFill = (id: VarietyId) => fits(line, id) && shop.varieties.get(id)?.size === 'regular'
  return { at: Math.max(0, pieceAt(fromMs, atMs)), fits: varieties.map(canFill), pieces: line.pieces }
}

/** Those that are taken at one time from the same varieties are one; in the order of the first of each. */
function together(mixed: readonly MixedWanted[]): readonly MixedWanted[] {
  const groups = new Map<string, MixedWanted>()
  for (const one of mixed) {
    const key = `${one.at} ${one.fits.map(Number).join('')}`
    groups.set(key, { ...one, pieces: one.pieces + (groups.get(key)?.pieces ?? 0) })
  }
  return [...groups.values()].sort((one, other) => one.at - other.at)
}

/** A line that is asked for, as the book counts it. */
export interface Wanted {
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  readonly pieces: number
  /** So long before it is fetched it leaves the rods. */
  readonly beforeMs: number
}

export function wantedOf({ shop }: Book, lines: readonly OrderLine[]): readonly Wanted[] {
  const packed = lines.reduce((sum, { sliced, bagged, pieces }) => sum + (sliced || bagged ? pieces : 0), 0)
  return lines.map(({ varietyId, without, pieces, sliced, bagged }) => ({
    varietyId,
    without,
    pieces,
    beforeMs: sliced || bagged ? packMsOf(shop, packed) + coolsLonger(shop, varietyId) : 0,
  }))
}
