import { describe, expect, it } from 'vitest'
import { changeoverMark } from '../../shared-core/day/marks.ts'
import { rulerDate, rulerOf } from '../../shared-core/day/ruler.ts'
import type { Mark } from '../../shared-core/day/said.ts'
import type { State } from '../../shared-core/day/state.ts'
import { weekdayId } from '../../shared-core/ids.ts'
import type { Weekday } from '../../shared-core/shop/shop.ts'
import { at, lines, load, minuteToMs, planned, stateWith } from './support/make.ts'
import { dwell, hours, shopWith, table, variety } from './support/shop.ts'

const ruler = (state: State, clock = '6:47') => {
  const made = rulerOf(state, at(clock), minuteToMs)
  if (made === null) throw new Error('no ruler')
  return made
}
/** Sesame bakes 16 min, cheddar 20. */
const SLOW_CHEDDAR = shopWith({
  varieties: table([
    variety({ id: 'sesame' }),
    variety({ id: 'cheddar', order: 2, windows: { bake: dwell(18, 20, 22, 'min') } }),
    variety({ id: 'old', order: 3, retired: true, windows: { bake: dwell(50, 60, 70, 'min') } }),
  ]),
})

describe('the ruler of the day', () => {
  it('[R1] given a shop with a second menu, then it runs from the oven being ready to close', () => {
    expect(ruler(stateWith())).toEqual({
      fromMs: at('4:30'),
      toMs: at('15:00'),
      nowMs: at('6:47'),
      ovenReadyMs: at('4:30'),
      openMs: at('6:00'),
      closeMs: at('15:00'),
      changeover: { fromMs: at('11:00'), toMs: at('12:00') },
      secondMenu: 'Pizza',
      lastLoadInByMs: at('10:44'),
      loadsToGo: 0,
      marks: [],
    })
  })

  it('[R1] given a shop that closes after midnight, then the ruler goes on into the next day', () => {
    const shop = shopWith({ hours: hours({ openMinute: 18 * 60, ovenReadyMinute: 17 * 60, closeMinute: 120 }) })
    expect(ruler(stateWith({ shop }))).toMatchObject({ fromMs: at('17:00'), toMs: at('2:00', 1) })
  })

  it('[R1] given an oven that is ready after opening, then the ruler begins at opening', () => {
    const shop = shopWith({ hours: hours({ ovenReadyMinute: 420 }) })
    expect(ruler(stateWith({ shop })).fromMs).toBe(at('6:00'))
  })

  it('[R1] given no set-up, then there is no ruler', () => {
    expect(rulerOf(stateWith({ shop: null }), at('6:47'), minuteToMs)).toBeNull()
  })

  it.each([
    ['nothing planned: the slowest variety in use', [], '10:40'],
    ['only quick varieties planned', [planned({ lines: lines('sesame', 48) })], '10:44'],
    ['a slow one planned', [planned({ lines: lines('sesame', 36, 'cheddar', 12) })], '10:40'],
    ['a slow one that is done', [planned({ lines: lines('cheddar', 12), done: true }), planned({ id: 'p2' })], '10:44'],
  ])('[R2] given %s, then the last load goes in by then', (_what, all, clock) => {
    expect(ruler(stateWith({ shop: SLOW_CHEDDAR, planned: all })).lastLoadInByMs).toBe(at(clock))
  })

  it('[R2] given no changeover, then there is no last load and nothing is too late', () => {
    const none = hours({ changeoverFromMinute: null, changeoverToMinute: null, secondMenu: null })
    const state = stateWith({ shop: shopWith({ hours: none }), planned: [planned({ inAt: at('14:59') })] })
    expect(ruler(state)).toMatchObject({ changeover: null, lastLoadInByMs: null, secondMenu: null })
    expect(ruler(state).marks[0]?.tooLate).toBe(false)
  })

  it.each([
    ['10:44', false],
    ['10:45', true],
  ])('[R3] given a load of 16 min planned for %s and a changeover at 11:00, then too late is %s', (clock, tooLate) => {
    expect(ruler(stateWith({ planned: [planned({ inAt: at(clock) })] })).marks[0]?.tooLate).toBe(tooLate)
  })

  it('[R3] given loads with and without a time, then marks stand soonest first and say which are estimates', () => {
    const loads = ['s1', 's2', 's3'].map((shelf) => load({ id: shelf, shelf })) // out at 6:56
    const all = [
      planned(),
      planned({ id: 'p2', order: 2, shelf: 's2', inAt: at('9:00') }),
      planned({ id: 'p3', done: true }),
    ]
    const { marks, loadsToGo } = ruler(stateWith({ loads, planned: all }))
    expect(marks.map((one) => [one.plannedId, one.shelfId, one.atMs, one.estimated])).toEqual([
      ['p1', 's1', at('6:57'), true],
      ['p2', 's2', at('9:00'), false],
    ])
    expect(loadsToGo).toBe(2)
  })

  it('[R3] given a time that comes before a shelf is free for the load before it, then marks are still soonest first', () => {
    const loads = ['s1', 's2', 's3'].map((shelf) => load({ id: shelf, shelf }))
    const all = [planned(), planned({ id: 'p2', order: 2, inAt: at('6:50') })]
    expect(ruler(stateWith({ loads, planned: all })).marks.map((one) => one.plannedId)).toEqual(['p2', 'p1'])
  })

  it('[R3] given a free shelf and a load for when one is free, then its mark stands at now', () => {
    expect(ruler(stateWith({ planned: [planned()] })).marks[0]?.atMs).toBe(at('6:47'))
  })

  it.each([
    [15, '11:15', '12:15', '10:59'],
    [-30, '10:30', '11:30', '10:14'],
  ])(
    '[R2] given a changeover slipped by %d min, then it is from %s to %s, and the last load goes in by %s',
    (minutes, from, to, last) => {
      const state = stateWith({ marks: [slipped(minutes)] })
      expect(ruler(state)).toMatchObject({ changeover: { fromMs: at(from), toMs: at(to) }, lastLoadInByMs: at(last) })
    },
  )

  it('[R2] given a changeover slipped yesterday, in a day that nobody closed, then today’s is where the set-up says', () => {
    const state = stateWith({ marks: [slipped(15)] })
    const today = rulerOf(state, at('6:47', 1), (minute) => at(clockOf(minute), 1), '2026-11-25')
    expect(today?.changeover?.fromMs).toBe(at('11:00', 1))
  })

  it('[U5] given a weekday with hours of its own, then the ruler is theirs; given one that is closed, then there is none', () => {
    // 24 November 2026 is a Tuesday.
    const own = (weekday: Weekday) => stateWith({ shop: shopWith({ weekdays: table([weekday]) }) })
    const late = hours({
      ovenReadyMinute: 360,
      openMinute: 480,
      changeoverFromMinute: null,
      changeoverToMinute: null,
      secondMenu: null,
    })
    expect(ruler(own({ id: weekdayId('2'), hours: late, retired: false }))).toMatchObject({
      fromMs: at('6:00'),
      openMs: at('8:00'),
      changeover: null,
      lastLoadInByMs: null,
    })
    const closed = own({ id: weekdayId('2'), hours: null, retired: false })
    expect(rulerOf(closed, at('6:47'), minuteToMs)).toBeNull()
    expect(rulerOf(closed, at('6:47'), minuteToMs, '2026-11-25')).not.toBeNull()
    // Without a day and a date nobody knows the weekday.
    expect(rulerOf({ ...closed, day: null }, at('6:47'), minuteToMs)).not.toBeNull()
  })

  it.each([
    ['no day is open', null, '2026-11-24'],
    ['today is open', '2026-11-24', '2026-11-24'],
    ['tomorrow is open already', '2026-11-25', '2026-11-25'],
    ['yesterday was never closed', '2026-11-23', '2026-11-24'],
  ])('[U5] given that %s, then the ruler shows the day that is worked for', (_what, label, date) => {
    const day = label === null ? null : { label, openedAtMs: at('4:00'), noonMs: null }
    expect(rulerDate({ day }, '2026-11-24')).toBe(date)
  })
})

function slipped(minutes: number): Mark {
  return { kind: 'changeover', id: changeoverMark(), slipMs: minutes * 60_000 }
}

function clockOf(minute: number): string {
  return `${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`
}
