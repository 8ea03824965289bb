import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'
import { specialDayId, weekdayId } from '../../../shared-core/ids.ts'
import { hoursOn, isoWeekday } from '../../../shared-core/shop/hours.ts'
import type { SpecialDay, Weekday } from '../../../shared-core/shop/shop.ts'
import { hours, shopWith, table } from '../support/shop.ts'

const SATURDAY = hours({ openMinute: 420, ovenReadyMinute: 330, closeMinute: 840 })
const WEEKDAYS: readonly Weekday[] = [
  { id: weekdayId('6'), hours: SATURDAY, retired: false },
  { id: weekdayId('7'), hours: null, retired: false },
  { id: weekdayId('1'), hours: null, retired: true },
]
const SHOP = shopWith({ weekdays: table(WEEKDAYS) })

describe('the hours of a date', () => {
  it.each([
    ['2026-11-27', 'a Friday that says nothing', SHOP.hours],
    ['2026-11-28', 'a Saturday with its own', SATURDAY],
    ['2026-11-29', 'a Sunday that is closed', null],
    ['2026-11-30', 'a Monday that has the usual ones again', SHOP.hours],
  ])('[U5] given %s, %s, then these hours', (date, _what, expected) => {
    expect(hoursOn(SHOP, date)).toEqual(expected)
  })

  it.each<[string, Partial<SpecialDay>, string, boolean]>([
    ['its first day', {}, '2026-12-24', true],
    ['a day between', {}, '2026-12-26', true],
    ['its last day', {}, '2027-01-02', true],
    ['the day after', {}, '2027-01-03', false],
    ['a retired one', { retired: true }, '2026-12-26', false],
    ['a holiday on which it is open', { kind: 'holiday' }, '2026-12-26', false],
  ])(
    '[Q93] given a closure and %s, then the shop is closed on its days and on no others',
    (_what, parts, date, isClosed) => {
      const id = specialDayId('winter')
      const spans = [
        { from: '2025-12-24', to: '2026-01-02' },
        { from: '2026-12-24', to: '2027-01-02' },
      ]
      const closure: SpecialDay = { id, name: 'Winter', order: 0, kind: 'closure', spans, retired: false, ...parts }
      const shop = shopWith({ weekdays: table(WEEKDAYS.slice(0, 1)), specialDays: table([closure]) })
      expect(hoursOn(shop, date) === null).toBe(isClosed)
    },
  )

  it('[U5] given any date of eight years, then its weekday is the one that luxon gives, in any zone', () => {
    for (const zone of ['Pacific/Kiritimati', 'America/Chicago', 'Pacific/Pago_Pago']) {
      for (let day = 0; day < 8 * 366; day += 1) {
        const date = DateTime.fromISO('2023-12-31', { zone }).plus({ days: day })
        expect([date.toISODate(), isoWeekday(date.toISODate() ?? '')]).toEqual([date.toISODate(), date.weekday])
      }
    }
  })
})
