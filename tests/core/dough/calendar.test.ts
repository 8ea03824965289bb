import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shopClock } from '../../../server/live/shop-clock.ts'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { CalendarDay } from '../../../shared-core/dough/calendar.ts'
import { doughCalendar } from '../../../shared-core/dough/calendar.ts'
import { dayPlan } from '../../../shared-core/dough/day-plan.ts'
import { decideAt } from '../../../shared-core/dough/decide-by.ts'
import { doughId, formulaId, preparationId, weekdayId } from '../../../shared-core/ids.ts'
import { noonOf as noonByClock } from '../../../shared-core/live/noon.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { epochMs } from '../../../shared-core/units.ts'
import '../../fixed-seed.ts'
import { at, batch, until } from '../support/make.ts'
import { dwell, table } from '../support/shop.ts'
import { percents, preparation } from './kitchen.ts'
import type { PlanParts } from './plan-make.ts'
import { doughShop, noonOf, planState, THURSDAY, TODAY, TOMORROW } from './plan-make.ts'
import { formula, mix } from './room-mix.ts'

const SPONGE = preparation({ id: 'sponge', lines: percents({ rye: 100, water: 100 }), ready: dwell(12, 14, 18, 'h') })

/** Rye is mixed two days ahead of boiling, decided by 9:00 of its day. */
function calendarShop(parts: Partial<Shop> = {}): Shop {
  const { formulas } = doughShop()
  const twoDays = [...formulas.values()].map((one) =>
    one.id === formulaId('rye') ? { ...one, daysAhead: 2, decideByMinute: 540 } : one,
  )
  return doughShop({ formulas: table(twoDays), cooler: { trays: 20, keepsAt: null }, ...parts })
}

function days(parts: PlanParts, count = 4, from = TODAY): readonly CalendarDay[] {
  const state = planState({ recordedAt: at('13:00'), shop: calendarShop(), ...parts })
  return doughCalendar(state, state.shop ?? calendarShop(), from, count, noonOf)
}

const told = (day: CalendarDay | undefined) =>
  day?.decisions.map(
    (one) =>
      `${one.formulaId} for ${one.bakeDate} by ${new Date(one.atMs - 6 * 3_600_000).toISOString().slice(5, 16)}${one.isDecided ? ', decided' : ''}`,
  )

describe('decision hours', () => {
  const wanted = { [TOMORROW]: { plain: 90 }, [THURSDAY]: { rye: 90 } }

  it('[D29] given plain for tomorrow and rye for the day after, when today is looked at, then both are decided today, each by its hour', () => {
    expect(told(days({ wanted })[0])).toEqual([
      'rye for 2026-11-26 by 11-24T09:00',
      'plain for 2026-11-25 by 11-24T10:00',
    ])
  })

  it('[D29] given mixes that stand, when today is looked at, then that is told as decided', () => {
    const mixes = [mix('planned', at('9:00'), { formula: formula(), bakeDate: TOMORROW })]
    expect(told(days({ wanted, mixes })[0])).toEqual([
      'rye for 2026-11-26 by 11-24T09:00',
      'plain for 2026-11-25 by 11-24T10:00, decided',
    ])
  })

  it.each([
    ['14 h before work begins at 5:00', dwell(12, 14, 18, 'h'), '2026-11-24T09:00'],
    ['24 h before, at 5:00 and thus before the hour', dwell(20, 24, 30, 'h'), '2026-11-24T05:00'],
    ['an hour before, on the very day', dwell(0.5, 1, 4, 'h'), '2026-11-25T04:00'],
  ])('[D29] given a preparation begun %s, when it is decided, then by %s', (_when, ready, expected) => {
    const shop = calendarShop({ preparations: table([{ ...SPONGE, ready }]) })
    const of = formula({
      decideByMinute: 540,
      preparations: [{ preparationId: preparationId('sponge'), percent: 20_000 }],
    })
    const local = new Date(decideAt({ shop, noonOf }, of, THURSDAY) - 6 * 3_600_000).toISOString().slice(0, 16)
    expect(local).toBe(expected)
  })

  /** Clocks: America/New_York, 2026-03-08 and 2026-11-01 (Python zoneinfo, tzdata 2025b). */
  it.each([
    ['an ordinary night', '2026-03-04', '2026-03-03T22:00Z'],
    ['the short night', '2026-03-08', '2026-03-07T21:00Z'],
    ['the long night', '2026-11-01', '2026-10-31T22:00Z'],
  ])(
    '[D29] given a sponge of 12 h for a mix at 5:00 after %s, when it is decided, then 12 h elapse',
    (_night, mixDate, expected) => {
      const shop = calendarShop({ preparations: table([{ ...SPONGE, ready: dwell(10, 12, 16, 'h') }]) })
      const of = formula({
        decideByMinute: 1_439,
        daysAhead: 1,
        preparations: [{ preparationId: SPONGE.id, percent: 20_000 }],
      })
      const clock = shopClock('America/New_York', epochMs(Date.parse('2026-01-01T12:00Z')))
      const bakeDate = new Date(Date.parse(`${mixDate}T00:00Z`) + 86_400_000).toISOString().slice(0, 10)
      const atMs = decideAt({ shop, noonOf: (date) => noonByClock(clock, date) }, of, bakeDate)
      expect(new Date(atMs).toISOString().slice(0, 16)).toBe(expected.slice(0, 16))
    },
  )
})

describe('the calendar', () => {
  it('[D30] given dough for two days, when nights are looked at, then trays stand in the cooler from mixing to boiling', () => {
    const wanted = { [TOMORROW]: { plain: 90 }, [THURSDAY]: { rye: 100, mini: 24 } }
    const nights = days({ wanted }).map(({ night }) => night.trays)
    // Tonight: 6 of plain and 7 of rye. Wednesday night: 7 of rye and 1 of minis. The 5 of rye that a tray gave over go past their window on Thursday evening.
    expect(nights).toEqual([6 + 7, 7 + 1, 0, 0])
  })

  it('[D30] given more trays than the cooler holds, when a night is looked at, then what is over is said', () => {
    const [tonight] = days({ wanted: { [TOMORROW]: { plain: 330 } } })
    expect(tonight?.night).toEqual({ trays: 22, space: 20, over: 2 })
    const [open] = days({ wanted: { [TOMORROW]: { plain: 330 } }, shop: calendarShop({ cooler: null }) })
    expect(open?.night).toEqual({ trays: 22, space: null, over: 0 })
  })

  it('[D30] given chilled pieces that nobody wants, when nights are looked at, then they stand there to the end of their window', () => {
    const left = batch({
      stage: 'chill',
      pieces: 40,
      since: at('18:00', -1),
      until: { ...until('2:00', '8:00', '8:00'), latestAtMs: at('18:00', 1) },
    })
    expect(days({ batches: [left] }).map(({ night }) => night.trays)).toEqual([3, 0, 0, 0])
  })

  it('[D30] given a weekday on which the shop is closed, when it is looked at, then it is marked, and mixing on it is too', () => {
    const weekdays: Shop['weekdays'] = table([{ id: weekdayId('3'), hours: null, retired: false }])
    const shop = calendarShop({ weekdays })
    const found = days({ shop, wanted: { [THURSDAY]: { plain: 30 } } })
    expect(found.map(({ date, isClosed }) => [date.slice(8), isClosed])).toEqual([
      ['24', false],
      ['25', true],
      ['26', false],
      ['27', false],
    ])
    expect(found[2]?.formulas[0]).toMatchObject({ mixDate: TOMORROW, isMixDateClosed: true })
    expect(found.map(({ wanted, mixesToday }) => [wanted, mixesToday])).toEqual([
      [0, 0],
      [0, 1],
      [30, 0],
      [0, 0],
    ])
  })

  it('[D30] given a holiday typed four weeks ahead, when the calendar reaches it, then it stands there with its decision', () => {
    const found = days({ wanted: { '2026-12-24': { plain: 900 } } }, 31)
    expect(found.find(({ date }) => date === '2026-12-24')).toMatchObject({ wanted: 900 })
    expect(told(found.find(({ date }) => date === '2026-12-23'))).toEqual(['plain for 2026-12-24 by 12-23T10:00'])
  })

  it('[D30] given mixes planned by hand, when the calendar is made, then they are counted instead of the plan’s', () => {
    const gives = [{ doughId: doughId('plain'), pieces: 45, pieceMilligrams: 120_000 }]
    const mixes = ['m1', 'm2'].map((id) => mix('planned', at('9:00'), { id, gives }))
    const [today, tomorrow] = days({ wanted: { [TOMORROW]: { plain: 90 } }, mixes })
    expect([today?.mixesToday, tomorrow?.planned, tomorrow?.begun]).toEqual([2, 2, 0])
    expect(today?.night.trays).toBe(6)
  })

  it('[D30] given any days typed ahead, when the calendar is made, then each has the needs that the plan of its day has', () => {
    const anyDay = fc.record({ plain: fc.nat(300), mini: fc.nat(90), rye: fc.nat(200) })
    fc.assert(
      fc.property(fc.array(anyDay, { minLength: 1, maxLength: 5 }), fc.nat(120), (typed, left) => {
        const wanted = Object.fromEntries(typed.map((lines, n) => [dateAfter(TOMORROW, n), lines]))
        const parts = {
          wanted,
          batches: [batch({ stage: 'chill', pieces: left + 1, until: until('2:00', '8:00', '20:00') })],
        }
        const state = planState({ recordedAt: at('13:00'), shop: calendarShop(), ...parts })
        for (const { date, doughs, formulas } of days(parts, 7)) {
          const plan = dayPlan(state, state.shop ?? calendarShop(), date, noonOf)
          expect({ doughs, formulas }).toEqual({ doughs: plan.doughs, formulas: plan.formulas })
        }
      }),
      { numRuns: 15 },
    )
  })
})
