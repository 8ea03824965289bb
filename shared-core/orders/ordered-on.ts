import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { OrdersAt } from './due-on.ts'
import { dueOn } from './due-on.ts'
import type { Order } from './order.ts'
import { packMsOf } from './packs.ts'
import type { SpokenFor } from './spoken-for.ts'
import { keptByOrder, stillNeeded } from './spoken-for.ts'

/** What is ordered for an instant and not kept yet, as the planner takes it. */
export interface LineOrder {
  readonly dueAtMs: EpochMs
  /** When the newest of it was taken; null: it was typed, or stands. */
  readonly takenAtMs: EpochMs | null
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

/** So many times of a day the planner looks at each by itself; of more, those of a quarter of an hour are one, due with the first. */
const TIMES_MAX = 16
const TOGETHER_MS = 15 * 60_000

/**
 * What the orders of a date still ask of the oven. What is kept needs no baking.
 * @returns by due time; those that are due and packed alike are one
 */
export function orderedOn(state: State, at: OrdersAt): readonly LineOrder[] {
  const { shop } = state
  if (shop === null) return []
  const kept = keptByOrder(state)
  const all = dueOn(state, at).flatMap((order) => partsOf(shop, order, stillNeeded(order, kept.get(order.id) ?? [])))
  const each = together(all)
  if (each.length <= TIMES_MAX) return each
  return together(all.map((one) => ({ ...one, dueAtMs: epochMs(one.dueAtMs - (one.dueAtMs % TOGETHER_MS)) })))
}

/** What is sliced or bagged goes into the oven sooner than the rest of an order. */
function partsOf(shop: Shop, order: Order, spoken: readonly SpokenFor[]): readonly LineOrder[] {
  return [false, true].flatMap((isPacked): readonly LineOrder[] => {
    const lines = spoken.filter((one) => one.isPacked === isPacked)
    if (lines.length === 0) return []
    const leadMs = leadOf(shop, order, isPacked ? piecesOf(lines) : 0)
    const takenAtMs = order.standing === null ? order.takenAtMs : null
    return [{ dueAtMs: order.dueAtMs, takenAtMs, leadMs, coolMs: isPacked ? shop.orders.sliceCoolMs : 0, lines }]
  })
}

function together(all: readonly LineOrder[]): readonly LineOrder[] {
  const groups = new Map<string, LineOrder[]>()
  for (const one of all) {
    const key = `${one.dueAtMs} ${one.leadMs} ${one.coolMs}`
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  return [...groups.values()]
    .flatMap((some) => {
      const [first] = some
      if (first === undefined) return []
      const takenAtMs = some.reduce<EpochMs | null>((newest, one) => newer(newest, one.takenAtMs), null)
      return [{ ...first, takenAtMs, lines: summed(some.flatMap(({ lines }) => lines)) }]
    })
    .sort((one, other) => one.dueAtMs - other.dueAtMs)
}

function newer(one: EpochMs | null, other: EpochMs | null): EpochMs | null {
  return one === null || (other !== null && other > one) ? other : one
}

/** All pieces that are ordered for a date, by variety; mixed ones by what must not be in them. */
export function piecesOn(state: State, at: OrdersAt): readonly OrderedLine[] {
  return summed(orderedOn(state, at).flatMap(({ lines }) => lines))
}

/** A van is loaded besides, and all of it is boxed before. */
function leadOf(shop: Shop, { runId, lines }: Order, packedPieces: number): number {
  const run = runId === null ? undefined : shop.runs.get(runId)
  if (run === undefined) return packMsOf(shop, packedPieces)
  return run.loadMs + packMsOf(shop, piecesOf(lines))
}

function summed(lines: readonly OrderedLine[]): readonly OrderedLine[] {
  const sums = new Map<string, OrderedLine>()
  for (const { varietyId, without, pieces } of lines) {
    const key = varietyId ?? ` ${[...without].sort().join(' ')}`
    sums.set(key, { varietyId, without, pieces: pieces + (sums.get(key)?.pieces ?? 0) })
  }
  return [...sums.values()]
}
