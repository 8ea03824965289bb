import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { holidayAfter, holidaysTaken, offersOf } from '../../client/desk/set-up/holidays.ts'
import { againNextYear, nextSpan, withSpans } from '../../client/desk/set-up/special-days.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { specialDayId } from '../../shared-core/ids.ts'
import type { Holiday } from '../../shared-core/live/holidays.ts'
import { specialDayMisfits } from '../../shared-core/shop/demand-rules.ts'
import { applySetUp } from '../../shared-core/shop/set-up-apply.ts'
import type { SpecialDay } from '../../shared-core/shop/shop.ts'
import { shopWith, table } from '../core/support/shop.ts'

const on = (date: string) => ({ from: date, to: date })
const special = (parts: Partial<SpecialDay> & { readonly id: SpecialDay['id'] }): SpecialDay => {
  return { name: 'Fair', order: 0, kind: 'event', spans: [], retired: false, ...parts }
}

describe('dates of a special day', () => {
  it('[Q83] given any spans put among others, then they are in order, no day twice, and no day is lost or new', () => {
    const span = fc
      .record({ start: fc.integer({ min: 0, max: 60 }), days: fc.integer({ min: 0, max: 9 }) })
      .map((one) => {
        const from = dateAfter('2026-01-01', one.start)
        return { from, to: dateAfter(from, one.days) }
      })
    const daysOf = (spans: SpecialDay['spans']) => {
      const days = new Set<string>()
      for (const { from, to } of spans) for (let date = from; date <= to; date = dateAfter(date, 1)) days.add(date)
      return [...days].sort()
    }
    fc.assert(
      fc.property(fc.array(span, { maxLength: 8 }), fc.array(span, { maxLength: 8 }), (some, more) => {
        const all = withSpans(withSpans([], some), more)
        expect(specialDayMisfits(special({ id: specialDayId('fair'), spans: all }))).toEqual([])
        expect(daysOf(all)).toEqual(daysOf([...some, ...more]))
      }),
    )
  })

  it('[Q83] given days long and short that touch or not, then only those of a common day become one', () => {
    expect(withSpans([on('2026-05-01')], [on('2026-05-02')])).toHaveLength(2)
    const long = { from: '2026-05-01', to: '2026-05-09' }
    expect(withSpans([long], [on('2026-05-03')])).toEqual([long])
  })

  it.each([
    // 29 August 2026 is a Saturday, and so is 28 August 2027.
    ['a Saturday, its weekday kept', on('2026-08-29'), true, on('2027-08-28')],
    ['a Saturday, its date kept', on('2026-08-29'), false, on('2027-08-29')],
    ['the second of its month', on('2026-09-12'), true, on('2027-09-11')],
    ['the last of its month, though it was the fourth', on('2027-08-28'), true, on('2028-08-26')],
    ['the fourth that is not the last', on('2026-08-22'), true, on('2027-08-28')],
    ['a break of two weeks', { from: '2026-12-21', to: '2027-01-03' }, false, { from: '2027-12-21', to: '2028-01-03' }],
    ['the day of a leap year', on('2028-02-29'), false, on('2029-02-28')],
  ])('[Q83] given %s, when it comes again next year, then it is a year on', (_what, span, keeps, next) => {
    expect(againNextYear([on('2020-01-01'), span], keeps)).toEqual(next)
  })

  it.each([
    ['the second Saturday', '2026-09-12', '09-08', '09-14'],
    ['the last Saturday', '2026-08-29', '08-25', '08-31'],
  ])('[Q83] given %s again for forty years, then it stays that', (_what, date, least, most) => {
    let spans: SpecialDay['spans'] = [on(date)]
    for (let year = 0; year < 40; year++) {
      const next = againNextYear(spans, true)
      spans = next === null ? [] : withSpans(spans, [next])
    }
    expect(spans).toHaveLength(41)
    for (const { from } of spans) {
      expect(new Date(`${from}T00:00:00Z`).getUTCDay()).toBe(6)
      expect([from.slice(5) >= least, from.slice(5) <= most]).toEqual([true, true])
    }
  })

  it('[Q83] given dates past and to come, then the next one is told, also while it lasts', () => {
    const spans = [on('2025-08-30'), { from: '2026-08-28', to: '2026-08-30' }]
    expect(nextSpan(spans, '2026-08-30')).toEqual(spans[1])
    expect(nextSpan(spans, '2026-08-31')).toBeNull()
  })
})

const feast: Holiday = {
  id: 'moving-feast',
  en: 'Moving Feast',
  es: 'Fiesta movible',
  isPublic: true,
  spans: ['2024-03-29', '2025-04-18', '2026-04-03', '2027-03-26', '2028-04-14'].map(on),
}
const TODAY = '2026-11-26'

describe('holidays of a region', () => {
  it('[Q91] given a holiday, then it is offered with its past dates and that of the coming twelve months', () => {
    const [offer] = offersOf([feast], shopWith(), TODAY)
    expect(offer).toMatchObject({ next: on('2027-03-26'), past: 3, isThere: false })
    expect(offer?.spans).toEqual(feast.spans.slice(0, 4))
    expect(offersOf([{ ...feast, spans: feast.spans.slice(0, 3) }], shopWith(), TODAY)).toEqual([])
  })

  it('[Q91] given it is taken, then it is a special day by the holiday’s name, and offered no more', () => {
    const shop = shopWith({ specialDays: table([special({ id: specialDayId('fair'), order: 4 })]) })
    const after = applySetUp(shop, holidaysTaken(shop, offersOf([feast], shop, TODAY), 'es'))
    expect(after.specialDays.get(specialDayId('moving-feast'))).toEqual({
      id: 'moving-feast',
      name: 'Fiesta movible',
      order: 5,
      kind: 'holiday',
      spans: feast.spans.slice(0, 4),
      retired: false,
    })
    expect(offersOf([feast], after, TODAY)[0]?.isThere).toBe(true)
  })

  it('[Q91] given one that somebody has renamed or retired, then it gets the dates that it lacks and keeps the rest', () => {
    const id = specialDayId('moving-feast')
    const own = special({ id, name: 'Feast', kind: 'closure', order: 2, spans: [on('2023-04-07')], retired: true })
    const shop = shopWith({ specialDays: table([own]) })
    const [change] = holidaysTaken(shop, offersOf([feast], shop, TODAY), 'en')
    expect(change?.value).toEqual({ ...own, spans: [on('2023-04-07'), ...feast.spans.slice(0, 4)], retired: false })
  })

  it('[Q91] given a holiday that moves, when it comes again, then the next date is the calendar’s', () => {
    const id = specialDayId('moving-feast')
    const known = special({ id, spans: feast.spans.slice(0, 4) })
    expect(holidayAfter(known, [feast], TODAY)).toEqual(on('2028-04-14'))
    expect(holidayAfter(special({ id, spans: [on('2025-04-18')] }), [feast], TODAY)).toEqual(on('2027-03-26'))
    expect(holidayAfter(special({ id: specialDayId('fair') }), [feast], TODAY)).toBeNull()
  })
})
