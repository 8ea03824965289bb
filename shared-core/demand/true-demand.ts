import type { DayDemand } from './demand.ts'
import { exposureOf } from './exposure.ts'
import type { Morning } from './mornings.ts'
import { toldSoFar } from './rest.ts'
import type { SalesDay } from './sales-day.ts'
import { soldOf } from './sales-day.ts'

/**
 * What a day would have asked for of each item, had none sold out: what went, and what the item's rate, known by then from
 * the forecast, from what went while it was there and from the whole shop's day, expects of the part in which there was
 * none. When it went says nothing beyond pieces and exposure (the likelihood principle), so days that were cut because they
 * were good are not overestimated: S sold in a part F of the day are no S / F.
 * @param ahead what was expected before the day; an item that is not in it keeps what was sold
 */
export function trueDemandOf(
  ahead: ReadonlyMap<string, DayDemand>,
  day: SalesDay,
  morning: Morning,
): ReadonlyMap<string, number> {
  const rates = toldSoFar(ahead, day, day.closeMinute, morning)
  const demands = new Map<string, number>()
  for (const [id, item] of day.items) {
    const rate = rates.get(id)
    const missed = rate === undefined || item.gone.length === 0 ? 0 : 1 - exposureOf(rate.demand.profile, item.gone)
    demands.set(id, soldOf(item) + (rate === undefined ? 0 : rate.demand.mean * missed * rate.factor))
  }
  return demands
}
