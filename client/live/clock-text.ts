import type { ShopClock } from '../../shared-core/live/protocol.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

/**
 * The shop's local time from the server's table of UTC offsets: screens need no zone tables, which differ from one
 * device to the next. Clock times look like "6:47"; durations never do.
 */

const MINUTE_MS = 60_000
const DAY_MINUTES = 1_440
const DAY_MS = DAY_MINUTES * MINUTE_MS

/**
 * Local clock time of an instant. The hour has no leading zero and, on a 12-hour clock, no half of the day: in a shop
 * that is clear from the day itself.
 * @example clockText(chicago, noonUtcMs, 24) // "6:00"
 */
export function clockText(clock: ShopClock, atMs: EpochMs, hours: 12 | 24): string {
  return minuteText(minuteOfDay(clock, atMs), hours)
}

/** Clock time of a minute after local midnight. @example minuteText(815, 12) // "1:35" */
export function minuteText(minute: number, hours: 12 | 24): string {
  const inDay = ((minute % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES
  const hour = Math.floor(inDay / 60)
  const shown = hours === 24 ? hour : ((hour + 11) % 12) + 1
  return `${shown}:${String(inDay % 60).padStart(2, '0')}`
}

/** Local date of an instant, YYYY-MM-DD. */
export function localDate(clock: ShopClock, atMs: EpochMs): string {
  return new Date(localMs(clock, atMs)).toISOString().slice(0, 10)
}

/** Whole minutes after local midnight, 0–1439, by the clock on the wall. Rounds down. */
export function minuteOfDay(clock: ShopClock, atMs: EpochMs): number {
  return Math.floor((localMs(clock, atMs) % DAY_MS) / MINUTE_MS)
}

/**
 * The instant at which the local clock shows a minute on the local date of `nowMs`. A time that comes twice is the
 * first one; one that is left out moves forward by what is left out (2:30 becomes 3:30).
 * @param minute after local midnight; 1440 and more are the next day's
 */
export function instantOfMinute(clock: ShopClock, minute: number, nowMs: EpochMs): EpochMs {
  const nowLocalMs = localMs(clock, nowMs)
  const wantedMs = nowLocalMs - (nowLocalMs % DAY_MS) + minute * MINUTE_MS
  // Oldest first, so that the first offset under which the wanted time exists is the earlier of two.
  for (const [index, { offsetMinutes }] of clock.offsets.entries()) {
    const atMs = wantedMs - offsetMinutes * MINUTE_MS
    const next = clock.offsets[index + 1]
    if (next === undefined || atMs < next.fromMs) return epochMs(atMs)
    // Past the end of this offset, but before the next has begun: the clock jumps over it.
    if (wantedMs - next.offsetMinutes * MINUTE_MS < next.fromMs) return epochMs(atMs)
  }
  return epochMs(wantedMs)
}

/** The instant shifted so that reading it as UTC gives the shop's local time. */
function localMs(clock: ShopClock, atMs: EpochMs): number {
  let offsetMinutes = clock.offsets[0]?.offsetMinutes ?? 0
  for (const offset of clock.offsets) if (offset.fromMs <= atMs) offsetMinutes = offset.offsetMinutes
  return atMs + offsetMinutes * MINUTE_MS
}
