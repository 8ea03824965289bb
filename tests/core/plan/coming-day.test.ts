import { describe, expect, it } from 'vitest'
import type { DayDemand } from '../../../shared-core/demand/demand.ts'
import { negativeBinomial, quantile } from '../../../shared-core/demand/pieces.ts'
import { togetherOf } from '../../../shared-core/demand/together.ts'
import { doughId, formulaId, specialDayId, varietyId, weekdayId } from '../../../shared-core/ids.ts'
import type { ComingDough, ComingGiven } from '../../../shared-core/plan/coming-day.ts'
import { comingDay } from '../../../shared-core/plan/coming-day.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { doughShop, noonOf, shapedDough, TODAY, TOMORROW } from '../dough/plan-make.ts'
import { at } from '../support/make.ts'
import { table, variety } from '../support/shop.ts'

const PLAIN = doughId('plain')
const SESAME = varietyId('sesame')

/** Plain dough becomes sesame and poppy, rye is mixed as rye; nobody asks for mini. */
function shop(parts: Partial<Shop> = {}): Shop {
  return doughShop({
    varieties: table([
      variety({ id: 'sesame', order: 1 }),
      variety({ id: 'poppy', order: 2 }),
      variety({ id: 'rye', order: 3, doughId: doughId('rye'), decidedAt: 'mixer', bakedOn: 'pan' }),
    ]),
    ...parts,
  })
}

function demand(mean: number, parts: Partial<DayDemand> = {}): DayDemand {
  const level = mean / 1.3
  return {
    mean,
    dispersion: 10,
    profile: [
      [360, 0],
      [900, 1],
    ],
    basis: 'many',
    parts: { level, weekday: 1.3, special: 1 },
    ...parts,
  }
}

const DEMANDS = new Map([
  ['sesame', demand(80)],
  ['poppy', demand(50)],
  ['rye', demand(12)],
])

function given(parts: Partial<ComingGiven> = {}): ComingGiven {
  return {
    date: TOMORROW,
    noonOf,
    carried: new Map(),
    orders: [],
    kitchen: new Map(),
    shared: 0.03,
    sizes: new Map(),
    next: null,
    ...parts,
  }
}

function doughOf(id: string, parts: Partial<ComingGiven> = {}, demands = DEMANDS, of = shop()): ComingDough {
  const found = comingDay(of, demands, given(parts)).doughs.find((one) => one.doughId === id)
  if (found === undefined) throw new Error(`no ${id}`)
  return found
}

const sum = (why: ComingDough['why']) => why.reduce((all, { pieces }) => all + pieces, 0)

describe('a day to come', () => {
  it('[Q52] given demands, when a day is asked, then likely, careful and plenty are enough on 5, 8 and 9 of 10 days', () => {
    const both = togetherOf([demand(80), demand(50)], 0.03)
    const { likely, careful, plenty, varieties } = doughOf('plain')
    expect([likely, careful, plenty]).toEqual([0.5, 0.8, 0.9].map((part) => quantile(both, part)))
    expect(varieties[0]).toMatchObject({ varietyId: 'sesame', plenty: quantile(negativeBinomial(80, 10), 0.9) })
    // Together they vary less than each by itself.
    expect(plenty).toBeLessThan(varieties.reduce((all, one) => all + one.plenty, 0))
  })

  it('[Q52] given a new variety beside known ones, when it is asked how sure, then by what most of it rests on', () => {
    const few = new Map([...DEMANDS, ['poppy', demand(10, { basis: 'guess' as const })]])
    expect(doughOf('plain', {}, few).basis).toBe('many')
    expect(doughOf('plain', {}, few).varieties.map(({ basis }) => basis)).toEqual(['many', 'guess'])
    expect(doughOf('plain', {}, new Map([...DEMANDS, ['poppy', demand(50, { basis: 'few' })]])).basis).toBe('few')
    expect(doughOf('plain', {}, new Map([['poppy', demand(5, { basis: 'guess' })]])).basis).toBe('guess')
  })

  it('[Q51] given a Saturday, orders and trays, when it is asked why, then the reasons sum up to the number', () => {
    const orders = [
      { doughId: PLAIN, varietyId: SESAME, pieces: 24 },
      { doughId: PLAIN, varietyId: null, pieces: 5 },
    ]
    const special = new Map([...DEMANDS, ['sesame', demand(80, { parts: { level: 50, weekday: 1.3, special: 1.25 } })]])
    const found = doughOf('plain', { orders, carried: new Map([[PLAIN, 31]]) }, special)
    expect(found).toMatchObject({ ordered: 29, carried: 31 })
    expect(sum(found.why)).toBe(found.toMake)
    expect(found.why.find(({ code }) => code === 'weekday')).toMatchObject({ factor: expect.closeTo(1.3, 9) })
    expect(found.why.find(({ code }) => code === 'orders')?.pieces).toBe(29)
    expect(found.why.find(({ code }) => code === 'carried')?.pieces).toBe(-31)
    const [sesame] = found.varieties
    expect(sesame).toMatchObject({ ordered: 24, bake: (sesame?.counter ?? 0) + 24 })
    expect(sum(sesame?.why ?? [])).toBe(sesame?.bake)
    const sure = sesame?.why.find(({ code }) => code === 'sure')
    // The set-up's prices: 1.60, cost 0.45, disappointing 0.50, half take another one: (1.15 + 0.50) / 2.
    expect(sure).toMatchObject({ underCents: 83, isAssumed: false })
  })

  it('[Q50] given what is chilled, when it is taken off, then trays are still whole; more than is needed takes no dough away', () => {
    const free = doughOf('plain')
    expect(free.toMake % 15).toBe(0)
    const some = doughOf('plain', { carried: new Map([[PLAIN, 37]]) })
    expect(some.toMake % 15).toBe(0)
    expect(Math.abs(some.toMake + 37 - free.toMake)).toBeLessThan(30)
    const enough = doughOf('plain', { carried: new Map([[PLAIN, 900]]) })
    expect(enough.toMake).toBe(0)
    expect(sum(enough.why)).toBe(0)
    expect(enough.counter).toBeGreaterThan(130)
  })

  it('[Q48] given a dough that keeps for the next day, when it is decided, then more than where it is past its window', () => {
    const next = { date: '2026-11-26', demands: DEMANDS }
    const keeps = doughOf('plain', { next })
    expect(keeps.counter).toBeGreaterThan(doughOf('plain').counter)
    // Mixed on the day before by 18:00 and chilled 30 h at most: over at midnight, before the next day's first load.
    const chill = {
      earliestMs: spanMs(8, 'h'),
      targetMs: spanMs(14, 'h'),
      latestMs: spanMs(30, 'h'),
      unit: 'h' as const,
    }
    const short = shop({ doughs: table([shapedDough({ id: 'plain', order: 1, windows: { chill } })]) })
    expect(doughOf('plain', { next }, DEMANDS, short).counter).toBe(doughOf('plain', {}, DEMANDS, short).counter)
  })

  it('[Q50] given a formula decided by 10:00, when its dough is told, then by when; without a formula never', () => {
    expect(doughOf('plain').decideAtMs).toBe(at('10:00'))
    const none = shop({ doughs: table([shapedDough({ id: 'plain', order: 1, formulaId: formulaId('gone') })]) })
    expect(doughOf('plain', {}, DEMANDS, none).decideAtMs).toBeNull()
  })

  it('[Q53] given a closed weekday or a closure, when it is asked, then nothing is advised', () => {
    const closed = shop({ weekdays: table([{ id: weekdayId('3'), hours: null, retired: false }]) })
    expect(comingDay(closed, DEMANDS, given())).toEqual({ date: TOMORROW, isClosed: true, doughs: [] })
    const closure = {
      id: specialDayId('off'),
      name: 'Closed',
      order: 1,
      kind: 'closure' as const,
      spans: [{ from: TODAY, to: TOMORROW }],
      retired: false,
    }
    expect(comingDay(shop({ specialDays: table([closure]) }), DEMANDS, given()).isClosed).toBe(true)
    const retired = table([{ ...closure, retired: true }])
    expect(comingDay(shop({ specialDays: retired }), DEMANDS, given()).isClosed).toBe(false)
  })

  it('[Q43] given the baking advised, when it is told what comes of it, then sold, left and lost add up', () => {
    for (const { varieties } of comingDay(shop(), DEMANDS, given()).doughs) {
      for (const { varietyId: id, counter, left, lost } of varieties) {
        const mean = DEMANDS.get(id)?.mean ?? 0
        expect(counter - left + lost).toBeCloseTo(mean, 6)
        expect(left).toBeGreaterThan(0)
        expect(lost).toBeGreaterThan(0)
      }
    }
  })

  it('[Q57] given few pieces that only go by the dozen, when they are baked, then a dozen or none', () => {
    const sizes = new Map([['rye', [...new Array<number>(11).fill(0), 1]]])
    const few = new Map([...DEMANDS, ['rye', demand(6, { dispersion: 36 / 66 })]])
    const [plain] = doughOf('rye', {}, few).varieties
    const [dozens] = doughOf('rye', { sizes }, few).varieties
    expect((plain?.counter ?? 0) % 12).not.toBe(0)
    expect(dozens?.counter).toBe(12)
    expect([dozens?.likely, dozens?.careful]).toEqual([0, 12])
    // Many a day: the lumps hardly show.
    const many = new Map([...DEMANDS, ['rye', demand(60)]])
    expect(doughOf('rye', { sizes }, many).varieties).toEqual(doughOf('rye', {}, many).varieties)
  })

  it('[Q52] given a dough of which nothing is known, when the day is told, then it says so and advises nothing but orders', () => {
    const nothing = demand(1.3, { basis: 'nothing', dispersion: 0.7 })
    for (const demands of [new Map(), new Map([...DEMANDS, ['rye', nothing]])]) {
      const none = { likely: 0, careful: 0, plenty: 0, counter: 0, basis: 'nothing' }
      const found = doughOf('rye', { next: { date: TOMORROW, demands } }, demands)
      expect(found).toMatchObject({ ...none, toMake: 0, why: [], varieties: [{ ...none, bake: 0, why: [] }] })
      const orders = [{ doughId: doughId('rye'), varietyId: varietyId('rye'), pieces: 12 }]
      const ordered = doughOf('rye', { orders }, demands)
      expect(ordered).toMatchObject({ ...none, toMake: 12, varieties: [{ ...none, bake: 12 }] })
      expect([ordered.why, ordered.varieties[0]?.why]).toEqual([
        [{ code: 'orders', pieces: 12 }],
        [{ code: 'orders', pieces: 12 }],
      ])
    }
    expect(doughOf('plain', {}, new Map([...DEMANDS, ['poppy', nothing]])).basis).toBe('many')
  })
})
