import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'
import { rulerNow, rulerOfDay } from '../../client/parts/ruler-of-day.ts'
import { shopClock } from '../../server/live/shop-clock.ts'
import { weekdayId } from '../../shared-core/ids.ts'
import { epochMs } from '../../shared-core/units.ts'
import { stateWith } from '../core/support/make.ts'
import { hours, shopWith, table } from '../core/support/shop.ts'

const SUNDAY_CLOSED = table([{ id: weekdayId('7'), hours: null, retired: false }])
const WORDS = {
  lastLoad: () => 'last',
  lastLoadGone: 'gone',
  closedToday: 'closed',
  changeover: 'changeover',
  tooLate: () => 'late',
}

describe('the ruler of the day on a screen', () => {
  // Clocks go forward on 8 March 2026 in Chicago and on 29 March in Madrid, back on 1 November and 25 October.
  it.each([
    ['America/Chicago', '2026-03-07'],
    ['America/Chicago', '2026-03-08'],
    ['America/Chicago', '2026-11-01'],
    ['America/Chicago', '2026-11-02'],
    ['Europe/Madrid', '2026-03-29'],
    ['Europe/Madrid', '2026-10-25'],
    ['Asia/Kolkata', '2026-10-25'],
    ['Pacific/Chatham', '2026-04-05'],
  ])('[U5] given %s on %s, whenever it is looked at, then its instants are those that luxon gives', (zone, date) => {
    const state = stateWith({ day: null, shop: shopWith({ hours: hours({ ovenReadyMinute: 210 }) }) })
    const wall = (text: string) => DateTime.fromISO(`${date}T${text}`, { zone }).toMillis()
    for (const at of ['00:10', '03:40', '06:47', '12:00', '23:50']) {
      const nowMs = epochMs(wall(at))
      const ruler = rulerNow(state, nowMs, shopClock(zone, nowMs))
      expect(ruler).toMatchObject({
        ovenReadyMs: wall('03:30'),
        openMs: wall('06:00'),
        closeMs: wall('15:00'),
        changeover: { fromMs: wall('11:00'), toMs: wall('12:00') },
      })
    }
  })

  it.each([
    ['2026-11-28T23:59', false],
    ['2026-11-29T00:00', true],
    ['2026-11-29T23:59', true],
    ['2026-11-30T00:00', false],
  ])('[U5] given a shop that is closed on Sundays, when it is %s there, then closed is %s', (text, isClosed) => {
    const zone = 'America/Chicago'
    const nowMs = epochMs(DateTime.fromISO(text, { zone }).toMillis())
    const state = stateWith({ day: null, shop: shopWith({ weekdays: SUNDAY_CLOSED }) })
    const clock = shopClock(zone, nowMs)
    expect(rulerNow(state, nowMs, clock) === null).toBe(isClosed)
    const day = rulerOfDay(state, nowMs, clock, WORDS)
    expect(day?.orders.map((order) => order.text)).toEqual(isClosed ? ['closed'] : [])
    expect(day?.changeover === undefined).toBe(isClosed)
  })

  it('[U5] given Monday’s day opened on a closed Sunday evening, then Monday’s ruler', () => {
    const zone = 'America/Chicago'
    const wall = (text: string) => epochMs(DateTime.fromISO(text, { zone }).toMillis())
    const nowMs = wall('2026-11-29T18:00')
    const day = { label: '2026-11-30', openedAtMs: nowMs, noonMs: null }
    const state = stateWith({ day, shop: shopWith({ weekdays: SUNDAY_CLOSED }) })
    expect(rulerNow(state, nowMs, shopClock(zone, nowMs))?.openMs).toBe(wall('2026-11-30T06:00'))
  })

  it('given no set-up, then no ruler, and nothing says that the shop is closed', () => {
    const nowMs = epochMs(Date.UTC(2026, 10, 29, 12))
    const clock = shopClock('America/Chicago', nowMs)
    expect(rulerNow(stateWith({ shop: null }), nowMs, clock)).toBeNull()
    expect(rulerOfDay(stateWith({ shop: null }), nowMs, clock, WORDS)).toBeNull()
  })
})
