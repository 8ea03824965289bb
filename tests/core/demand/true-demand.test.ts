import { describe, expect, it } from 'vitest'
import { trueDemandOf } from '../../../shared-core/demand/true-demand.ts'
import { must } from '../../../shared-core/support.ts'
import { drawer } from '../support/draw.ts'
import { arrivals, chances, dayOf, demandOf, itemDay, morningOf } from './drawn-days.ts'

describe('what a day would have asked for', () => {
  it('[Q33] given an item that was there all day, when estimated, then it is what went, seen or unseen', () => {
    const day = dayOf({ plain: itemDay([{ minute: 400, pieces: 7 }], { unseen: 4 }), rye: itemDay([], { unseen: -3 }) })
    const ahead = new Map([['plain', demandOf(60, 8)]])
    expect([...trueDemandOf(ahead, day, morningOf(0.5))]).toEqual([
      ['plain', 11],
      ['rye', 0],
    ])
  })

  it('[Q33] given any day, when there was none for a while, then it is no less than what went, nor less for longer', () => {
    const { upTo } = drawer(33)
    for (let time = 0; time < 50; time += 1) {
      const sold = Array.from({ length: upTo(30) }, () => ({ minute: 370, pieces: 1 }))
      const fromMinute = 371 + upTo(300)
      const demand = new Map([['plain', demandOf(1 + upTo(80), 0.5 + upTo(20))]])
      const until = (toMinute: number) => {
        const day = dayOf({ plain: itemDay(sold, { gone: [{ fromMinute, toMinute }] }) })
        return must(trueDemandOf(demand, day, morningOf(upTo(10) / 10, 0, 0)), 'plain')
      }
      const toMinute = fromMinute + upTo(840 - fromMinute)
      expect(until(toMinute)).toBeGreaterThanOrEqual(sold.length)
    }
  })

  it('[Q33] given the same sales, when it was gone for longer, then more was missed', () => {
    const estimate = (toMinute: number) => {
      const day = dayOf({ plain: itemDay([{ minute: 400, pieces: 20 }], { gone: [{ fromMinute: 480, toMinute }] }) })
      return must(trueDemandOf(new Map([['plain', demandOf(60, 8)]]), day, morningOf(0.4)), 'plain')
    }
    expect(estimate(510)).toBeGreaterThan(estimate(500))
    expect(estimate(840)).toBeGreaterThan(estimate(510))
  })

  it('[Q34] given days that sell out because they are good, when estimated, then they are not overestimated', () => {
    const chance = chances(34)
    const stock = 36
    const sums = { asked: 0, estimated: 0, divided: 0, uncut: 0, uncutDays: 0, cutDays: 0 }
    const ahead = new Map([['plain', demandOf(40, 5)]])
    for (let time = 0; time < 2_000; time += 1) {
      const asked = arrivals(chance, 40 * chance.rate(5))
      const last = asked[stock - 1]
      if (last === undefined) {
        sums.uncut += asked.length
        sums.uncutDays += 1
        continue
      }
      const day = dayOf({
        plain: itemDay(asked.slice(0, stock), { gone: [{ fromMinute: last.minute, toMinute: 840 }] }),
      })
      sums.cutDays += 1
      sums.asked += asked.length
      sums.estimated += must(trueDemandOf(ahead, day, morningOf(1)), 'plain')
      sums.divided += stock
    }
    expect(sums.cutDays).toBeGreaterThan(600)
    expect(sums.estimated / sums.asked).toBeGreaterThan(0.97)
    expect(sums.estimated / sums.asked).toBeLessThan(1.03)
    // What would be said without: what was sold, or the mean of days that did not sell out.
    expect(sums.divided / sums.asked).toBeLessThan(0.8)
    expect(sums.uncut / sums.uncutDays).toBeLessThan(0.7 * (sums.asked / sums.cutDays))
  })

  it('[Q34] given a busy day in the whole shop, when one item sold out early, then it missed more than on a slow one', () => {
    const ahead = new Map(['plain', 'rye', 'sesame'].map((id) => [id, demandOf(50, 8)]))
    const missed = (others: number) => {
      const sold = Array.from({ length: others }, () => ({ minute: 600, pieces: 1 }))
      const gone = [{ fromMinute: 400, toMinute: 840 }]
      const day = dayOf({
        plain: itemDay([{ minute: 380, pieces: 6 }], { gone }),
        rye: itemDay(sold),
        sesame: itemDay(sold),
      })
      return must(trueDemandOf(ahead, day, morningOf(0.3, 0.6, 0.05)), 'plain') - 6
    }
    expect(missed(80)).toBeGreaterThan(1.2 * missed(30))
  })
})
