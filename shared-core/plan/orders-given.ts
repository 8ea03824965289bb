import type { Line } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { spreadMixed } from '../orders/mixed-spread.ts'
import type { LineOrder } from '../orders/ordered-on.ts'
import type { OrderGiven } from './bake-off/bake-off.ts'
import type { PlanAsked } from './plan-asked.ts'
import { minuteOf } from './plan-asked.ts'

const MINUTE_MS = 60_000

/** An order as the line has it, its mixed lines as the varieties that they will probably be. */
export interface NamedOrder extends Omit<LineOrder, 'lines'> {
  readonly lines: readonly Line[]
}

/** The day's orders by name; soonest due chooses first of what is there. */
export function namedOrders({ shop, line, demand }: PlanAsked): readonly NamedOrder[] {
  const means = new Map([...demand].map(([id, { mean }]) => [id, mean]))
  const spare = new Map<VarietyId, number>()
  const add = (id: VarietyId, pieces: number) => spare.set(id, (spare.get(id) ?? 0) + pieces)
  for (const { varietyId, pieces } of [...line.stock, ...line.cooling, ...line.loads.flatMap(({ lines }) => lines)])
    add(varietyId, pieces)
  for (const { lines } of line.ordered)
    for (const { varietyId, pieces } of lines) if (varietyId !== null) add(varietyId, -pieces)
  for (const [id, pieces] of spare) spare.set(id, Math.max(0, Math.floor(pieces - (means.get(id) ?? 0))))
  return line.ordered.map((order) => ({ ...order, lines: spreadMixed(shop, order.lines, { spare, means }) }))
}

/**
 * Orders for the planner. On an open day what should have been packed by now is packed now: the planner counts nothing that
 * is taken before it begins.
 */
export function ordersGiven(asked: PlanAsked): OrderGiven[] {
  const { line } = asked
  const nowMin = line.isOpen ? minuteOf(asked, line.nowMs) : Number.NEGATIVE_INFINITY
  return namedOrders(asked).flatMap(({ dueAtMs, leadMs, coolMs, lines }): OrderGiven[] => {
    const sums = new Map<string, number>()
    for (const { varietyId, pieces } of lines) sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
    if (sums.size === 0) return []
    const due = Math.max(nowMin, minuteOf(asked, dueAtMs))
    const leadMin = Math.min(leadMs / MINUTE_MS, due - nowMin)
    const coolMin = Math.min(coolMs / MINUTE_MS, soldCoolMin(asked) + due - leadMin - nowMin)
    return [
      { due, lines: [...sums], ...(leadMin > 0 ? { leadMin } : {}), ...(coolMs > 0 && coolMin > 0 ? { coolMin } : {}) },
    ]
  })
}

/** From the oven to the counter, as the planner has it. */
function soldCoolMin({ shop }: PlanAsked): number {
  return (shop.windows.cool?.targetMs ?? 0) / MINUTE_MS
}
