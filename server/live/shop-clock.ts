import { DateTime, IANAZone } from 'luxon'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

const MINUTE_MS = 60_000
const DAY_MS = 86_400_000
/** Far enough back for what a screen still shows of yesterday, far enough ahead for a screen left on for a year. */
const DAYS_BACK = 2
const DAYS_AHEAD = 550

export function isZone(name: string): boolean {
  return IANAZone.isValidZone(name)
}

/**
 * The shop's offsets from UTC around an instant, so that screens need no zone tables: these differ between devices.
 * Found by looking at each day and halving the day in which the offset changes.
 */
export function shopClock(zone: string, nowMs: EpochMs): ShopClock {
  const table = IANAZone.create(zone)
  const startMs = nowMs - DAYS_BACK * DAY_MS
  const offsets = [{ fromMs: epochMs(startMs), offsetMinutes: table.offset(startMs) }]
  for (let day = 0; day < DAYS_BACK + DAYS_AHEAD; day += 1) {
    const fromMs = startMs + day * DAY_MS
    const toMs = fromMs + DAY_MS
    if (table.offset(fromMs) === table.offset(toMs)) continue
    offsets.push({ fromMs: epochMs(changeBetween(table, fromMs, toMs)), offsetMinutes: table.offset(toMs) })
  }
  return { zone, offsets }
}

/** The shop's date at an instant, YYYY-MM-DD. */
export function localDate(zone: string, atMs: EpochMs): string {
  return DateTime.fromMillis(atMs, { zone }).toFormat('yyyy-MM-dd')
}

/**
 * The instant of a local time. One that comes twice (clocks set back) is the first; one that does not come at all
 * (clocks set forward) moves forward by what was skipped.
 * @param date YYYY-MM-DD @param minuteOfDay minutes on the wall clock after midnight
 * @example localInstant('America/New_York', '2026-03-08', 150) // 02:30 is skipped: 07:30Z, 3:30 on the wall
 */
export function localInstant(zone: string, date: string, minuteOfDay: number): EpochMs {
  const table = IANAZone.create(zone)
  const wallMs = Date.parse(`${date}T00:00:00Z`) + minuteOfDay * MINUTE_MS
  const before = table.offset(wallMs - DAY_MS)
  const after = table.offset(wallMs + DAY_MS)
  const found = [before, after]
    .map((offset) => ({ offset, atMs: wallMs - offset * MINUTE_MS }))
    .filter(({ offset, atMs }) => table.offset(atMs) === offset)
    .map(({ atMs }) => atMs)
  return epochMs(found.length > 0 ? Math.min(...found) : wallMs - before * MINUTE_MS)
}

function changeBetween(table: IANAZone, fromMs: number, toMs: number): number {
  const before = table.offset(fromMs)
  let low = fromMs
  let high = toMs
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (table.offset(middle) === before) low = middle
    else high = middle
  }
  return high
}
