import type { SlotsDecoder } from './slots-decode.ts'

/** @returns units in the order in which to put them in */
export function bestOrder(decoder: SlotsDecoder, _tries: number): Int32Array {
  const { units, orders } = decoder.problem
  const dueOf = (unit: number) => orders[units[unit]?.orders[0] ?? 0]?.dueMs ?? 0
  const order = Int32Array.from(units.map((_, at) => at).sort((one, other) => dueOf(one) - dueOf(other) || one - other))
  decoder.put(order, 0, true)
  return order
}
