import type { Language, Shop } from '../../../shared-core/shop/shop.ts'
import { durationMs } from '../../../shared-core/units.ts'
import {
  ALL_STATIONS,
  dough,
  hours,
  PEOPLE,
  STEPS,
  shelf,
  shopWith,
  step,
  table,
  variety,
} from '../../core/support/shop.ts'
import { zoneAtHour } from '../../core/support/zone-at-hour.ts'

const MINUTE_MS = 60_000
const NOON_HOUR = 12

export interface ShiftShop {
  readonly language: Language
  /** The changeover so many minutes from now; it lasts an hour. */
  readonly changeoverIn: number
  readonly varieties?: number
  readonly shelves?: number
  /** Steps and names as long as the set-up allows. */
  readonly isLong?: boolean
  readonly more?: Partial<Shop>
}

/** Noon now, by a zone of its own. */
function noonNow(now: Date): { readonly zone: string; readonly minute: number } {
  return { zone: zoneAtHour(NOON_HOUR, now), minute: NOON_HOUR * 60 + now.getUTCMinutes() }
}

/** A shop with people, lists and a kettle that wants care, whose changeover comes when the test needs it. */
export function shiftShop({ language, changeoverIn, varieties, shelves, isLong = false, more = {} }: ShiftShop): Shop {
  const base = shopWith()
  const { zone, minute } = noonNow(new Date())
  const from = minute + changeoverIn
  const long = Array.from({ length: 7 }, (_, n) =>
    step({ id: `long${n}`, order: 10 + n, name: `Brush the stones and wipe ${n}`, offsetMs: -(n + 1) * 6 * MINUTE_MS }),
  )
  const lateSteps = Array.from({ length: 5 }, (_, n) =>
    step({ id: `change${n}`, order: 20 + n, list: 'changeover', name: `Drain and dry the boards ${n}`, offsetMs: n }),
  )
  return shopWith({
    profile: { ...base.profile, zone, language },
    hours: hours({
      ovenReadyMinute: minute - 120,
      openMinute: minute - 60,
      changeoverFromMinute: from,
      changeoverToMinute: from + 60,
      closeMinute: from + 240,
    }),
    kettle: {
      ...base.kettle,
      recoverMs: durationMs(4 * MINUTE_MS),
      care: { topUp: 90, skim: null, malt: 600, change: null },
    },
    doughs: table([
      dough({ id: 'plain', order: 1, contains: ['wheat'] }),
      dough({ id: 'rye', order: 2, route: ['proof', 'chill', 'kettle', 'boards', 'oven'], contains: ['wheat', 'egg'] }),
    ]),
    people: table(PEOPLE),
    steps: table(isLong ? [...STEPS, ...long, ...lateSteps] : STEPS),
    stations: table(ALL_STATIONS),
    ...(varieties === undefined
      ? {}
      : {
          varieties: table(
            Array.from({ length: varieties }, (_, n) =>
              variety({ id: `v${n}`, order: n, name: `Sun-dried Tomato ${n}` }),
            ),
          ),
        }),
    ...(shelves === undefined
      ? {}
      : { shelves: table(Array.from({ length: shelves }, (_, n) => shelf({ id: `s${n + 1}`, order: n + 1 }))) }),
    ...more,
  })
}
