import { dateAfter } from '../day/label.ts'
import type { Formula } from '../shop/formula.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** The shop's noon of a date: zone tables live outside. */
export type NoonOf = (isoDate: string) => EpochMs

const NOON_MINUTE = 720
const MINUTE_MS = 60_000

/** The instant of a minute after local midnight; clocks change at night, so it is counted from noon. */
export function minuteOn(noonOf: NoonOf, date: string, minute: number): EpochMs {
  return epochMs(noonOf(date) + (minute - NOON_MINUTE) * MINUTE_MS)
}

/** When a date begins: half a day after the noon before, as clocks change between midnight and noon. */
export function beginOf(noonOf: NoonOf, date: string): EpochMs {
  return epochMs(noonOf(dateAfter(date, -1)) + NOON_MINUTE * MINUTE_MS)
}

/** The shop's date at an instant that is not far from a date. @example dateOf(noonOf, '2026-11-26', at('22:00', -1)) // the day before */
export function dateOf(noonOf: NoonOf, near: string, atMs: EpochMs): string {
  let date = near
  while (atMs < beginOf(noonOf, date)) date = dateAfter(date, -1)
  while (atMs >= beginOf(noonOf, dateAfter(date, 1))) date = dateAfter(date, 1)
  return date
}

/** The day on which dough for a day of boiling is mixed. @example rye of two days ahead for Thursday // Tuesday */
export function mixDateOf({ daysAhead }: Pick<Formula, 'daysAhead'>, bakeDate: string): string {
  return dateAfter(bakeDate, -daysAhead)
}

/**
 * When pieces are boiled on a date: from when the oven is ready until the changeover, else the close. On a weekday on which
 * the shop is closed, the usual hours: who boils then all the same does it at the usual time.
 */
export function boilingOn(
  shop: Shop,
  date: string,
  noonOf: NoonOf,
): { readonly fromMs: EpochMs; readonly toMs: EpochMs } {
  const hours = hoursOn(shop, date) ?? shop.hours
  return {
    fromMs: minuteOn(noonOf, date, hours.ovenReadyMinute),
    toMs: minuteOn(noonOf, date, hours.changeoverFromMinute ?? closesAtMinute(hours)),
  }
}
