import type { Case } from '../day/decision.ts'
import { happen } from '../day/decision.ts'
import type { Short } from '../day/events.ts'
import type { Keep, Line, Lot } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { piecesOf, wantOf } from '../line/lines.ts'
import { lotsOf, oldestOf } from '../stock/decide-stock.ts'
import type { EpochMs } from '../units.ts'
import { itemIsBegun } from './item-steps.ts'
import { releasedLots } from './kept-for.ts'
import type { Order, OrderLine } from './order.ts'
import { takeUsed } from './used-up.ts'

interface Handing {
  readonly order: Order
  readonly keeps: readonly Keep[]
  /** What really went into the bag; null: as ordered. */
  readonly lines: readonly Line[] | null
  readonly atMs: EpochMs
}

/**
 * Books what leaves with an order. Kept pieces go first; a keep that holds more than what leaves goes back for sale, and
 * what is needed of it is taken from there. Things made to order that nobody began were made all the same.
 * @returns what left, by variety
 */
export function handOver(oneCase: Case, { order, keeps, lines, atMs }: Handing): readonly Line[] {
  const leaving = sums(lines ?? asOrdered(oneCase, order.lines, keeps))
  const back = new Map<VarietyId, Lot[]>()
  const open = new Map(leaving)
  for (const keep of keeps) {
    if (keep.lines.every(({ varietyId, pieces }) => (open.get(varietyId) ?? 0) >= pieces)) {
      for (const { varietyId, pieces } of keep.lines) open.set(varietyId, (open.get(varietyId) ?? 0) - pieces)
      const parts = keep.lines.map((line) => ({ ...line, doughId: wantOf(oneCase.shop, line).doughId }))
      happen(oneCase, atMs, { type: 'handedOver', keepId: keep.id, parts })
      continue
    }
    const lots = releasedLots(oneCase, keep)
    happen(oneCase, atMs, { type: 'released', keepId: keep.id, lots })
    for (const { varietyId, lot } of lots) back.set(varietyId, [...(back.get(varietyId) ?? []), lot])
  }
  const left = new Map<VarietyId, readonly Lot[]>()
  for (const [varietyId, lots] of back) left.set(varietyId, [...lots, ...lotsOf(oneCase, varietyId)])
  for (const [varietyId, pieces] of open)
    left.set(varietyId, takeSold(oneCase, { varietyId, pieces }, back.get(varietyId) ?? [], atMs))
  const unbegun = order.items.filter((item) => item.steps.length === 0 || !itemIsBegun(item))
  takeUsed(oneCase, unbegun, atMs, left)
  const missing = missingOf(order.lines, leaving)
  if (missing.length > 0) happen(oneCase, atMs, { type: 'orderShort', orderId: order.id, missing })
  return [...leaving].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}

/** @returns the lots that are left of it: what else the order takes is not taken of the same pieces again */
function takeSold(oneCase: Case, line: Line, back: readonly Lot[], atMs: EpochMs): readonly Lot[] {
  // Pieces that were kept are the order's own: first.
  const lots = [...back, ...lotsOf(oneCase, line.varietyId)]
  if (line.pieces === 0) return lots
  const takes = oldestOf(lots, line.pieces)
  happen(oneCase, atMs, {
    type: 'stockTaken',
    varietyId: line.varietyId,
    doughId: wantOf(oneCase.shop, line).doughId,
    fate: 'sold',
    takes,
    found: line.pieces - piecesOf(takes),
    unnamed: false,
    from: 'tap',
  })
  const taken = new Map(takes.map(({ batchId, pieces }) => [batchId, pieces]))
  return lots.map((lot) => ({ ...lot, pieces: lot.pieces - (taken.get(lot.id) ?? 0) }))
}

/** Mixed lines are what is kept besides, then what there is most of. */
function asOrdered(oneCase: Case, lines: readonly OrderLine[], keeps: readonly Keep[]): readonly Line[] {
  const leaving = sums(lines.flatMap(({ varietyId, pieces }) => (varietyId === null ? [] : [{ varietyId, pieces }])))
  const kept = sums(keeps.flatMap((keep) => keep.lines))
  const spare = (id: VarietyId) => (kept.get(id) ?? 0) - (leaving.get(id) ?? 0)
  const there = (id: VarietyId) => piecesOf(lotsOf(oneCase, id)) + spare(id)
  for (const { varietyId, pieces, without } of lines) {
    if (varietyId !== null) continue
    const fitting = [...oneCase.shop.varieties.values()]
      .filter(({ id, retired }) => !without.includes(id) && (!retired || there(id) > 0))
      .map(({ id }) => id)
    // What it could still be of is not made any more: it leaves without, and that is on record.
    for (let piece = 0; piece < pieces && fitting.length > 0; piece += 1) {
      const best = fitting.reduce((one, other) => (ahead({ spare, there }, other, one) ? other : one))
      leaving.set(best, (leaving.get(best) ?? 0) + 1)
    }
  }
  return [...leaving].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}

interface Pools {
  readonly spare: (id: VarietyId) => number
  readonly there: (id: VarietyId) => number
}

function ahead({ spare, there }: Pools, one: VarietyId, other: VarietyId): boolean {
  const [a, b] = [Math.max(0, spare(one)), Math.max(0, spare(other))]
  return a === b ? there(one) > there(other) : a > b
}

/** By variety what fewer left than was ordered; the rest of the gap is of the mixed lines. */
function missingOf(ordered: readonly OrderLine[], leaving: ReadonlyMap<VarietyId, number>): readonly Short[] {
  const exact = sums(ordered.flatMap(({ varietyId, pieces }) => (varietyId === null ? [] : [{ varietyId, pieces }])))
  const missing = [...exact].flatMap(([varietyId, pieces]): Short[] => {
    const short = pieces - (leaving.get(varietyId) ?? 0)
    return short > 0 ? [{ varietyId, pieces: short }] : []
  })
  const over = [...leaving].reduce((sum, [id, pieces]) => sum + Math.max(0, pieces - (exact.get(id) ?? 0)), 0)
  const mixed = piecesOf(ordered.filter(({ varietyId }) => varietyId === null))
  return mixed > over ? [...missing, { varietyId: null, pieces: mixed - over }] : missing
}

function sums(lines: readonly Line[]): Map<VarietyId, number> {
  const all = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of lines) all.set(varietyId, (all.get(varietyId) ?? 0) + pieces)
  return all
}
