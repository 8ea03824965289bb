import { beforeAll, describe, expect, it } from 'vitest'
import type { Crowd } from '../../server/demo/crowd.ts'
import { basketOf, crowdOn, customersIn } from '../../server/demo/crowd.ts'
import { demoShop } from '../../server/demo/demo-shop.ts'
import { drawFor } from '../../server/demo/draw.ts'
import { takeHistory } from '../../server/demo/take-history.ts'
import { tillHistory } from '../../server/demo/till-history.ts'
import type { WorkDesk } from '../../server/work/work-desk.ts'
import { workHere } from '../../server/work/work-desk.ts'
import { dateAfter } from '../../shared-core/day/label.ts'
import { piecesOf } from '../../shared-core/line/lines.ts'
import { epochMs } from '../../shared-core/units.ts'

const NOON = epochMs(Date.parse('2026-11-24T12:15:00Z'))
const shop = demoShop(NOON)
const DAYS = 14

const cameOn = (crowd: Crowd) =>
  Array.from({ length: 9 * 60 }, (_, n) => customersIn(crowd, shop.hours.openMinute + n).length).reduce((a, b) => a + b)
/** Customers on a weekday, the mean of ten weeks. */
const cameOnWeekday = (first: string) => {
  const dates = Array.from({ length: 10 }, (_, week) => dateAfter(first, week * 7))
  return dates.reduce((sum, date) => sum + cameOn(crowdOn({ ...shop, specialDays: new Map() }, 1, date)), 0) / 10
}

describe('the demo’s crowd', () => {
  it('[Q145] given the weekdays, then Saturdays are busiest and Mondays quietest, and the same date is the same crowd', () => {
    // 2026-01-05 is a Monday. 468 customers a usual day, ten of them: a standard deviation of 14 with the chance of days.
    const [monday, saturday] = [cameOnWeekday('2026-01-05'), cameOnWeekday('2026-01-10')]
    expect(saturday / monday).toBeGreaterThan(1.08)
    expect(saturday / monday).toBeLessThan(1.33)
    expect(cameOn(crowdOn(shop, 1, '2026-01-05'))).toBe(cameOn(crowdOn(shop, 1, '2026-01-05')))
    expect(cameOn(crowdOn(shop, 2, '2026-01-05'))).not.toBe(cameOn(crowdOn(shop, 1, '2026-01-05')))
  })

  it('[Q145] given what the set-up calls special, then it moves the crowd of that date, one to come among them', () => {
    const coming = [...shop.specialDays.values()].flatMap(({ id, spans }) =>
      spans.filter(({ from }) => from > '2026-11-24').map(({ from }) => ({ id, from })),
    )
    expect(coming).toEqual([{ id: 'street-fair', from: '2026-11-28' }])
    const plain = { ...shop, specialDays: new Map() }
    const factor = (date: string) => crowdOn(shop, 1, date).busy / crowdOn(plain, 1, date).busy
    expect(factor('2026-11-28')).toBeCloseTo(1.3, 10)
    expect(factor('2026-11-27')).toBe(1)
  })

  it('[Q145] given a kind that is gone, then some take another and some go without; nobody gets what is not there', () => {
    const crowd = crowdOn(shop, 1, '2026-11-24')
    const ids = [...crowd.liked.keys()]
    const there = new Map(ids.map((id, n) => [id, n % 2 === 0 ? 1 : 0]))
    const baskets = Array.from({ length: 400 }, (_, n) => basketOf(crowd, drawFor(1, `one:${n}`), there))
    const without = baskets.filter((lines) => lines.length === 0).length
    expect(without).toBeGreaterThan(20)
    expect(without).toBeLessThan(200)
    for (const lines of baskets) {
      for (const { varietyId, pieces } of lines) expect(pieces).toBeLessThanOrEqual(there.get(varietyId) ?? 0)
      expect(piecesOf(lines)).toBeLessThanOrEqual(13)
    }
  })
})

describe('what the demo’s till kept', () => {
  let work: WorkDesk
  beforeAll(async () => {
    work = workHere({ salesFile: ':memory:' })
    await work.ask('shop', shop)
    await takeHistory({ work, imports: { goOn: () => undefined }, nowMs: NOON, seed: 1, days: DAYS })
    while ((await work.ask('salesStep', null)) !== null);
  })

  it('[Q146] given the import, then all of it is taken but two rows that nobody can read, and each name means something', async () => {
    const [file] = await work.ask('salesFiles', null)
    expect(file).toMatchObject({ state: 'taken', bad: 2, doubled: 0, from: '2026-11-02', to: '2026-11-15' })
    expect(file?.taken).toBeGreaterThan(DAYS * 500)
    const names = await work.ask('salesNames', null)
    expect(names.filter(({ meaning }) => meaning === null)).toEqual([])
    expect(names.length).toBe(shop.varieties.size + 6)
    await work.close()
  })

  it('[Q146] given the same days and seed, then the file is the same, and ends as it began whatever the chunks', () => {
    const textOf = (seed: number) => [...tillHistory(shop, { seed, dates: ['2026-11-23', '2026-11-24'] }).text].join('')
    expect(textOf(1)).toBe(textOf(1))
    expect(textOf(2)).not.toBe(textOf(1))
    expect(textOf(1).split('\n').slice(0, 2).join()).toMatch(
      /^Date,Time,Receipt,Item,Qty,Amount,Status,11\/23\/2026,6:/,
    )
  })
})
