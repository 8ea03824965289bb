import { describe, expect, it } from 'vitest'
import { dateAfter } from '../../../shared-core/day/label.ts'
import type { DayDemand, RestDemand } from '../../../shared-core/demand/demand.ts'
import { partBy } from '../../../shared-core/demand/exposure.ts'
import type { Morning } from '../../../shared-core/demand/mornings.ts'
import { Mornings } from '../../../shared-core/demand/mornings.ts'
import { negativeBinomial, quantile } from '../../../shared-core/demand/pieces.ts'
import { restOf } from '../../../shared-core/demand/rest.ts'
import type { ItemDay, SalesDay } from '../../../shared-core/demand/sales-day.ts'
import { must } from '../../../shared-core/support.ts'
import { drawer } from '../support/draw.ts'
import { arrivals, chances, dayOf, demandOf, HOURS, itemDay, morningOf } from './drawn-days.ts'

const HALF_PAST_EIGHT = 510
/** When 45 % of the opening hours are over: mornings are looked at then. */
const SECOND_LOOK = 576

function restAt(demand: DayDemand, day: ItemDay, nowMinute: number, morning: Morning): RestDemand {
  return must(restOf(new Map([['plain', demand]]), dayOf({ plain: day }), nowMinute, morning), 'plain')
}

function singles(pieces: number, minute = 400): ItemDay {
  return itemDay(Array.from({ length: pieces }, () => ({ minute, pieces: 1 })))
}

describe('what is left of a day', () => {
  it('[Q25] given mornings that tell all, when some was sold, then it is the gamma–Poisson posterior', () => {
    const rest = restAt(demandOf(60, 8), singles(45), HALF_PAST_EIGHT, morningOf(1))
    expect(rest.mean).toBeCloseTo((30 * (8 + 45)) / (8 + 30), 9)
    expect(rest.dispersion).toBeCloseTo(8 + 45, 9)
    expect([rest.soFar, rest.expected]).toEqual([45, 30])
  })

  it('[Q25] given mornings that tell nothing, when any was sold, then the rest is as it was expected', () => {
    const rest = restAt(demandOf(60, 8), singles(45), HALF_PAST_EIGHT, morningOf(0))
    expect(rest.mean).toBeCloseTo(30, 9)
    expect(rest.dispersion).toBeCloseTo(8, 9)
  })

  it('[Q25] given a day before opening, when asked, then the rest is the whole forecast', () => {
    for (const own of [0, 0.3, 1]) {
      const rest = restAt(demandOf(60, 8), itemDay([]), 300, morningOf(own, 0.5, 0.02, 3))
      expect(rest.mean).toBeCloseTo(60, 9)
      expect(rest.dispersion).toBeCloseTo(8, 9)
      expect(rest.profile).toEqual(HOURS)
    }
  })

  it('[Q25] given a profile, when asked in the middle, then what is left of it goes from 0 to 1', () => {
    const rest = restAt(demandOf(60, 8), singles(30), HALF_PAST_EIGHT, morningOf(0.4))
    expect(rest.profile[0]).toEqual([HALF_PAST_EIGHT, 0])
    expect(partBy(rest.profile, 600)).toBeCloseTo(0.5, 9)
    expect(rest.profile.at(-1)).toEqual([840, 1])
  })

  it('[Q25] given a typed guess or few days, when the morning sells twice as much, then more of it is believed', () => {
    const known = restAt(demandOf(60, 8), singles(60), HALF_PAST_EIGHT, morningOf(0.2))
    const guessed = restAt({ ...demandOf(60, 8), basis: 'guess' }, singles(60), HALF_PAST_EIGHT, morningOf(0.2))
    const few = restAt({ ...demandOf(60, 8), basis: 'few' }, singles(60), HALF_PAST_EIGHT, morningOf(0.2))
    expect(known.mean).toBeLessThan(40)
    expect(few.mean).toBeGreaterThan(known.mean)
    expect(guessed.mean).toBeGreaterThan(Math.max(45, few.mean))
  })
})

describe('what more sales do', () => {
  it('[Q26] given any day, when one more was sold so far, then no quantile of any item is lower, and the day no smaller', () => {
    const { upTo, oneOf } = drawer(26)
    for (let time = 0; time < 60; time += 1) {
      const morning = morningOf(upTo(10) / 10, upTo(10) / 10, upTo(8) / 100, 1 + upTo(30) / 10)
      const ahead = new Map(['a', 'b', 'c'].map((id) => [id, demandOf(0.2 + upTo(600) / 10, 0.3 + upTo(200) / 10)]))
      const sold = new Map([...ahead.keys()].map((id) => [id, singles(upTo(40))]))
      const now = 360 + upTo(480)
      const before = restOf(ahead, { ...dayOf({}), items: sold }, now, morning)
      const one = oneOf(['a', 'b', 'c'])
      const more = itemDay([...must(sold, one).sold, { minute: now, pieces: oneOf([1, 1, 6, 12]) }])
      const after = restOf(ahead, { ...dayOf({}), items: new Map(sold).set(one, more) }, now, morning)
      for (const id of ahead.keys()) expectNoLower(must(after, id), must(before, id))
    }
  })

  it('[Q27] given any day, when there was none for a while, then no quantile of any item is lower', () => {
    const { upTo } = drawer(27)
    for (let time = 0; time < 60; time += 1) {
      const morning = morningOf(upTo(10) / 10, upTo(10) / 10, upTo(8) / 100, 1 + upTo(20) / 10)
      const ahead = new Map(['a', 'b'].map((id) => [id, demandOf(1 + upTo(600) / 10, 0.5 + upTo(200) / 10)]))
      const now = 380 + upTo(450)
      const sold = singles(upTo(30)).sold
      const fromMinute = 360 + upTo(now - 365)
      const gone = [{ fromMinute, toMinute: fromMinute + 1 + upTo(840 - fromMinute - 1) }]
      const there = restOf(ahead, dayOf({ a: itemDay(sold), b: singles(9) }), now, morning)
      const without = restOf(ahead, dayOf({ a: itemDay(sold, { gone }), b: singles(9) }), now, morning)
      for (const id of ahead.keys()) expectNoLower(must(without, id), must(there, id))
    }
  })

  it('[Q28] given dozens, when as many pieces went to few customers, then they move the rest less than singles', () => {
    const demand = demandOf(60, 4)
    const dozens = itemDay(Array.from({ length: 4 }, () => ({ minute: 400, pieces: 12 })))
    const bySingles = restAt(demand, singles(48), HALF_PAST_EIGHT, morningOf(1, 0, 0, 1)).mean
    const byDozens = restAt(demand, dozens, HALF_PAST_EIGHT, morningOf(1, 0, 0, 9)).mean
    expect(byDozens).toBeGreaterThan(30)
    expect(byDozens - 30).toBeLessThan(0.6 * (bySingles - 30))
  })

  it('[Q28] given dozens, when little of the day is left, then the fewer purchases spread it further', () => {
    // Of 1/k = 0.25, (lump − 1) / mean = 0.05 is the purchases' sizes; of a quarter of the day that is four times as much.
    const rest = restAt(demandOf(60, 4), itemDay([]), 600, morningOf(0, 0, 0, 4))
    expect(rest.dispersion).toBeCloseTo(1 / (0.2 + 0.05 / 0.25), 9)
  })

  it('[Q28] given days with dozens, when learnt, then an item’s sales come by E[s²] / E[s] pieces', () => {
    const mornings = new Mornings()
    const ahead = new Map([['plain', demandOf(60, 4)]])
    const sold = [...singles(40).sold, ...Array.from({ length: 5 }, () => ({ minute: 700, pieces: 12 }))]
    expect(mornings.lumpOf('plain')).toBe(1)
    for (let place = 0; place < 60; place += 1)
      mornings.learn(dayOf({ plain: itemDay(sold) }, dateAfter('2026-03-02', place)), ahead)
    expect(mornings.lumpOf('plain')).toBeCloseTo((40 + 5 * 144) / (40 + 60), 0)
    expect(mornings.lumpOf('never seen')).toBe(mornings.shopLump)
  })
})

describe('how much a morning tells', () => {
  const ahead = new Map(Array.from({ length: 8 }, (_, place) => [`item ${place}`, demandOf(20 + 10 * place, 6)]))

  /** Sixty days, each half of each item by the rates that `rates` draws. */
  function learnt(rates: (id: string, day: number) => readonly [number, number], seed: number): Mornings {
    const chance = chances(seed)
    const mornings = new Mornings()
    for (let day = 0; day < 60; day += 1) {
      const items = Object.fromEntries(
        [...ahead].map(([id, { mean }]) => {
          const [early, late] = rates(id, day)
          const most = Math.max(early, late)
          const sold = arrivals(chance, mean * most).filter(
            ({ minute }) => chance.part() < (minute < SECOND_LOOK ? early : late) / most,
          )
          return [id, itemDay(sold)]
        }),
      )
      mornings.learn(dayOf(items, dateAfter('2026-03-02', day)), ahead)
    }
    return mornings
  }

  it('[Q29] given items whose good days are good all day, when learnt, then their mornings tell much', () => {
    const { rate } = chances(291)
    const mornings = learnt(() => {
      const all = rate(6)
      return [all, all]
    }, 1)
    expect(mornings.own(0.45)).toBeGreaterThan(0.6)
  })

  it('[Q29] given items whose mornings and afternoons have nothing in common, when learnt, then they tell little', () => {
    const { rate } = chances(292)
    const mornings = learnt(() => [rate(6), rate(6)], 2)
    expect(mornings.own(0.45)).toBeLessThan(0.15)
    expect(mornings.shop(0.45)).toBeLessThan(0.35)
  })

  it('[Q29] given days on which the whole shop is good or bad, when learnt, then one item’s rest follows the others', () => {
    const { rate } = chances(293)
    const days = Array.from({ length: 60 }, () => rate(12))
    const mornings = learnt((_, day) => [days[day] ?? 1, days[day] ?? 1], 3)
    expect(mornings.shop(0.45)).toBeGreaterThan(0.5)
    const busy: SalesDay = dayOf(
      Object.fromEntries([...ahead].map(([id, { mean }]) => [id, singles(id === 'item 0' ? 10 : mean)])),
    )
    const rest = must(restOf(ahead, busy, 510, mornings), 'item 0')
    expect(rest.mean).toBeGreaterThan(1.3 * 10)
  })

  it('[Q29] given days that sold out or were forecast from few days, when learnt, then they teach nothing of it', () => {
    const { rate } = chances(294)
    const mornings = new Mornings()
    const before = [mornings.own(0.45), mornings.shop(0.45), mornings.shopSpread]
    const few = new Map([...ahead].map(([id, demand]) => [id, { ...demand, basis: 'few' as const }]))
    for (let day = 0; day < 30; day += 1) {
      const sold = itemDay(arrivals(chances(day), 60 * rate(3)))
      const gone = itemDay(sold.sold, { gone: [{ fromMinute: 800, toMinute: 840 }] })
      mornings.learn(dayOf(Object.fromEntries([...ahead.keys()].map((id) => [id, gone]))), ahead)
      mornings.learn(dayOf(Object.fromEntries([...ahead.keys()].map((id) => [id, sold]))), few)
    }
    expect([mornings.own(0.45), mornings.shop(0.45)]).toEqual(before.slice(0, 2))
  })
})

function expectNoLower(after: RestDemand, before: RestDemand): void {
  expect(after.mean).toBeGreaterThanOrEqual(before.mean - 1e-9)
  if (before.mean < 0.01) return
  const [high, low] = [negativeBinomial(after.mean, after.dispersion), negativeBinomial(before.mean, before.dispersion)]
  for (const part of [0.1, 0.5, 0.8, 0.9, 0.99])
    expect(quantile(high, part)).toBeGreaterThanOrEqual(quantile(low, part))
}
