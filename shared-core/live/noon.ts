import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { ShopClock } from './protocol.ts'

/**
 * The instant of noon on a date of the shop. Its hours are counted from here, not from midnight: clocks change at night.
 * @param isoDate YYYY-MM-DD
 * @example noonOf(chicago, '2026-11-24') // 18:00Z
 */
export function noonOf({ offsets }: ShopClock, isoDate: string): EpochMs {
  const wallMs = Date.parse(`${isoDate}T12:00:00Z`)
  let noonMs = wallMs - (offsets[0]?.offsetMinutes ?? 0) * 60_000
  for (const { fromMs, offsetMinutes } of offsets) {
    const atMs = wallMs - offsetMinutes * 60_000
    if (atMs >= fromMs) noonMs = atMs
  }
  return epochMs(noonMs)
}
