import { describe, expect, it } from 'vitest'
import type { WalkedDay } from '../../../shared-core/demand/backtest.ts'
import { walkForward } from '../../../shared-core/demand/backtest.ts'
import type { SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { SameWeekdays } from '../../../shared-core/demand/same-weekdays.ts'
import { madeDays } from './made-days.ts'

const GUESSES = [
  { id: 'sesame', group: 'plain', usual: null },
  { id: 'poppy', group: 'plain', usual: null },
]
const MADE = { from: '2026-01-05', days: 42, customers: { sesame: 30, poppy: 8 } }

function walked(days: readonly SalesDay[], judgedFrom = '', restMinutes: readonly number[] = []): WalkedDay[] {
  return [...walkForward(days, { guesses: GUESSES, judgedFrom, restMinutes, restFrom: judgedFrom })]
}

describe('walking forward', () => {
  it('[Q120] given six weeks, when the last day sells ten times as much after ten, then nothing said of any day before it or of it changes', () => {
    const days = madeDays(MADE)
    const last = days.at(-1)
    if (last === undefined) throw new Error('no days')
    const items = [...last.items].map(([id, item]) => {
      return [
        id,
        {
          ...item,
          sold: item.sold.map(({ minute, pieces }) => ({ minute, pieces: minute < 600 ? pieces : pieces * 10 })),
        },
      ] as const
    })
    const other = walked([...days.slice(0, -1), { ...last, items: new Map(items) }], '', [600])
    const once = walked(days, '', [600])
    expect(other.slice(0, -1)).toEqual(once.slice(0, -1))
    const said = (walk: WalkedDay[]) => {
      const { judged = [], rests = [] } = walk.at(-1) ?? {}
      return [...judged, ...rests].map((one) => [one.itemId, one.said, one.simple])
    }
    expect(said(other)).toEqual(said(once))
    expect(said(once)).toHaveLength(4)
  })

  it('[Q120] given days out of order, when they are walked, then it throws', () => {
    const [one, two] = madeDays({ ...MADE, days: 2 })
    expect(() => walked([two, one].filter((day) => day !== undefined))).toThrow('in order')
  })

  it('[Q121] given a day that sold out at noon, when it is judged, then it asked for more than it sold, and is told to be an estimate', () => {
    const days = madeDays({ ...MADE, stock: 40 })
    const rows = walked(days, '2026-02-01').flatMap(({ day, judged }) => judged.map((one) => ({ day, one })))
    const soldOut = rows.filter(({ one }) => one.itemId === 'sesame' && one.isEstimated)
    expect(soldOut.length).toBeGreaterThan(5)
    for (const { one } of soldOut) expect(one.asked).toBeGreaterThanOrEqual(40)
    expect(soldOut.some(({ one }) => one.asked > 44)).toBe(true)
    for (const { day, one } of rows) if (!one.isEstimated) expect(one.asked).toBe(piecesSold(day, one.itemId))
  })

  it('[Q122] given four weeks and a closed Wednesday, when the next Wednesday is judged, then the simple ways go by the ones that were open', () => {
    const days = madeDays({ ...MADE, days: 38 }).filter(({ date }) => date !== '2026-02-04')
    const wednesday = walked(days).at(-1)
    expect(wednesday?.day.date).toBe('2026-02-11')
    const open = ['2026-01-07', '2026-01-14', '2026-01-21', '2026-01-28']
    const sold = open.map((open) => days.find(({ date }) => date === open)).map((day) => piecesSold(day, 'poppy'))
    expect(wednesday?.judged.find(({ itemId }) => itemId === 'poppy')?.simple).toEqual({
      lastWeek: sold[3],
      lastFour: sold.reduce((sum, one) => sum + one, 0) / 4,
    })
    expect(walked(days)[0]?.judged.map(({ simple }) => simple)).toEqual([null, null])
  })

  it('[Q122] given a variety that was last sold nine weeks ago, when judged, then no simple way is made of that', () => {
    const weekdays = new SameWeekdays()
    weekdays.note('poppy', '2026-01-07', { sold: 30, soldAfter: [] })
    expect(weekdays.simple('poppy', '2026-03-04')).toEqual({ lastWeek: 30, lastFour: 30 })
    expect(weekdays.simple('poppy', '2026-03-11')).toBeNull()
  })

  it('[Q123] given a forecast at ten, when the rest is judged, then what came before ten counts for nothing and what was gone by ten is left out', () => {
    const days = madeDays({ ...MADE, stock: 60 })
    const rests = walked(days, '', [600]).flatMap(({ day, rests }) => rests.map((one) => ({ day, one })))
    for (const { day, one } of rests) {
      const item = day.items.get(one.itemId)
      expect(item?.gone.some(({ fromMinute }) => fromMinute <= 600)).toBe(false)
      const after = item?.sold.reduce((sum, { minute, pieces }) => sum + (minute >= 600 ? pieces : 0), 0) ?? 0
      if (one.isEstimated) expect(one.asked).toBeGreaterThanOrEqual(after)
      else expect(one.asked).toBe(after)
    }
    const gone = days.filter(({ items }) => items.get('sesame')?.gone.some(({ fromMinute }) => fromMinute <= 600))
    expect(gone.length).toBeGreaterThan(0)
    expect(rests.some(({ one }) => one.isEstimated)).toBe(true)
  })
})

function piecesSold(day: SalesDay | undefined, itemId: string): number {
  return day?.items.get(itemId)?.sold.reduce((sum, { pieces }) => sum + pieces, 0) ?? 0
}
