import { describe, expect, it } from 'vitest'
import { shopClock } from '../../../server/live/shop-clock.ts'
import { dateAfter } from '../../../shared-core/day/label.ts'
import { dateOf, minuteOn } from '../../../shared-core/dough/dates.ts'
import { noonOf } from '../../../shared-core/live/noon.ts'
import { epochMs } from '../../../shared-core/units.ts'

describe('dates', () => {
  it('given each day of three years, a leap year among them, when days are added, then it is the calendar’s date', () => {
    const firstMs = Date.UTC(2027, 0, 1)
    const iso = (day: number) => new Date(firstMs + day * 86_400_000).toISOString().slice(0, 10)
    for (let day = 0; day < 1_096; day += 1)
      for (const more of [-40, -1, 0, 1, 5, 27, 366]) expect(dateAfter(iso(day), more)).toBe(iso(day + more))
  })

  /** Clocks: America/New_York, 2026-03-08 and 2026-11-01 (Python zoneinfo, tzdata 2025b). */
  it.each([
    ['2026-03-08T04:59Z', '2026-03-07'],
    ['2026-03-08T15:00Z', '2026-03-08'],
    ['2026-03-09T03:59Z', '2026-03-08'],
    ['2026-03-09T04:00Z', '2026-03-09'],
    ['2026-11-01T15:00Z', '2026-11-01'],
    ['2026-11-02T05:00Z', '2026-11-02'],
  ])('given the clocks change, when it is %s in New York, then the shop’s date is %s', (at, date) => {
    const clock = shopClock('America/New_York', epochMs(Date.parse('2026-01-01T12:00Z')))
    const noon = (isoDate: string) => noonOf(clock, isoDate)
    for (const near of [date, dateAfter(date, -9), dateAfter(date, 9)])
      expect(dateOf(noon, near, epochMs(Date.parse(at)))).toBe(date)
    expect(minuteOn(noon, date, 720)).toBe(noon(date))
  })
})
