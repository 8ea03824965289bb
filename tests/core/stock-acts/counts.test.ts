import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { accountGaps } from '../../../shared-core/day/account.ts'
import type { Counted, State } from '../../../shared-core/day/state.ts'
import { varietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { keptWithin } from '../../../shared-core/stock/kept-within.ts'
import { halved, NO_HABIT } from '../../../shared-core/stock/learn.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import { at, lines, lot, stateWith, stock } from '../support/make.ts'
import { eventsOf, play } from '../support/play.ts'
import { shopWith } from '../support/shop.ts'

const seen = { atMs: at('6:00'), sold: 0, shopSold: 0 }
const rod = (id: string, pieces: number) =>
  stock(id, { lots: [lot({ id: `lot-${id}`, pieces, outAt: at('5:30'), readyAt: at('5:45') })], seen })
const shop = (...stocks: readonly ReturnType<typeof rod>[]): State => stateWith({ stock: stocks })
const there = (state: State, id: string) => piecesOf(state.stock.get(varietyId(id))?.lots ?? [])
const unexplained = (state: State) => [...state.account.values()].reduce((sum, one) => sum + one.unexplained, 0)
const count = (id: string, pieces: number, within = 0): Counted => ({ varietyId: varietyId(id), pieces, within })
const NOON = { nowMs: at('12:00') }

describe('a sweep', () => {
  it.each([
    // expected, doubt, counted, within, there
    [22, 0, 24, 3, 22],
    [22, 1.5, 24, 3, 23],
    [21, 0, 24, 3, 21],
    [27, 0, 24, 3, 27],
    [28, 0, 24, 3, 26],
    [20, 0, 24, 3, 22],
    [60, 0, 24, 3, 24],
    [24, 50, 24, 3, 24],
    [2, 0, 0, 3, 2],
    [5, 0, 0, 3, 2],
    [22, 9, 24, 0, 24],
  ])(
    '[S6] given %d expected within %d, when %i are counted within %i, then %i are there',
    (mean, doubt, pieces, within, left) => {
      expect(keptWithin({ mean, knownDoubt: doubt }, { pieces, within })).toBe(left)
    },
  )

  it('[S6] given anything expected, then what is there lies within what was counted, and grows with what was expected', () => {
    const number = fc.double({ min: 0, max: 100, noNaN: true })
    fc.assert(
      fc.property(number, number, fc.integer({ min: 0, max: 12 }), (mean, knownDoubt, dozens) => {
        const counted = { pieces: dozens * 6, within: 3 }
        const left = keptWithin({ mean, knownDoubt }, counted)
        expect(left).toBeGreaterThanOrEqual(Math.max(0, counted.pieces - 3))
        expect(left).toBeLessThanOrEqual(counted.pieces + 3)
        if (knownDoubt > 1)
          expect(keptWithin({ mean: mean + 5, knownDoubt }, counted)).toBeGreaterThanOrEqual(
            Math.min(left, counted.pieces),
          )
      }),
    )
  })

  it('[S6] given 30 and 20 on the books, when 24 and 18 are swept, then the gap of the one is unexplained and the other stays', () => {
    const state = shop(rod('sesame', 30), rod('poppy', 20))
    play(state, { type: 'sweep', counts: [count('sesame', 24, 3), count('poppy', 18, 3)] }, NOON)
    expect([there(state, 'sesame'), there(state, 'poppy')]).toEqual([25, 20])
    expect(unexplained(state)).toBe(5)
    expect(state.stock.get(varietyId('sesame'))?.counted).toEqual({ atMs: at('12:00'), pieces: 24, within: 3 })
  })

  it('[S6, T1] given any rods swept in any order, then all is the same, and every piece accounted for', () => {
    const ids = ['sesame', 'poppy', 'plain', 'rye']
    const some = fc.array(fc.tuple(fc.nat(80), fc.nat(14)), { minLength: 4, maxLength: 4 })
    fc.assert(
      fc.property(some, fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }), (drawn, order) => {
        const all = ids.map((id, n) => rod(id, (drawn[n]?.[0] ?? 0) + 1))
        const counts = ids.map((id, n) => count(id, (drawn[n]?.[1] ?? 0) * 6, 3))
        const [one, other] = [shop(...all), shop(...all)]
        play(one, { type: 'sweep', counts }, NOON)
        play(other, { type: 'sweep', counts: order.flatMap((n) => counts[n] ?? []) }, NOON)
        for (const id of ids) expect(there(one, id)).toBe(there(other, id))
        expect(new Map(one.habits)).toEqual(new Map(other.habits))
        expect([...accountGaps(one)]).toEqual([])
      }),
    )
  })
})

describe('the last one gone', () => {
  it('[S7] given 5 for sale and 36 cooling, then none is for sale and the 36 cool on', () => {
    const lots = [lot({ id: 'a', pieces: 5 }), lot({ id: 'b', pieces: 36, outAt: at('6:40'), readyAt: at('6:55') })]
    const state = stateWith({ stock: [stock('sesame', { lots })] })
    play(state, { type: 'lastOneGone', varietyId: varietyId('sesame') })
    expect(rods(state, at('6:47'))[0]).toMatchObject({ forSale: 0, likely: 0, within: 0, cooling: 36 })
    expect(unexplained(state)).toBe(5)
  })
})

describe('what a count teaches', () => {
  const taught = (state: State, id = 'sesame') => state.habits.get(varietyId(id))

  it('[S10] given 30 on the books since opening, when 18 are counted at noon, then 12 went in six hours', () => {
    const state = shop(rod('sesame', 30))
    play(state, { type: 'count', ...count('sesame', 18) }, NOON)
    expect(taught(state)).toMatchObject({ missing: 12, usualMs: 6 * 3_600_000, busyMs: 6 * 3_600_000, checks: 1 })
    expect(rods(state, at('12:00'))[0]).toMatchObject({ likely: 18, within: 0 })
    expect(rods(state, at('14:00'))[0]?.likely).toBe(14)
  })

  it('[S10] given all there, then it teaches that nothing leaks', () => {
    const state = shop(rod('sesame', 30))
    play(state, { type: 'count', ...count('sesame', 30) }, NOON)
    expect(taught(state)).toMatchObject({ missing: 0, checks: 1 })
    expect(rods(state, at('14:00'))[0]?.likely).toBe(30)
  })

  it.each([
    ['before opening', shop(rod('sesame', 30)), { nowMs: at('5:50') }, 18],
    ['of a rod with nothing on the books', stateWith({ stock: [stock('sesame', { seen })] }), NOON, 6],
  ])('[S10] given a count %s, then it teaches nothing', (_what, state, when, pieces) => {
    play(state, { type: 'count', ...count('sesame', pieces) }, when)
    expect(state.habits.size).toBe(0)
  })

  it('[S10] given a leak of 2 an hour, when a rod of 200 is counted at 20, then it is taken for a slip and teaches less', () => {
    const usual = { usualMs: 200 * 3_600_000, busyMs: 200 * 3_600_000, checks: 100, squares: 10_000 }
    const habit = { ...NO_HABIT, ...usual, varietyId: varietyId('sesame'), missing: 400 }
    const state = stateWith({ stock: [rod('sesame', 200)], habits: [habit] })
    play(state, { type: 'count', ...count('sesame', 20) }, { ...NOON, confirmed: ['far-count'] })
    expect(there(state, 'sesame')).toBe(20)
    expect(unexplained(state)).toBe(180)
    expect(taught(state)?.missing).toBeGreaterThan(412)
    expect(taught(state)?.missing).toBeLessThan(460)
  })

  it('[S10] given a rod found empty sooner than expected, then it teaches over less time than the whole', () => {
    const state = shop(rod('sesame', 60), rod('poppy', 3))
    play(state, { type: 'count', ...count('sesame', 0) }, { ...NOON, id: 'first00001', confirmed: ['far-count'] })
    play(state, { type: 'sweep', counts: [count('poppy', 0)] }, { ...NOON, id: 'other00001' })
    expect(taught(state, 'poppy')?.usualMs).toBeLessThan(6 * 3_600_000)
  })

  it('[S10] given a close, then what was learnt weighs half', () => {
    const state = shop(rod('sesame', 30))
    play(state, { type: 'count', ...count('sesame', 18) }, NOON)
    play(state, { type: 'closeDay' }, { nowMs: at('15:00') })
    expect(taught(state)).toMatchObject({ missing: 6, usualMs: 3 * 3_600_000 })
  })

  it('[P5] given one piece more found than known, then half of it is a nought that JSON keeps', () => {
    const habit = { ...NO_HABIT, varietyId: varietyId('sesame'), missing: -1, usualMs: 20 * 3_600_000 }
    const half = halved(habit)
    expect(half?.missing).toBe(0)
    expect(JSON.parse(JSON.stringify(half))).toStrictEqual(half)
  })
})

describe('selling without a name', () => {
  const sold = (state: State, pieces: number) => {
    const events = eventsOf(play(state, { type: 'sellUnnamed', pieces }, NOON), 'stockTaken')
    return new Map(events.map((one) => [String(one.varietyId), piecesOf(one.takes) + one.found]))
  }
  const total = (spread: Map<string, number>) => [...spread.values()].reduce((sum, one) => sum + one, 0)

  it('[S9] given nothing sold by name, then pieces follow what is there, and none is lost', () => {
    const spread = sold(shop(rod('sesame', 60), rod('poppy', 30)), 30)
    expect(total(spread)).toBe(30)
    expect(Math.abs((spread.get('sesame') ?? 0) - 20)).toBeLessThanOrEqual(1)
  })

  it('[S9] given much sold by name, then pieces follow that', () => {
    const state = stateWith({
      stock: [
        { ...rod('sesame', 60), soldToday: 900 },
        { ...rod('poppy', 60), soldToday: 100 },
      ],
    })
    const spread = sold(state, 50)
    expect(spread.get('sesame')).toBeGreaterThan(3 * (spread.get('poppy') ?? 0))
  })

  it('[S9] given a hundred singles, then each variety gets its share of them', () => {
    const state = shop(rod('sesame', 200), rod('poppy', 100))
    const all = new Map<string, number>()
    for (let n = 0; n < 100; n += 1) for (const [id, pieces] of sold(state, 1)) all.set(id, (all.get(id) ?? 0) + pieces)
    expect(total(all)).toBe(100)
    expect(Math.abs((all.get('sesame') ?? 0) - 67)).toBeLessThanOrEqual(4)
    expect(state.stock.get(varietyId('sesame'))?.unnamedSince).toBe(all.get('sesame'))
  })

  it('[S9] given only 5 left on any rod, when 12 are sold, then the 5 go first and the sale is whole', () => {
    const state = shop(rod('sesame', 5))
    expect(total(sold(state, 12))).toBe(12)
    expect(there(state, 'sesame')).toBe(0)
    expect(unexplained(state)).toBe(-7)
  })

  it('[S9] given any rods and any sale, then exactly so many are spread, and rods that have some go first', () => {
    fc.assert(
      fc.property(fc.nat(40), fc.nat(40), fc.integer({ min: 1, max: 60 }), (sesame, poppy, pieces) => {
        const state = shop(rod('sesame', sesame + 1), rod('poppy', poppy + 1))
        expect(total(sold(state, pieces))).toBe(pieces)
        expect(unexplained(state) + Math.max(0, pieces - sesame - poppy - 2)).toBe(0)
      }),
    )
  })

  it('[S8] given a shop that counts by taps, when a till says what it sold, then it is noted and nothing is taken off', () => {
    const state = shop(rod('sesame', 30))
    const named = play(state, { type: 'sell', lines: lines('sesame', 6), from: 'till' }, { ...NOON, id: 'first00001' })
    const unnamed = play(state, { type: 'sellUnnamed', pieces: 6, from: 'till' }, { ...NOON, id: 'other00001' })
    expect([...named, ...unnamed].map(({ type }) => type)).toEqual(['saleNoted', 'saleNoted'])
    expect(there(state, 'sesame')).toBe(30)
  })

  it('[S8] given a shop that counts by its till, then the till takes off and a tap is noted', () => {
    const counter = { ...shopWith().counter, salesFrom: 'till' as const }
    const state = stateWith({ shop: shopWith({ counter }), stock: [rod('sesame', 30)] })
    play(state, { type: 'sell', lines: lines('sesame', 6), from: 'till' }, { ...NOON, id: 'first00001' })
    play(state, { type: 'sell', lines: lines('sesame', 6) }, { ...NOON, id: 'other00001' })
    expect(there(state, 'sesame')).toBe(24)
  })
})
