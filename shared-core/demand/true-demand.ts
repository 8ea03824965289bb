import type { DayDemand } from './demand.ts'
import { exposureOf } from './exposure.ts'
import type { SalesDay } from './sales-day.ts'

/**
 * What a day would have asked for of each item, had none sold out: what went, and what the posterior rate expects of the
 * part of the day in which there was none. When the item went says nothing beyond pieces and exposure (likelihood
 * principle), so that days cut because they were good are not overestimated.
 */
export function trueDemandOf(ahead: ReadonlyMap<string, DayDemand>, day: SalesDay): ReadonlyMap<string, number> {
  const demands = new Map<string, number>()
  for (const [id, item] of day.items) {
    const sold = Math.max(
      0,
      item.sold.reduce((sum, { pieces }) => sum + pieces, item.unseen),
    )
    const demand = ahead.get(id)
    if (demand === undefined || item.gone.length === 0) demands.set(id, sold)
    else {
      const part = exposureOf(demand.profile, item.gone)
      const factor = (demand.dispersion + sold) / (demand.dispersion + demand.mean * part)
      demands.set(id, sold + demand.mean * (1 - part) * factor)
    }
  }
  return demands
}
