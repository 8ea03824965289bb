import type { DayDemand, RestDemand } from './demand.ts'
import { exposureOf, partBy, profileFrom } from './exposure.ts'
import type { DayAsked, ItemDay, SalesDay } from './sales-day.ts'

/** What is left of a day by item, after what has gone so far. `soFar` holds what is known by `nowMinute`, no more. */
export function restOf(
  _asked: DayAsked,
  ahead: ReadonlyMap<string, DayDemand>,
  soFar: SalesDay,
  nowMinute: number,
): ReadonlyMap<string, RestDemand> {
  return new Map([...ahead].map(([id, demand]) => [id, restOfItem(demand, soFar.items.get(id), nowMinute)]))
}

function restOfItem(demand: DayDemand, item: ItemDay | undefined, nowMinute: number): RestDemand {
  const gone = item?.gone ?? []
  const soFar = Math.max(0, item?.sold.reduce((sum, { pieces }) => sum + pieces, item.unseen) ?? 0)
  const expected = demand.mean * exposureOf(demand.profile, gone, nowMinute)
  const left = 1 - partBy(demand.profile, nowMinute)
  const factor = (demand.dispersion + soFar) / (demand.dispersion + expected)
  return {
    mean: demand.mean * left * factor,
    dispersion: demand.dispersion + soFar,
    profile: profileFrom(demand.profile, nowMinute),
    soFar,
    expected,
  }
}
