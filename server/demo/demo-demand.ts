import type { VarietyId } from '../../shared-core/ids.ts'
import { isoWeekday } from '../../shared-core/shop/hours.ts'
import type { Shop, Variety } from '../../shared-core/shop/shop.ts'
import { windowOf } from '../../shared-core/shop/windows.ts'

/** Customers an hour by the hour of the day: a rush before work, a smaller one at noon. Invented, as the shop is. */
const CUSTOMERS_AN_HOUR: ReadonlyMap<number, number> = new Map([
  [6, 48],
  [7, 84],
  [8, 88],
  [9, 62],
  [10, 48],
  [11, 44],
  [12, 50],
  [13, 28],
  [14, 16],
])

/** Pieces that a customer buys, and how likely: a bagel for oneself, some for the family, a dozen for the office. */
export const PURCHASES: readonly { readonly pieces: number; readonly weight: number }[] = [
  { pieces: 1, weight: 46 },
  { pieces: 2, weight: 18 },
  { pieces: 3, weight: 7 },
  { pieces: 6, weight: 18 },
  { pieces: 12, weight: 6 },
  { pieces: 13, weight: 5 },
]

/** What people like, by the ids of the demo's set-up; a variety that is not here is liked as little as salt. */
const LIKED: ReadonlyMap<string, number> = new Map([
  ['plain', 15],
  ['sesame', 14],
  ['everything', 17],
  ['poppy', 8],
  ['onion', 6],
  ['garlic', 4],
  ['salt', 4],
  ['cheddar', 6],
  ['wheat', 5],
  ['wheat-seeds', 4],
  ['rye', 3],
  ['raisin', 6],
  ['egg', 4],
  ['mini-plain', 6],
  ['salt-stick', 3],
])
const LIKED_ELSE = 4

export function likedOf(varietyId: VarietyId): number {
  return LIKED.get(varietyId) ?? LIKED_ELSE
}

/** Customers of a weekday against a usual day, Monday first: the weekend has breakfast at home. Invented. */
const WEEKDAY = [0.93, 0.95, 0.98, 1, 1.03, 1.12, 1.07] as const

/** What the shop knows beforehand of a date: its weekday. */
export function usualBusy(date: string): number {
  return WEEKDAY[isoWeekday(date) - 1] ?? 1
}

export function customersAnHour(minuteOfDay: number): number {
  return CUSTOMERS_AN_HOUR.get(Math.floor(minuteOfDay / 60)) ?? 0
}

export interface DaySpan {
  readonly fromMinute: number
  readonly toMinute: number
  /** Customers against a usual day's, as `usualBusy` has it. */
  readonly busy: number
}

/** Pieces of each variety that the shop reckons to sell between two minutes of its day. */
export function expectedPieces(shop: Shop, variety: Variety, { fromMinute, toMinute, busy }: DaySpan): number {
  let customers = 0
  const lastMinute = Math.min(toMinute, shop.hours.closeMinute)
  for (let minute = Math.max(fromMinute, shop.hours.openMinute); minute < lastMinute; minute += 1) {
    customers += customersAnHour(minute) / 60
  }
  return (BESIDES * busy * customers * PIECES_A_CUSTOMER * likedOf(variety.id)) / likedOfAll(shop)
}

/** What goes besides: the kitchen's sandwiches, boxes that somebody rang up for, a taste. */
const BESIDES = 1.08

/** How long a variety bakes and cools, in minutes: what is loaded at 6:00 is for sale so much later. */
export function bakeAndCoolMinutes(shop: Shop, { doughId, id }: Variety): number {
  const ms = (['bake', 'cool'] as const).map((stage) => windowOf(shop, stage, doughId, id)?.targetMs ?? 0)
  return sumOf(ms) / 60_000
}

const PIECES_A_CUSTOMER =
  sumOf(PURCHASES.map(({ pieces, weight }) => pieces * weight)) / sumOf(PURCHASES.map(({ weight }) => weight))

function likedOfAll(shop: Shop): number {
  return [...shop.varieties.values()].reduce((sum, one) => sum + (one.retired ? 0 : likedOf(one.id)), 0)
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, one) => sum + one, 0)
}
