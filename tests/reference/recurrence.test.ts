import fc from 'fast-check'
import ICAL from 'ical.js'
import { describe, expect, it } from 'vitest'
import { dateAfter } from '../../shared-core/day/label.ts'
import type { Recurrence } from '../../shared-core/orders/recurrence.ts'
import { datesOf } from '../../shared-core/orders/recurrence.ts'
import { ruleText } from '../../shared-core/orders/rule-text.ts'

/**
 * The examples of RFC 5545, 3.8.5.3, that a standing order can be: those by day, week and month without a set position. Where
 * the example counts occurrences, `to` is the last one's date; its rules of several parts are several rules here.
 */

function rule(parts: Partial<Recurrence>): Recurrence {
  const plain = { interval: 1, from: '1997-09-02', until: null, weekdays: [], nth: null, except: [], also: [] }
  return { freq: 'daily', ...plain, ...parts }
}

/** @example days('1997-09', 2, 9) // ['1997-09-02', '1997-09-09'] */
function days(month: string, ...some: readonly number[]): string[] {
  return some.map((day) => `${month}-${String(day).padStart(2, '0')}`)
}

function span(month: string, from: number, to: number, step = 1): string[] {
  const some: number[] = []
  for (let day = from; day <= to; day += step) some.push(day)
  return days(month, ...some)
}

const [MO, TU, WE, TH, FR, SU] = [1, 2, 3, 4, 5, 7]
const weekly = (parts: Partial<Recurrence>) => rule({ freq: 'weekly', ...parts })
const monthly = (parts: Partial<Recurrence>) => rule({ freq: 'monthly', ...parts })

const EXAMPLES: readonly (readonly [
  name: string,
  rules: readonly Recurrence[],
  to: string,
  dates: readonly string[],
])[] = [
  ['daily for 10 occurrences', [rule({ until: '1997-09-11' })], '1998-12-31', span('1997-09', 2, 11)],
  [
    'daily until December 24, 1997 at midnight',
    [rule({ until: '1997-12-23' })],
    '1998-12-31',
    [...span('1997-09', 2, 30), ...span('1997-10', 1, 31), ...span('1997-11', 1, 30), ...span('1997-12', 1, 23)],
  ],
  [
    'every other day',
    [rule({ interval: 2 })],
    '1997-12-03',
    [
      ...span('1997-09', 2, 30, 2),
      ...span('1997-10', 2, 30, 2),
      ...span('1997-11', 1, 29, 2),
      ...days('1997-12', 1, 3),
    ],
  ],
  ['every 10 days', [rule({ interval: 10 })], '1997-10-12', [...days('1997-09', 2, 12, 22), ...days('1997-10', 2, 12)]],
  [
    'weekly for 10 occurrences',
    [weekly({})],
    '1997-11-04',
    [...days('1997-09', 2, 9, 16, 23, 30), ...days('1997-10', 7, 14, 21, 28), '1997-11-04'],
  ],
  [
    'weekly until December 24, 1997',
    [weekly({ until: '1997-12-24' })],
    '1998-12-31',
    [
      ...days('1997-09', 2, 9, 16, 23, 30),
      ...days('1997-10', 7, 14, 21, 28),
      ...days('1997-11', 4, 11, 18, 25),
      ...days('1997-12', 2, 9, 16, 23),
    ],
  ],
  [
    'every other week',
    [weekly({ interval: 2 })],
    '1998-02-17',
    [
      ...[...days('1997-09', 2, 16, 30), ...days('1997-10', 14, 28), ...days('1997-11', 11, 25)],
      ...[...days('1997-12', 9, 23), ...days('1998-01', 6, 20), ...days('1998-02', 3, 17)],
    ],
  ],
  [
    'weekly on Tuesday and Thursday for five weeks',
    [weekly({ weekdays: [TU, TH], until: '1997-10-06' })],
    '1998-12-31',
    [...days('1997-09', 2, 4, 9, 11, 16, 18, 23, 25, 30), '1997-10-02'],
  ],
  [
    'every other week on Monday, Wednesday and Friday until December 24, 1997',
    [weekly({ from: '1997-09-01', interval: 2, weekdays: [MO, WE, FR], until: '1997-12-23' })],
    '1998-12-31',
    [
      ...[...days('1997-09', 1, 3, 5, 15, 17, 19, 29), ...days('1997-10', 1, 3, 13, 15, 17, 27, 29, 31)],
      ...[...days('1997-11', 10, 12, 14, 24, 26, 28), ...days('1997-12', 8, 10, 12, 22)],
    ],
  ],
  [
    'every other week on Tuesday and Thursday, for 8 occurrences',
    [weekly({ interval: 2, weekdays: [TU, TH] })],
    '1997-10-16',
    [...days('1997-09', 2, 4, 16, 18, 30), ...days('1997-10', 2, 14, 16)],
  ],
  [
    'monthly on the first Friday for 10 occurrences',
    [monthly({ from: '1997-09-05', weekdays: [FR], nth: 1 })],
    '1998-06-05',
    [
      ...['1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05', '1998-01-02'],
      ...['1998-02-06', '1998-03-06', '1998-04-03', '1998-05-01', '1998-06-05'],
    ],
  ],
  [
    'monthly on the first Friday until December 24, 1997',
    [monthly({ from: '1997-09-05', weekdays: [], nth: 1, until: '1997-12-24' })],
    '1998-12-31',
    ['1997-09-05', '1997-10-03', '1997-11-07', '1997-12-05'],
  ],
  [
    'every other month on the first and last Sunday for 10 occurrences',
    [1, -1].map((nth) => monthly({ from: '1997-09-07', interval: 2, weekdays: [SU], nth })),
    '1998-05-31',
    [
      ...[...days('1997-09', 7, 28), ...days('1997-11', 2, 30), ...days('1998-01', 4, 25)],
      ...[...days('1998-03', 1, 29), ...days('1998-05', 3, 31)],
    ],
  ],
  [
    'monthly on the second-to-last Monday for 6 months',
    [monthly({ from: '1997-09-22', weekdays: [MO], nth: -2 })],
    '1998-02-16',
    ['1997-09-22', '1997-10-20', '1997-11-17', '1997-12-22', '1998-01-19', '1998-02-16'],
  ],
  [
    'monthly on the 2nd and 15th for 10 occurrences',
    [monthly({ from: '1997-09-02' }), monthly({ from: '1997-09-15' })],
    '1998-01-15',
    ['1997-09', '1997-10', '1997-11', '1997-12', '1998-01'].flatMap((month) => days(month, 2, 15)),
  ],
  [
    'every 18 months on the 10th to the 15th for 10 occurrences',
    [10, 11, 12, 13, 14, 15].map((day) => monthly({ from: `1997-09-${day}`, interval: 18 })),
    '1999-03-13',
    [...span('1997-09', 10, 15), ...span('1999-03', 10, 13)],
  ],
  [
    'every Tuesday, every other month',
    [monthly({ interval: 2, weekdays: [TU] })],
    '1998-03-31',
    [
      ...[...days('1997-09', 2, 9, 16, 23, 30), ...days('1997-11', 4, 11, 18, 25)],
      ...[...days('1998-01', 6, 13, 20, 27), ...days('1998-03', 3, 10, 17, 24, 31)],
    ],
  ],
  [
    'every other week on Tuesday and Sunday, where weeks begin on Monday',
    [weekly({ from: '1997-08-05', interval: 2, weekdays: [TU, SU] })],
    '1997-08-24',
    days('1997-08', 5, 10, 19, 24),
  ],
  [
    'on the 15th and 30th, where a February has none',
    [monthly({ from: '2007-01-15' }), monthly({ from: '2007-01-30' })],
    '2007-03-30',
    ['2007-01-15', '2007-01-30', '2007-02-15', '2007-03-15', '2007-03-30'],
  ],
]

describe('the examples of RFC 5545, 3.8.5.3', () => {
  it.each(EXAMPLES)(
    '[M40] given "%s", when its dates are asked for, then they are the ones of the RFC',
    (_name, rules, to, dates) => {
      const all = rules.flatMap((one) => datesOf(one, '1997-01-01', to))
      expect(all.sort()).toEqual(dates)
    },
  )
})

const weekdaysDrawn = fc.subarray([1, 2, 3, 4, 5, 6, 7])
const fromDrawn = fc.integer({ min: 0, max: 3_000 }).map((n) => dateAfter('2024-01-01', n))
const drawn: fc.Arbitrary<Recurrence> = fc
  .record({
    freq: fc.constantFrom('daily' as const, 'weekly' as const, 'monthly' as const),
    interval: fc.integer({ min: 1, max: 6 }),
    from: fromDrawn,
    lasts: fc.option(fc.integer({ min: 0, max: 700 })),
    weekdays: weekdaysDrawn,
    nth: fc.option(fc.constantFrom(1, 2, 3, 4, 5, -1, -2, -5)),
  })
  .map(({ lasts, freq, nth, ...parts }) => ({
    ...rule({ ...parts, freq }),
    until: lasts === null ? null : dateAfter(parts.from, lasts),
    nth: freq === 'monthly' ? nth : null,
  }))

/** Dates after DTSTART by ical.js 2.2.1; DTSTART itself it gives now and then whether or not it follows the rule. */
function icalDates(recurrence: Recurrence, to: string): string[] {
  const iterator = ICAL.Recur.fromString(ruleText(recurrence)).iterator(ICAL.Time.fromDateString(recurrence.from))
  const dates: string[] = []
  for (let next = iterator.next(); next !== null && next !== undefined; next = iterator.next()) {
    const date = next.toString().slice(0, 10)
    if (date > to) break
    if (date > recurrence.from) dates.push(date)
  }
  return dates
}

describe('beside a library', () => {
  it('[M40] given rules of all kinds, when their texts are read by ical.js, then the dates are the same', () => {
    let some = 0
    fc.assert(
      fc.property(drawn, (recurrence) => {
        const to = dateAfter(recurrence.from, 500)
        const dates = datesOf(recurrence, dateAfter(recurrence.from, 1), to)
        some += dates.length
        expect(dates).toEqual(icalDates(recurrence, to))
      }),
      { numRuns: 60, examples: [[weekly({ from: '2026-11-29', interval: 2, weekdays: [SU, MO] })]] },
    )
    expect(some).toBeGreaterThan(1_000)
  })

  it('[M41] given dates left out and dates besides, when its dates are asked for, then those that are left out win', () => {
    const recurrence = weekly({
      from: '2026-12-01',
      until: '2026-12-31',
      except: ['2026-12-24', '2026-12-08'],
      also: ['2026-12-24', '2026-11-26', '2027-01-02'],
    })
    expect(datesOf(recurrence, '2026-11-01', '2027-02-01')).toEqual([
      ...['2026-11-26', '2026-12-01', '2026-12-15', '2026-12-22', '2026-12-29', '2027-01-02'],
    ])
    expect(datesOf(recurrence, '2026-12-20', '2026-12-25')).toEqual(['2026-12-22'])
  })
})
