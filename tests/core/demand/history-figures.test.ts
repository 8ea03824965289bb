import { describe, expect, it } from 'vitest'
import type { WalkedDay } from '../../../shared-core/demand/backtest.ts'
import { walkForward } from '../../../shared-core/demand/backtest.ts'
import { historyDay, historyHours, historyOfDay, historyWeekdays } from '../../../shared-core/demand/history-figures.ts'
import { Learner } from '../../../shared-core/demand/learner.ts'
import { learntOf } from '../../../shared-core/demand/learnt.ts'
import type { ItemDay, SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { madeDays } from './made-days.ts'

const ALL = () => true
const ITEM: ItemDay = { sold: [], unseen: 0, gone: [], offered: true }

function day(
  date: string,
  items: Readonly<Record<string, Partial<ItemDay>>>,
  specials: readonly string[] = [],
): SalesDay {
  const made = Object.entries(items).map(([id, item]): [string, ItemDay] => [id, { ...ITEM, ...item }])
  return { date, openMinute: 360, closeMinute: 840, specials, items: new Map(made) }
}

const at = (minute: number, pieces: number) => ({ minute, pieces })

describe('history', () => {
  it('[Q126] given one variety gone at close and one back again, when the day is told, then its sum, what was lost, and one sold out', () => {
    const items = {
      sesame: { sold: [at(400, 6), at(500, 6)], gone: [{ fromMinute: 500, toMinute: 840 }] },
      poppy: { sold: [at(400, 3)], unseen: 2, gone: [{ fromMinute: 360, toMinute: 390 }] },
      rye: { offered: false },
    }
    const asked = new Map([
      ['sesame', 19.26],
      ['poppy', 5],
    ])
    const told = historyDay({ day: day('2026-01-05', items), asked }, ALL)
    expect(told).toEqual({ date: '2026-01-05', sold: 17, lost: 7.3, soldOut: 1, specials: [], said: null })
    expect(historyDay({ day: day('2026-01-05', items), asked }, (id) => id === 'rye')).toBeNull()
    expect(historyOfDay({ day: day('2026-01-05', items), asked }, []).items.map(({ varietyId }) => varietyId)).toEqual([
      'sesame',
      'poppy',
    ])
  })

  it('[Q127] given a street fair on one of two Mondays, when weekdays and hours are told, then it is left out of both', () => {
    const days = [
      day('2026-01-05', { sesame: { sold: [at(400, 10), at(430, 2)], unseen: 4 } }),
      day('2026-01-12', { sesame: { sold: [at(400, 90)] } }, ['fair']),
      day('2026-01-13', { sesame: { sold: [at(790, 8)] } }),
    ]
    const told = days.flatMap((one) => historyDay({ day: one, asked: new Map() }, ALL) ?? [])
    expect(historyWeekdays(told)).toEqual([
      { weekday: 1, days: 1, sold: 16, lost: 0 },
      { weekday: 2, days: 1, sold: 8, lost: 0 },
    ])
    const { fromHour, weekdays, untimed } = historyHours(days, ALL)
    expect(fromHour).toBe(6)
    expect(weekdays[0]).toEqual([10, 2, 0, 0, 0, 0, 0, 0])
    expect(weekdays[1]).toEqual([0, 0, 0, 0, 0, 0, 0, 8])
    expect(weekdays[2]).toBeNull()
    expect(untimed).toBeCloseTo(4 / 24, 9)
    expect(historyHours([], ALL)).toEqual({ fromHour: 0, weekdays: Array(7).fill(null), untimed: 0 })
  })

  it('[Q128] given a fair that doubled sales twice, when it is told what was learnt, then by how much and from how many days', () => {
    const fairs = ['2026-02-03', '2026-02-19']
    const days = madeDays({
      ...{ from: '2026-01-05', days: 56, customers: { sesame: 40, poppy: 12 } },
      specials: (date) => (fairs.includes(date) ? ['fair'] : []),
      factor: (date) => (fairs.includes(date) ? 2 : 1),
    })
    const learner = new Learner([])
    for (const one of days) learner.learn(one)
    const asked = { learner, days, has: ALL, hoursOn: openButSundays, specials: ['fair', 'snow'] }
    const learnt = learntOf(asked)
    const [fair, snow] = learnt?.specials ?? []
    expect(fair).toMatchObject({ id: 'fair', days: 2 })
    expect(fair?.factor).toBeGreaterThan(1.5)
    expect(fair?.factor).toBeLessThan(2.5)
    expect(snow).toEqual({ id: 'snow', factor: 1, days: 0 })
    expect(learnt?.weekdays[5]).toBeGreaterThan(1.2)
    expect(learnt?.weekdays[6]).toBeNull()
    expect(learntOf({ ...asked, days: [] })).toBeNull()
  })

  it('[Q126] given a day that sold out, when it is told by variety, then what was lost is what the walk estimated, and what had been forecast', () => {
    const days = madeDays({ from: '2026-01-05', days: 30, customers: { sesame: 30, poppy: 8 }, stock: 40 })
    const walk: WalkedDay[] = [
      ...walkForward(days, { guesses: [], judgedFrom: '', restMinutes: [], restFrom: '9999-12-31' }),
    ]
    const last = walk.at(-1)
    if (last === undefined) throw new Error('no days')
    const told = historyOfDay(last, last.judged).items.find(({ varietyId }) => varietyId === 'sesame')
    expect(told?.sold).toBe(40)
    expect(told?.lost).toBeCloseTo((last.asked.get('sesame') ?? 0) - 40, 0)
    expect(told?.said?.q50).toBe(last.judged.find(({ itemId }) => itemId === 'sesame')?.said.q50)
  })
})

function openButSundays(date: string) {
  return new Date(`${date}T12:00:00Z`).getUTCDay() === 0 ? null : { openMinute: 360, closeMinute: 840 }
}
