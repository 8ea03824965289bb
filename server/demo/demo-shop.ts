import { deviceId } from '../../shared-core/ids.ts'
import type { DeviceHello } from '../../shared-core/live/protocol.ts'
import { parseSetUpFile } from '../../shared-core/shop/set-up-file.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import { assert } from '../../shared-core/support.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { isZone, localDate } from '../live/shop-clock.ts'
import type { DemoAt } from './demo-at.ts'
import demoFile from './demo-set-up.json' with { type: 'json' }
import { demoSpecials } from './demo-specials.ts'

/** Who acts for the invented shop. They come through the same door as every screen, under these names. */
export const DEMO_DEVICES = {
  crew: { deviceId: deviceId('demo-crew'), name: 'demo crew', role: 'bench', stationId: null },
  counter: { deviceId: deviceId('demo-counter'), name: 'demo counter', role: 'counter', stationId: null },
  desk: { deviceId: deviceId('demo-desk'), name: 'demo desk', role: 'desk', stationId: null },
} as const satisfies Record<string, DeviceHello>
export type Who = keyof typeof DEMO_DEVICES

/**
 * The demo's set-up in a zone in which it is mid-morning now, or whatever else is to be looked at. Its formulas are invented, inside the ranges that bakers
 * publish for bagels: water 45 to 60 % (Bakerpedia and Bay State Milling: 45 to 55; strong flours up to 60, from memory of
 * Hamelman, Bread), salt 1.25 to 2 %, malt up to 2 %, sugar up to 3 %, fat up to 5 % (both pages), instant yeast about
 * 0.5 % for a night in the cooler. Mixing 10 to 13 min, mix-ins at 10, rest 5 to 7 and a proof of 3 h are common practice,
 * no source; so are prices, weights of toppings, lead times of pre-ferments and a tray's 40 min to cool.
 */
export function demoShop(nowMs: EpochMs, at: DemoAt = 'morning'): Shop {
  const zone = demoZone(nowMs, at)
  const specialDays = demoSpecials(localDate(zone, nowMs))
  const parsed = parseSetUpFile({ ...demoFile, shop: { ...demoFile.shop, zone }, specialDays }, { isZone })
  assert(parsed.ok, 'the demo’s own set-up is read without a mistake')
  return parsed.shop
}

/**
 * Earliest local time at which the demo opens: the rods are filling and the rush is about to begin; the oven changes over;
 * flatbreads have been going through it for some minutes, up to an hour.
 */
const OPENS_AT_MINUTE: { readonly [at in DemoAt]: number } = {
  morning: 6 * 60 + 47,
  changeover: 11 * 60,
  afternoon: 12 * 60 + 8,
}
const DAY_MINUTES = 24 * 60
/** The zones of fixed offset reach from UTC-12 to UTC+14. */
const OFFSET_HOURS_MAX = 14

/**
 * Where on Earth the invented shop stands. It must be mid-morning whenever somebody looks, and a shop's hours cannot
 * change with that. So the hours stay (6:00 to 15:00) and the place is chosen: of the zones of whole hours and no
 * daylight saving, the one in which it is 6:47 to 7:46 now (in the afternoon's scene 12:08 to 13:07). The business date follows from it, today's, yesterday's or
 * tomorrow's. Nothing else is pretended: all times in the journal are true instants.
 * @example demoZone(at 2026-11-24T12:00Z) // 'Etc/GMT+5', UTC-5: 7:00 there; the names have the sign turned round
 */
export function demoZone(nowMs: EpochMs, at: DemoAt = 'morning'): string {
  const minuteUtc = Math.floor(nowMs / 60_000) % DAY_MINUTES
  const aheadMinutes = (OPENS_AT_MINUTE[at] - minuteUtc + DAY_MINUTES) % DAY_MINUTES
  const hours = Math.ceil(aheadMinutes / 60)
  // Up to UTC+14 the day before us; everything further ahead is nearer as the day behind.
  const offsetHours = hours > OFFSET_HOURS_MAX - 2 ? hours - 24 : hours
  if (offsetHours === 0) return 'Etc/GMT'
  return offsetHours > 0 ? `Etc/GMT-${offsetHours}` : `Etc/GMT+${-offsetHours}`
}
