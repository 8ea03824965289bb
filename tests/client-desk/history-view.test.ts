import { describe, expect, it } from 'vitest'
import { isOn, toggled } from '../../client/desk/history/day-specials.ts'
import { dateOf, dayNumber, namedSpans } from '../../client/desk/history/days-view.ts'
import { historyWhere, withinOf } from '../../client/desk/history/pages.ts'
import { percentOff, roughly } from '../../client/words/desk-history.ts'
import { besideOf, verdictOf } from '../../client/words/desk-trust.ts'
import { specialDayId } from '../../shared-core/ids.ts'
import type { SpecialDay } from '../../shared-core/shop/shop.ts'

const BREAK: SpecialDay = {
  id: specialDayId('break'),
  name: 'School break',
  order: 0,
  kind: 'school',
  spans: [{ from: '2026-10-12', to: '2026-10-16' }],
  retired: false,
}

describe('naming a day', () => {
  it.each([
    [
      'before it',
      '2026-10-09',
      [
        ['2026-10-09', '2026-10-09'],
        ['2026-10-12', '2026-10-16'],
      ],
    ],
    [
      'in its middle',
      '2026-10-14',
      [
        ['2026-10-12', '2026-10-13'],
        ['2026-10-15', '2026-10-16'],
      ],
    ],
    ['at its beginning', '2026-10-12', [['2026-10-13', '2026-10-16']]],
    ['at its end', '2026-10-16', [['2026-10-12', '2026-10-15']]],
  ])(
    '[Q132] given a span of five days, when a day %s is touched, then it is in or out, and no other day changes',
    (_, date, spans) => {
      const next = toggled(BREAK, date)
      expect(next.spans).toEqual(spans.map(([from, to]) => ({ from, to })))
      expect(isOn(next, date)).toBe(!isOn(BREAK, date))
      expect(isOn(toggled(next, date), date)).toBe(isOn(BREAK, date))
    },
  )

  it('[Q132] given a name with one day, when that day is touched, then it has none', () => {
    const once = { ...BREAK, spans: [{ from: '2026-10-12', to: '2026-10-12' }] }
    expect(toggled(once, '2026-10-12').spans).toEqual([])
  })
})

describe('what the drawing says', () => {
  it('[Q126] given days of one name after each other, when they are told on the axis, then once; with a day between twice', () => {
    const of = (...specials: string[]) => ({ specials })
    const days = [of(), of('b'), of('b'), of(), of('b'), of('f', 'b')]
    expect(namedSpans(days, (id) => id.toUpperCase())).toEqual([
      { name: 'B', from: 1, to: 2 },
      { name: 'B', from: 4, to: 4 },
      { name: 'F, B', from: 5, to: 5 },
    ])
  })

  it('[Q126] given dates, when they stand on an axis, then a day apart, with Mondays at sevens', () => {
    expect(dayNumber('2026-11-23') % 7).toBe(0)
    expect(dayNumber('2026-11-24') - dayNumber('2026-11-23')).toBe(1)
    expect(dateOf(dayNumber('2026-03-29'))).toBe('2026-03-29')
  })

  it('[Q126] given addresses of pages, when they are read, then they are the ones that were written; others lead to the sales', () => {
    const all = [
      { page: 'sales', of: 'variety:sesame', range: '28' },
      { page: 'day', date: '2026-11-24' },
      { page: 'trust', of: null, range: '84' },
      { page: 'trust', of: 'variety:rye', range: '365' },
    ] as const
    for (const where of all) expect(historyWhere(withinOf(where))).toEqual(where)
    expect(historyWhere('day/2026-02-30')).toEqual({ page: 'sales', of: 'all', range: '84' })
    expect(historyWhere('')).toEqual({ page: 'sales', of: 'all', range: '84' })
  })

  it.each([
    [1.24, 24],
    [0.8, -20],
    [1.012, 0],
  ])(
    '[Q128] given a factor of %f, when it is told, then %i percent; too little to notice is none',
    (factor, percent) => {
      expect(percentOff(factor)).toBe(percent)
    },
  )

  it.each([
    [3.94, '3.9'],
    [4, '4'],
    [9.97, '10'],
    [1622.8, '1623'],
  ])('[Q122] given %f pieces, when they are told, then %s', (pieces, text) => {
    expect(roughly(pieces)).toBe(text)
  })

  it.each([
    [9, 10, 12, 'nearer'],
    [9.9, 10, 12, 'asNear'],
    [10.2, 12, 10, 'asNear'],
    [11, 12, 10, 'farther'],
  ] as const)(
    '[Q122] given an error of %f beside %f and %f, when it is told in words, then it was %s',
    (board, lastWeek, lastFour, beside) => {
      expect(besideOf({ rows: 1, asked: 40, board, lastWeek, lastFour })).toBe(beside)
    },
  )

  it('[Q124] given a promise of 80 %, when fewer held than chance explains, then it was not kept, and when chance explains it, it was', () => {
    const share = { hits: 39, of: 48, expected: 40, low: 0.68, high: 0.9 }
    expect(verdictOf('inside', share)).toBe('asItShould')
    expect(verdictOf('inside', { ...share, high: 0.8 })).toBe('tooSure')
    expect(verdictOf('careful', { ...share, high: 0.8 })).toBe('tooLow')
    expect(verdictOf('inside', { ...share, low: 0.84, high: 0.95 })).toBe('tooUnsure')
    expect(verdictOf('plenty', { ...share, low: 0.84, high: 0.95 })).toBe('tooHigh')
    expect(verdictOf('likely', { ...share, hits: 0, of: 0, expected: 0, low: 0, high: 1 })).toBe('none')
  })
})
