import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { NoonOf } from '../../../shared-core/dough/dates.ts'
import type { Mix } from '../../../shared-core/dough/mix.ts'
import type { MixingDay } from '../../../shared-core/dough/mix-tasks.ts'
import { mixTasks } from '../../../shared-core/dough/mix-tasks.ts'
import type { OrderCost, OrderFound } from '../../../shared-core/dough/order.ts'
import { mixingOrder, orderCost } from '../../../shared-core/dough/order.ts'
import { mixId } from '../../../shared-core/ids.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** The planned mixes of one day of mixing. */
export interface OrderDay extends MixingDay {
  readonly mixes: ReadonlyMap<string, Mix>
  /** As it is saved. */
  readonly saved: readonly string[]
  readonly best: OrderFound
}

/** By day of mixing, the soonest first. Nothing begins before `nowMs`. */
export function orderDays(state: State, shop: Shop, noonOf: NoonOf, nowMs?: EpochMs): readonly OrderDay[] {
  const planned = [...state.mixes.values()].filter(({ stage }) => stage === 'planned').sort(byOrder)
  const mixes = new Map(planned.map((mix) => [mix.id as string, mix]))
  return mixTasks(state, shop, planned, noonOf, nowMs).map((day) => {
    const ids = new Set(day.tasks.map(({ id }) => id))
    return {
      ...day,
      mixes,
      saved: [...mixes.keys()].filter((id) => ids.has(id)),
      best: mixingOrder(day.tasks, day.rules),
    }
  })
}

/** One mix at another place, the others in their order. @example moved(['a', 'b', 'c'], 'c', 0) // ['c', 'a', 'b'] */
export function moved(order: readonly string[], id: string, to: number): readonly string[] {
  const rest = order.filter((one) => one !== id)
  const place = Math.min(rest.length, Math.max(0, to))
  return [...rest.slice(0, place), id, ...rest.slice(place)]
}

export function costOf({ tasks, rules }: OrderDay, order: readonly string[]): OrderCost {
  return orderCost(tasks, order, rules)
}

/** The order and times of one day among all that are planned; the other days stay as they stand. */
export function orderAct(
  days: readonly OrderDay[],
  { date, cost, begin }: { readonly date: string; readonly cost: OrderCost; readonly begin: Begin },
): Extract<Act, { type: 'orderMixes' }> {
  const mixes = days.flatMap((day) =>
    day.date === date
      ? cost.places.map((place) => ({ mixId: mixId(place.id), startAtMs: place[BEGIN[begin]] }))
      : day.saved.map((id) => ({ mixId: mixId(id), startAtMs: day.mixes.get(id)?.startAtMs ?? null })),
  )
  return { type: 'orderMixes', mixes }
}

/** As soon as each mix can begin, or as late as none comes later into the cooler for it. */
export type Begin = 'soonest' | 'latest'
const BEGIN = { soonest: 'startAtMs', latest: 'latestAtMs' } as const

/** Whether the order stands as it is shown and each mix has a time within what can be. */
export function isSaved({ saved, mixes }: OrderDay, { places }: OrderCost): boolean {
  return places.every(({ id, startAtMs, latestAtMs }, place) => {
    const begins = mixes.get(id)?.startAtMs ?? null
    return saved[place] === id && begins !== null && begins >= startAtMs - SLACK_MS && begins <= latestAtMs + SLACK_MS
  })
}

/** While time passes, what could begin at once begins a little later: nobody saves an order each minute for that. */
const SLACK_MS = 15 * 60_000

function byOrder(one: Mix, other: Mix): number {
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}
