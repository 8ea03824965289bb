import type { DayDemand, RestDemand } from './demand.ts'
import { exposureOf, partBy, profileFrom } from './exposure.ts'
import type { Morning } from './mornings.ts'
import type { SalesDay } from './sales-day.ts'
import { soldOf } from './sales-day.ts'
import { differingOf, restDispersion, told } from './told.ts'

/**
 * A guess is wrong for the whole day alike, and so, less, is what few days say: what differs from it in the morning goes
 * on. At least so much of it; more than 0.4 of few days costs on open data while the hours are hardly known either.
 */
const LEAST_PART = { nothing: 0.75, guess: 0.75, few: 0.4, many: 0 } as const

/** What a day has told of an item by a minute. */
export interface ItemSoFar {
  readonly demand: DayDemand
  /** Pieces that went, and those that were expected to while it was there. */
  readonly soFar: number
  readonly expected: number
  /** The item's rate over what was expected before the day, and its dispersion over all that is still to come. */
  readonly factor: number
  readonly dispersionOf: (part: number) => number
}

/**
 * What is left of a day by item, after what has gone so far. The shop's rate first, by all items together; then the
 * item's own, beside the shop's. Both by `told`, as far as mornings have told of the rest in the past (`Mornings`).
 * One more piece sold so far lowers no item's rest, in no quantile; a time without any to sell lowers none either.
 * @param soFar what is known by `nowMinute`, no more
 */
export function restOf(
  ahead: ReadonlyMap<string, DayDemand>,
  soFar: SalesDay,
  nowMinute: number,
  morning: Morning,
): ReadonlyMap<string, RestDemand> {
  const rests = new Map<string, RestDemand>()
  for (const [id, item] of toldSoFar(ahead, soFar, nowMinute, morning)) {
    const left = 1 - partBy(item.demand.profile, nowMinute)
    rests.set(id, {
      mean: item.demand.mean * left * item.factor,
      dispersion: item.dispersionOf(left),
      profile: profileFrom(item.demand.profile, nowMinute),
      soFar: item.soFar,
      expected: item.expected,
    })
  }
  return rests
}

/** What the day has told of each item that something was expected of. */
export function toldSoFar(
  ahead: ReadonlyMap<string, DayDemand>,
  day: SalesDay,
  nowMinute: number,
  morning: Morning,
): ReadonlyMap<string, ItemSoFar> {
  const items = [...ahead].map(([id, demand]) => {
    const item = day.items.get(id)
    const isThere = item?.offered !== false
    const expected = isThere ? demand.mean * exposureOf(demand.profile, item?.gone ?? [], nowMinute) : 0
    return { id, demand, expected, soFar: isThere && item !== undefined ? soldOf(item) : 0 }
  })
  const over = Math.min(1, (nowMinute - day.openMinute) / (day.closeMinute - day.openMinute))
  const own = morning.own(over)
  const shop = told(
    { spread: morning.shopSpread, part: morning.shop(over), lump: morning.shopLump },
    items.reduce((sum, { soFar }) => sum + soFar, 0),
    items.reduce((sum, { expected }) => sum + expected, 0),
  )
  return new Map(
    items.map((item) => {
      const part = Math.max(own, LEAST_PART[item.demand.basis])
      const differing = differingOf(item.demand, part, morning.lumpOf(item.id))
      const rate = told(differing, item.soFar, item.expected * shop.factor)
      const dispersionOf = (part: number) => restDispersion(item.demand, differing, rate.shape, part)
      return [item.id, { ...item, factor: shop.factor * rate.factor, dispersionOf }]
    }),
  )
}
