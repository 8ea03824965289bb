import type { Today, TodayItem } from '../demand/today.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import type { Plan, PlanLoad } from '../live/plan.ts'
import { isAdvised } from '../live/plan.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

/**
 * Today with the advised loads on the way, as if people had planned them: an outlook is of the day as it will go. What is
 * baked for the first time today is on the menu by that.
 * @param noonMs the shop's noon of the day
 */
export function withComing(today: Today, plan: Plan | null, shop: Shop, noonMs: EpochMs): Today {
  const loads = plan === null ? [] : plan.loads.filter(({ id }) => isAdvised(id))
  if (loads.length === 0) return today
  const coming = comingOf(loads, (atMs) => 720 + (atMs - noonMs) / 60_000, today.closeMinute)
  const known = new Set(today.items.map(({ id }) => id))
  const others = [...coming.keys()].filter((id) => !known.has(id)).sort()
  return {
    ...today,
    chilled: today.chilled === null ? null : lessTaken(today.chilled, loads, shop),
    items: [...today.items, ...others.map((id) => newItem(id, today))].map((item) => {
      const more = coming.get(item.id) ?? []
      return more.length === 0 ? item : { ...item, more: [...item.more, ...more].sort((a, b) => a.minute - b.minute) }
    }),
  }
}

/** What comes of each variety before the close. */
function comingOf(loads: readonly PlanLoad[], minuteOf: (atMs: EpochMs) => number, closeMinute: number) {
  const coming = new Map<string, { minute: number; pieces: number }[]>()
  for (const { readyAtMs, lines } of loads) {
    const minute = minuteOf(readyAtMs)
    if (minute >= closeMinute) continue
    for (const { varietyId, pieces } of lines) {
      const more = coming.get(varietyId) ?? []
      coming.set(varietyId, more)
      more.push({ minute, pieces })
    }
  }
  return coming
}

function lessTaken(
  chilled: ReadonlyMap<DoughId, number>,
  loads: readonly PlanLoad[],
  { varieties }: Shop,
): ReadonlyMap<DoughId, number> {
  const left = new Map(chilled)
  const take = (id: VarietyId, pieces: number) => {
    const doughId = varieties.get(id)?.doughId
    if (doughId !== undefined && left.has(doughId)) left.set(doughId, Math.max(0, (left.get(doughId) ?? 0) - pieces))
  }
  for (const { lines } of loads) for (const { varietyId, pieces } of lines) take(varietyId, pieces)
  return left
}

/** It has not been there since the opening. */
function newItem(id: string, { openMinute, nowMinute }: Today): TodayItem {
  const gone = nowMinute > openMinute ? [openMinute, nowMinute] : []
  return { id, sold: [], unseen: 0, gone, stock: { mean: 0, doubt: 0 }, more: [], kept: 0 }
}
