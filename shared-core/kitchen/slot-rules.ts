import type { SlotsProblem } from './slots-units.ts'

/**
 * Orders to begin a search with, by rules of one look: earliest due date; least slack (due, less what is still to be
 * done); shortest order first; longest bake first within the earliest due order. Source: Pinedo, Scheduling, 5th ed.,
 * chapter 14 (dispatching rules).
 */
export function firstOrders({ units, orders }: SlotsProblem): readonly Int32Array[] {
  const all = units.map((_, at) => at)
  const orderOf = (unit: number) => units[unit]?.orders[0] ?? 0
  const dueOf = (unit: number) => orders[orderOf(unit)]?.dueMs ?? 0
  const longOf = (unit: number) =>
    (units[unit]?.parts ?? []).reduce((most, { bakeMs, afterMs }) => Math.max(most, bakeMs + afterMs), 0)
  const workOf = orders.map(({ units: some }) => some.reduce((sum, unit) => sum + longOf(unit), 0))
  const work = (unit: number) => workOf[orderOf(unit)] ?? 0
  const by = (rank: (unit: number) => number) =>
    Int32Array.from(
      [...all].sort(
        (one, other) =>
          rank(one) - rank(other) || orderOf(one) - orderOf(other) || longOf(other) - longOf(one) || one - other,
      ),
    )
  return [by(dueOf), by((unit) => dueOf(unit) - longOf(unit)), by(work), by((unit) => dueOf(unit) + work(unit))]
}
