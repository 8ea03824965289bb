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

/** The planned mixes of one day of mixing. */
export interface OrderDay extends MixingDay {
  readonly mixes: ReadonlyMap<string, Mix>
  /** As it is saved. */
  readonly saved: readonly string[]
  readonly best: OrderFound
}

/** By day of mixing, the soonest first. */
export function orderDays(state: State, shop: Shop, noonOf: NoonOf): readonly OrderDay[] {
  const planned = [...state.mixes.values()].filter(({ stage }) => stage === 'planned').sort(byOrder)
  const mixes = new Map(planned.map((mix) => [mix.id as string, mix]))
  return mixTasks(state, shop, planned, noonOf).map((day) => {
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
  date: string,
  cost: OrderCost,
): Extract<Act, { type: 'orderMixes' }> {
  const mixes = days.flatMap((day) =>
    day.date === date
      ? cost.places.map(({ id, startAtMs }) => ({ mixId: mixId(id), startAtMs }))
      : day.saved.map((id) => ({ mixId: mixId(id), startAtMs: day.mixes.get(id)?.startAtMs ?? null })),
  )
  return { type: 'orderMixes', mixes }
}

/** Whether order and times stand as they are shown. */
export function isSaved({ saved, mixes }: OrderDay, { places }: OrderCost): boolean {
  return places.every(({ id, startAtMs }, place) => saved[place] === id && mixes.get(id)?.startAtMs === startAtMs)
}

function byOrder(one: Mix, other: Mix): number {
  return one.order - other.order || (one.id < other.id ? -1 : 1)
}
