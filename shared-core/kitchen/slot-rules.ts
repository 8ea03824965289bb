import type { SlotsDecoder } from './slots-decode.ts'
import type { SlotsProblem } from './slots-units.ts'

/**
 * Orders to begin a search with, by rules of one look: earliest due date; least slack; shortest order first; and the
 * modified due date, by which the next order is the one that would be complete, or due, the soonest. Sources: Pinedo,
 * Scheduling, 5th ed., chapter 14; Baker and Bertrand, A dynamic priority rule for scheduling against due-dates (1982).
 */
export function firstOrders(decoder: SlotsDecoder): readonly Int32Array[] {
  const { units, orders } = decoder.problem
  const all = units.map((_, at) => at)
  const orderOf = (unit: number) => units[unit]?.orders[0] ?? 0
  const dueOf = (unit: number) => orders[orderOf(unit)]?.dueMs ?? 0
  const longOf = (unit: number) => longest(decoder.problem, unit)
  const workOf = orders.map(({ units: some }) => some.reduce((sum, unit) => sum + longOf(unit), 0))
  const work = (unit: number) => workOf[orderOf(unit)] ?? 0
  const by = (rank: (unit: number) => number) =>
    Int32Array.from(
      [...all].sort(
        (one, other) =>
          rank(one) - rank(other) || orderOf(one) - orderOf(other) || longOf(other) - longOf(one) || one - other,
      ),
    )
  return [by(dueOf), by((unit) => dueOf(unit) - longOf(unit)), by(work), modifiedDueDate(decoder)]
}

/** More orders than this are put by the simpler rules only: it tries each after each. */
const ORDERS_MAX = 60

function modifiedDueDate(decoder: SlotsDecoder): Int32Array {
  const { units, orders } = decoder.problem
  const put = new Int32Array(units.length)
  const isPut = new Set<number>()
  const left = new Set(orders.flatMap(({ units: some }, at) => (some.length > 0 ? [at] : [])))
  let count = 0
  while (left.size > 0 && orders.length <= ORDERS_MAX) {
    let next = -1
    let soonestMs = Number.POSITIVE_INFINITY
    for (const at of left) {
      const to = append(decoder.problem, put, count, at, isPut)
      decoder.put(put.subarray(0, to), count, Number.POSITIVE_INFINITY)
      const completeMs = decoder.completeMs(at)
      // Of orders that are due alike the quicker one.
      const rank = Math.max(completeMs, orders[at]?.dueMs ?? 0) + completeMs / 1_000
      if (next === -1 || rank < soonestMs) {
        next = at
        soonestMs = rank
      }
    }
    const to = append(decoder.problem, put, count, next, isPut)
    for (let at = count; at < to; at += 1) isPut.add(put[at] ?? 0)
    decoder.keep(put.subarray(0, to), count)
    count = to
    left.delete(next)
  }
  for (let unit = 0; unit < units.length; unit += 1) {
    if (isPut.has(unit)) continue
    put[count] = unit
    count += 1
  }
  return put
}

/** The order's units that are not put yet, the longest first. @returns one beyond the last */
function append(
  problem: SlotsProblem,
  put: Int32Array,
  from: number,
  order: number,
  isPut: ReadonlySet<number>,
): number {
  const mine = (problem.orders[order]?.units ?? []).filter((unit) => !isPut.has(unit))
  mine.sort((one, other) => longest(problem, other) - longest(problem, one) || one - other)
  put.set(mine, from)
  return from + mine.length
}

function longest({ units }: SlotsProblem, unit: number): number {
  return (units[unit]?.parts ?? []).reduce((most, { bakeMs, afterMs }) => Math.max(most, bakeMs + afterMs), 0)
}
