import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { byVariety } from '../../shared-core/line/contents.ts'
import { inUse } from '../../shared-core/shop/in-order.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { customersAnHour, likedOf, PURCHASES, usualBusy } from './demo-demand.ts'
import { specialFactor } from './demo-specials.ts'
import type { Draw } from './draw.ts'
import { drawFor, pick } from './draw.ts'

/**
 * Who comes to the demo's counter on a date and what they like that day. One crowd for the weeks that stand in the till,
 * the days before today and the day that runs, so that what was sold says what will be.
 */
export interface Crowd {
  readonly seed: number
  readonly date: string
  readonly shop: Shop
  /** Customers against a usual day's. */
  readonly busy: number
  /** How much each variety is asked for today. */
  readonly liked: ReadonlyMap<VarietyId, number>
}

export interface Customer {
  readonly key: string
  /** After local midnight, with a fraction. */
  readonly minute: number
}

/** From day to day, by nothing that anybody knows beforehand. */
const BUSY = [0.92, 1.08] as const
/** How much a variety is asked for on a day, against a usual one: some always run short and some are left. */
const ASKED_FOR = [0.65, 1.4] as const
/** Those who want a kind that is gone and take another instead; the others go without. */
export const TAKE_ANOTHER = 0.6

export function crowdOn(shop: Shop, seed: number, date: string): Crowd {
  const chance = drawFor(seed, `busy:${date}`).between(...BUSY)
  const liked = inUse(shop.varieties).map(({ id }) => {
    return [id, likedOf(id) * drawFor(seed, `liked:${date}:${id}`).between(...ASKED_FOR)] as const
  })
  return { seed, date, shop, busy: usualBusy(date) * specialFactor(shop, date) * chance, liked: new Map(liked) }
}

/** Those who come in a minute of the day, in order. */
export function customersIn({ seed, date, busy, shop }: Crowd, minute: number): readonly Customer[] {
  const { openMinute, closeMinute } = shop.hours
  if (minute < openMinute || minute >= closeMinute) return []
  const draw = drawFor(seed, `customers:${date}:${minute}`)
  const came = poisson(draw, (customersAnHour(minute) / 60) * busy)
  return Array.from({ length: came }, (_, index) => ({
    key: `customer:${date}:${minute}:${index}`,
    minute: minute + draw.share(),
  })).sort((one, other) => one.minute - other.minute)
}

/** By inversion. Source: Devroye, Non-Uniform Random Variate Generation, X.3. */
export function poisson(draw: Draw, mean: number): number {
  const share = draw.share()
  let chance = Math.exp(-mean)
  let below = chance
  let came = 0
  while (share > below && came < CUSTOMERS_A_MINUTE_MAX) {
    came += 1
    chance *= mean / came
    below += chance
  }
  return came
}
const CUSTOMERS_A_MINUTE_MAX = 12

/** From so many pieces on, a customer leaves the kinds to whoever fills the bag. */
const ASSORTED_FROM = 6

/**
 * What a customer gets of what is there; nobody is sold what is not.
 * @returns in the set-up's order; empty for who goes without
 */
export function basketOf(crowd: Crowd, draw: Draw, there: ReadonlyMap<VarietyId, number>): readonly Line[] {
  const wants = pick(draw, PURCHASES, ({ weight }) => weight)?.pieces ?? 1
  const bought = wants < ASSORTED_FROM ? oneKind(crowd, draw, wants, there) : assorted(crowd, draw, wants, there)
  return [...bought]
    .map(([varietyId, pieces]) => ({ varietyId, pieces }))
    .sort((one, other) => byVariety(crowd.shop, one.varietyId, other.varietyId))
}

type There = ReadonlyMap<VarietyId, number>

function oneKind({ liked }: Crowd, draw: Draw, wants: number, there: There): Map<VarietyId, number> {
  const bought = new Map<VarietyId, number>()
  const take = (kind: readonly [VarietyId, number] | null, most: number) => {
    const got = kind === null ? 0 : Math.min(most, there.get(kind[0]) ?? 0)
    if (kind !== null && got > 0) bought.set(kind[0], got)
    return got
  }
  const left =
    wants -
    take(
      pick(draw, [...liked], ([, weight]) => weight),
      wants,
    )
  if (left > 0 && draw.share() < TAKE_ANOTHER) {
    const isOther = (id: VarietyId) => !bought.has(id) && (there.get(id) ?? 0) > 0
    take(
      pick(draw, [...liked], ([id, weight]) => (isOther(id) ? weight : 0)),
      left,
    )
  }
  return bought
}

/** A few of each of several kinds. */
function assorted({ liked }: Crowd, draw: Draw, wants: number, there: There): Map<VarietyId, number> {
  const bought = new Map<VarietyId, number>()
  const leftOf = (id: VarietyId) => (there.get(id) ?? 0) - (bought.get(id) ?? 0)
  for (let left = wants; left > 0; ) {
    const kind = pick(draw, [...liked], ([id, weight]) => (leftOf(id) > 0 ? weight : 0))
    if (kind === null) break
    const [id] = kind
    const got = Math.min(left, leftOf(id), draw.whole(2, 4))
    bought.set(id, (bought.get(id) ?? 0) + got)
    left -= got
  }
  return bought
}
