import type { Today, TodayItem } from '../demand/today.ts'
import type { EpochMs } from '../units.ts'
import type { NamedOrder } from './orders-given.ts'

/**
 * Today with what is ordered and not kept yet taken off, as an outlook is of what walk-ins find: of what comes by the time
 * it is due, then of what is there, then of what comes after. Nothing is kept of an order that stays short.
 * @param orders soonest due first
 * @param noonMs the shop's noon of the day
 */
export function lessOrdered(today: Today, orders: readonly NamedOrder[], noonMs: EpochMs): Today {
  if (orders.length === 0) return today
  const needs = new Map<string, { readonly dueMinute: number; readonly pieces: number }[]>()
  for (const { dueAtMs, lines } of orders) {
    const dueMinute = 720 + (dueAtMs - noonMs) / 60_000
    for (const { varietyId, pieces } of lines)
      needs.set(varietyId, [...(needs.get(varietyId) ?? []), { dueMinute, pieces }])
  }
  return { ...today, items: today.items.map((item) => without(item, needs.get(item.id) ?? [])) }
}

function without(
  item: TodayItem,
  needs: readonly { readonly dueMinute: number; readonly pieces: number }[],
): TodayItem {
  const more = item.more.map((one) => ({ ...one }))
  let there = item.stock.mean
  for (const { dueMinute, pieces } of needs) {
    let open = pieces
    const take = (one: { pieces: number }) => {
      const takes = Math.min(open, one.pieces)
      one.pieces -= takes
      open -= takes
    }
    for (const one of more) if (one.minute <= dueMinute) take(one)
    const takes = Math.min(open, there)
    there -= takes
    open -= takes
    more.forEach(take)
  }
  return { ...item, stock: { ...item.stock, mean: there }, more: more.filter(({ pieces }) => pieces > 0) }
}
