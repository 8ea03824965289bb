import { freshOutlook } from '../../../shared-core/live/outlook.ts'
import type { SupplyAsked } from '../../../shared-core/orders/promise.ts'
import { hoursOn } from '../../../shared-core/shop/hours.ts'
import { epochMs } from '../../../shared-core/units.ts'
import type { OrdersParts } from './parts.ts'

const MINUTE_MS = 60_000
const NOON_MINUTE = 720
/** On a day without hours nobody fetches anything in the evening either. */
const LAST_MINUTE = 1_439

/** What a promise of today is reckoned from, to the minute. */
export function supplyAsked({ state, shop, live, room }: OrdersParts): SupplyAsked {
  const { today, noonOf, minuteMs } = room
  const closeMinute = hoursOn(shop, today)?.closeMinute ?? LAST_MINUTE
  return {
    state,
    nowMs: minuteMs,
    date: today,
    noonOf,
    closesAtMs: epochMs(noonOf(today) + (closeMinute - NOON_MINUTE) * MINUTE_MS),
    outlook: freshOutlook(live.outlook, live.nowMs),
    plan: live.plan,
  }
}
