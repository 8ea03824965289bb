import type { State } from '../day/state.ts'
import { closesAtMinute, hoursOn } from '../shop/hours.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** When the shop sells today, from open to close. */
export interface OpenHours {
  readonly openMs: EpochMs
  readonly closeMs: EpochMs
  /** From which the hours of the day are told: noon is 12. */
  readonly noonMs: EpochMs
}

/** @returns null while no day is open, or where nobody knows when its noon was */
export function openHoursOf({ shop, day }: Pick<State, 'shop' | 'day'>): OpenHours | null {
  const noonMs = day?.noonMs ?? null
  if (shop === null || day === null || noonMs === null) return null
  // Who works on a day on which the shop is shut keeps the usual hours.
  const hours = hoursOn(shop, day.label) ?? shop.hours
  const at = (minute: number) => epochMs(noonMs + (minute - NOON_MINUTE) * MINUTE_MS)
  return { openMs: at(hours.openMinute), closeMs: at(closesAtMinute(hours)), noonMs }
}

/** A span in parts, one for each hour of the day that it has a share in. */
export interface HourPart {
  readonly hour: number
  readonly ms: number
}

/** The part of a span in which the shop was open, hour by hour. @example 6:30 to 8:15 // 6: 30 min, 7: 60, 8: 15 */
export function openParts({ openMs, closeMs, noonMs }: OpenHours, fromMs: number, toMs: number): readonly HourPart[] {
  const parts: HourPart[] = []
  const endMs = Math.min(toMs, closeMs)
  let startMs = Math.max(fromMs, openMs)
  while (startMs < endMs) {
    const hoursFromNoon = Math.floor((startMs - noonMs) / HOUR_MS)
    const nextMs = Math.min(endMs, noonMs + (hoursFromNoon + 1) * HOUR_MS)
    parts.push({ hour: hoursFromNoon + 12, ms: nextMs - startMs })
    startMs = nextMs
  }
  return parts
}

const MINUTE_MS = 60_000
const HOUR_MS = 3_600_000
const NOON_MINUTE = 720
