import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'
import { clockText, instantOfMinute, localDate, minuteOfDay, minuteText } from '../../client/live/clock-text.ts'
import type { ShopClock } from '../../shared-core/live/protocol.ts'
import { epochMs } from '../../shared-core/units.ts'

const utc = (text: string) => epochMs(DateTime.fromISO(text, { zone: 'utc' }).toMillis())

/** Chicago around both nights of 2026, as the server sends it. */
const CHICAGO: ShopClock = {
  zone: 'America/Chicago',
  offsets: [
    { fromMs: utc('2025-11-02T07:00'), offsetMinutes: -360 },
    { fromMs: utc('2026-03-08T08:00'), offsetMinutes: -300 },
    { fromMs: utc('2026-11-01T07:00'), offsetMinutes: -360 },
  ],
}

describe('clock text', () => {
  it.each([
    ['2026-11-24T12:47', 12, '6:47'],
    ['2026-11-24T12:47', 24, '6:47'],
    ['2026-11-24T19:05', 12, '1:05'],
    ['2026-11-24T19:05', 24, '13:05'],
    ['2026-11-24T18:00', 12, '12:00'],
    ['2026-11-24T06:09', 12, '12:09'],
    ['2026-11-24T06:09', 24, '0:09'],
    ['2026-07-01T12:47', 12, '7:47'],
  ] as const)('[C13] given %s UTC on a %s-hour clock, then %s', (at, hours, text) => {
    expect(clockText(CHICAGO, utc(at), hours)).toBe(text)
  })

  it('[C13] given seconds, then the minute has not come yet', () => {
    expect(clockText(CHICAGO, epochMs(utc('2026-11-24T12:47') - 1), 12)).toBe('6:46')
  })

  it('[C13] given a minute after midnight past the day’s end, then it is the next day’s', () => {
    expect(minuteText(815, 12)).toBe('1:35')
    expect(minuteText(1_440 + 30, 24)).toBe('0:30')
  })

  it('[C13] given any hour of a year, then date and minute are those of the zone tables', () => {
    for (let hour = 0; hour < 365 * 24; hour += 5) {
      const at = epochMs(utc('2026-01-01T00:17') + hour * 3_600_000)
      const luxon = DateTime.fromMillis(at, { zone: 'America/Chicago' })
      expect([localDate(CHICAGO, at), minuteOfDay(CHICAGO, at)]).toEqual([
        luxon.toISODate(),
        luxon.hour * 60 + luxon.minute,
      ])
    }
  })
})

describe('the instant of a minute of today', () => {
  it.each([
    ['an ordinary day', '2026-11-24T12:47', 390, '2026-11-24T12:30'],
    ['a minute past midnight', '2026-11-24T12:47', 1_500, '2026-11-25T07:00'],
    ['after the spring night', '2026-03-08T15:00', 390, '2026-03-08T11:30'],
    ['before it, asked on that morning', '2026-03-08T07:00', 390, '2026-03-08T11:30'],
    ['left out by the spring night', '2026-03-08T15:00', 150, '2026-03-08T08:30'],
    ['twice in the autumn night', '2026-11-01T15:00', 90, '2026-11-01T06:30'],
    ['after the autumn night', '2026-11-01T05:30', 390, '2026-11-01T12:30'],
  ] as const)('[C13] given %s, then %s → %s min is %s', (_what, now, minute, at) => {
    expect(instantOfMinute(CHICAGO, minute, utc(now))).toBe(utc(at))
  })

  it('[C13] given a table of one offset, then it holds before and after', () => {
    const tokyo: ShopClock = { zone: 'Asia/Tokyo', offsets: [{ fromMs: utc('2026-01-01T00:00'), offsetMinutes: 540 }] }
    expect(instantOfMinute(tokyo, 390, utc('2025-06-01T00:00'))).toBe(utc('2025-05-31T21:30'))
  })
})
