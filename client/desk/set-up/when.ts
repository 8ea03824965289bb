import type { ShopClock } from '../../../shared-core/live/protocol.ts'
import { hoursOn } from '../../../shared-core/shop/hours.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { instantOfMinute, localDate } from '../../live/clock-text.ts'

const DAY_MINUTES = 1_440
const DAY_MS = 86_400_000
/** As far ahead as a week: a shop that is closed all days has no opening. */
const DAYS_AHEAD = 7
/** Further off is more likely a slip of the year than a plan. */
const AHEAD_MS_MAX = 366 * DAY_MS

/**
 * When the next opening after today begins: its first step of the opening list, back-timed from the oven being ready.
 * From then on a change holds for a whole day of work.
 * @returns null for a shop that is closed every day
 */
export function nextOpening(shop: Shop, clock: ShopClock, nowMs: EpochMs): EpochMs | null {
  const leads = inUse(shop.steps)
    .filter(({ list }) => list === 'opening')
    .map(({ offsetMs }) => Math.min(0, offsetMs) / 60_000)
  const lead = Math.min(0, ...leads)
  const today = Date.parse(`${localDate(clock, nowMs)}T00:00:00Z`)
  for (let days = 1; days <= DAYS_AHEAD; days++) {
    const date = new Date(today + days * DAY_MS).toISOString().slice(0, 10)
    const hours = hoursOn(shop, date)
    if (hours === null) continue
    // Not back into the day before: its evening is still that day's work.
    const minute = Math.max(0, hours.ovenReadyMinute + lead)
    return instantOfMinute(clock, days * DAY_MINUTES + minute, nowMs)
  }
  return null
}

/**
 * A day and time as the browser's field gives it, in the shop's zone.
 * @param text YYYY-MM-DDTHH:MM
 * @returns null for what is no time, is past, or lies more than a year ahead
 */
export function typedMoment(text: string, clock: ShopClock, nowMs: EpochMs): EpochMs | null {
  const found = /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d)/.exec(text)
  if (found === null) return null
  const [, date = '', hour, minute] = found
  const days = Math.round((Date.parse(date) - Date.parse(localDate(clock, nowMs))) / DAY_MS)
  if (!Number.isFinite(days) || days < 0 || days * DAY_MS > AHEAD_MS_MAX) return null
  const atMs = instantOfMinute(clock, days * DAY_MINUTES + Number(hour) * 60 + Number(minute), nowMs)
  return atMs > nowMs ? atMs : null
}

/** What the field stands at to begin with: the start of tomorrow. @example "2026-11-27T00:00" */
export function tomorrowText(clock: ShopClock, nowMs: EpochMs): string {
  const tomorrow = Date.parse(localDate(clock, nowMs)) + DAY_MS
  return `${new Date(tomorrow).toISOString().slice(0, 10)}T00:00`
}
