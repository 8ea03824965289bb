import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Habit } from '../../../shared-core/day/habit.ts'
import type { State, Stock } from '../../../shared-core/day/state.ts'
import { keepId, varietyId } from '../../../shared-core/ids.ts'
import type { CounterRules } from '../../../shared-core/shop/rules.ts'
import { toCountAtClose } from '../../../shared-core/stock/close.ts'
import { leaksOf } from '../../../shared-core/stock/leak.ts'
import { NO_HABIT } from '../../../shared-core/stock/learn.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, lot, stateWith, stock } from '../support/make.ts'
import { play } from '../support/play.ts'
import { shopWith } from '../support/shop.ts'

const HOUR = 3_600_000
const counter = (salesFrom: CounterRules['salesFrom']): CounterRules => ({
  salesFrom,
  sweepEveryMs: spanMs(90, 'min'),
  dayOldPercent: 50,
})
/** So many pieces found missing in so many hours, by a hundred counts: nobody is ignorant any more. */
const habit = (id: string, missing: number, hours = 20, parts: Partial<Habit> = {}): Habit => ({
  ...NO_HABIT,
  varietyId: varietyId(id),
  missing,
  usualMs: hours * HOUR,
  busyMs: hours * HOUR,
  checks: 100,
  squares: 10_000,
  ...parts,
})
const seenAt = (clock: string): Stock['seen'] => ({ atMs: at(clock), sold: 0, shopSold: 0 })
const lots = (pieces: number) => [lot({ pieces, outAt: at('5:30'), readyAt: at('5:45') })]
const sesame = (parts: Partial<Stock>, habits: readonly Habit[] = [], shop = shopWith()) =>
  stateWith({ shop, habits, stock: [stock('sesame', parts)] })
const rod = (state: State, clock: string, id = 'sesame') => {
  const found = rods(state, at(clock)).find((one) => one.varietyId === id)
  if (found === undefined) throw new Error(`no rod ${id}`)
  return found
}

describe('what is likely there', () => {
  it.each([
    // habit, lots, seen, now, likely
    ['nothing found missing ever', [], 60, '6:00', '9:00', 60],
    ['60 missing in 20 hours', [habit('sesame', 60)], 60, '6:00', '6:00', 60],
    ['the same, two hours on', [habit('sesame', 60)], 60, '6:00', '8:00', 54],
    ['the same, four hours on', [habit('sesame', 60)], 60, '6:00', '10:00', 48],
    ['fewer on the books than leaks', [habit('sesame', 200)], 6, '6:00', '10:00', 0],
    ['more found than known', [habit('sesame', -60)], 60, '6:00', '10:00', 60],
  ] as const)('[S27] given %s, then what left unseen is off the books', (_what, habits, pieces, seen, now, likely) => {
    const found = rod(sesame({ lots: lots(pieces), seen: seenAt(seen) }, habits), now)
    expect(found).toMatchObject({ forSale: pieces, likely })
  })

  it('[S28] given known since 5:00, before opening at 6:00, then nothing leaves until 6:00, and after close nothing more', () => {
    const state = sesame({ lots: lots(90), seen: seenAt('5:00') }, [habit('sesame', 60)])
    expect(rod(state, '6:00')).toMatchObject({ likely: 90, within: 0 })
    expect(rod(state, '7:00').likely).toBe(87)
    expect(rod(state, '15:00').likely).toBe(rod(state, '18:00').likely)
  })

  it('[S28] given a day of which nobody knows the noon, then the books stand', () => {
    const day = { label: '2026-11-24', openedAtMs: at('4:00'), noonMs: null }
    const state = stateWith({ day, habits: [habit('sesame', 60)], stock: [stock('sesame', { lots: lots(60) })] })
    expect(leaksOf(state)).toBeNull()
    expect(rod(state, '12:00')).toMatchObject({ likely: 60, within: 0 })
  })

  it('[S27] given a load that came at 8:00 to a rod that had 6 left at 6:00, then no more than 6 left before', () => {
    const two = [lot({ id: 'a', pieces: 6, readyAt: at('5:45') }), lot({ id: 'b', pieces: 36, readyAt: at('8:00') })]
    expect(rod(sesame({ lots: two, seen: seenAt('6:00') }, [habit('sesame', 200)]), '8:00').likely).toBeGreaterThan(34)
  })

  it('[S27] given a box kept since 7:00 and released at 11:00 to an empty rod that leaks, then all of it is there', () => {
    const state = sesame({ lots: lots(12), seen: seenAt('6:00') }, [habit('sesame', 200)])
    play(state, { type: 'keep', lines: [{ varietyId: varietyId('sesame'), pieces: 12 }] }, { nowMs: at('7:00') })
    play(state, { type: 'release', keepId: [...state.keeps.keys()][0] ?? keepId('none') }, { nowMs: at('11:00') })
    expect(rod(state, '11:00')).toMatchObject({ forSale: 12, likely: 12 })
    expect(rod(state, '12:00').likely).toBeLessThan(12)
  })

  it('[S27] given any books, habits and times, then likely lies between none and the books, in whole pieces', () => {
    const pieces = fc.integer({ min: 0, max: 400 })
    const missing = fc.integer({ min: -200, max: 2_000 })
    fc.assert(
      fc.property(pieces, missing, fc.integer({ min: 0, max: 1_200 }), pieces, (books, gone, minute, unnamed) => {
        const now = `${4 + Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`
        const parts = { lots: lots(Math.max(1, books)), seen: seenAt('6:00'), unnamedSince: unnamed }
        const { likely, within } = rod(sesame(parts, [habit('sesame', gone)]), now)
        expect(likely).toBeGreaterThanOrEqual(0)
        expect(likely).toBeLessThanOrEqual(Math.max(1, books))
        expect(within).toBeGreaterThanOrEqual(0)
        expect(within).toBeLessThanOrEqual(Math.max(1, books))
        expect(Number.isInteger(likely) && Number.isInteger(within)).toBe(true)
      }),
    )
  })

  it('[S27] given later and later, then what is likely never grows', () => {
    const state = sesame({ lots: lots(80), seen: seenAt('6:00') }, [habit('sesame', 100)])
    const all = Array.from({ length: 54 }, (_none, n) => rod(state, `${6 + Math.floor(n / 6)}:${(n % 6) * 10}`).likely)
    expect(all).toEqual([...all].sort((one, other) => other - one))
  })
})

describe('how fast it leaks', () => {
  it('[S29] given a variety without counts in a shop that leaks, then it leaks as the shop does', () => {
    const state = stateWith({
      habits: [habit('poppy', 60), habit('plain', 60)],
      stock: ['sesame', 'poppy', 'plain'].map((id) => stock(id, { lots: lots(60), seen: seenAt('6:00') })),
    })
    expect(rod(state, '10:00').likely).toBeGreaterThanOrEqual(46)
    expect(rod(state, '10:00').likely).toBeLessThan(58)
  })

  it('[S29] given few counts of its own, then a rate lies between its own and the shop’s; given many, at its own', () => {
    const left = (hours: number) => {
      const own = habit('sesame', 0, hours)
      const all = ['poppy', 'plain', 'cheddar'].map((id) => habit(id, 120))
      const stocks = ['sesame', 'poppy', 'plain', 'cheddar'].map((id) =>
        stock(id, { lots: lots(60), seen: seenAt('6:00') }),
      )
      return rod(stateWith({ habits: [own, ...all], stock: stocks }), '9:00').likely
    }
    const [never, few, many] = [left(0), left(4), left(400)]
    expect(never).toBeLessThan(few)
    expect(few).toBeLessThan(many)
    expect(many).toBe(60)
  })

  it('[S29] given counts that found most missing at 7, then 7 to 8 takes more than 9 to 10', () => {
    const hours = [
      { hour: 7, missing: 8_000, usual: 4_000 },
      { hour: 9, missing: 2_000, usual: 4_000 },
    ]
    const state = sesame({ lots: lots(200), seen: seenAt('6:00') }, [habit('sesame', 400, 20, { hours })])
    const taken = (from: string, to: string) => rod(state, from).likely - rod(state, to).likely
    expect(taken('7:00', '8:00')).toBeGreaterThan(2 * taken('9:00', '10:00'))
  })

  it('[S29] given twice the usual sales on record since, then more left unseen; given hardly any, less', () => {
    const left = (soldToday: number) =>
      rod(
        stateWith({
          habits: [habit('sesame', 60, 20, { shopSold: 1_000 })],
          stock: [stock('sesame', { lots: lots(60), seen: seenAt('6:00') }), stock('poppy', { soldToday })],
        }),
        '10:00',
      ).likely
    expect(left(400)).toBeLessThan(left(200))
    expect(left(200)).toBeLessThan(left(20))
  })
})

describe('within how many it is right', () => {
  const base = { lots: lots(60), seen: seenAt('6:00') }
  const leaky = [habit('sesame', 100)]

  it('[S30] given a count to the piece just now, then it is known; given a sweep within 3, within 2', () => {
    const counted = (within: number) => ({ atMs: at('6:00'), pieces: 60, within })
    expect(rod(sesame({ ...base, counted: counted(0) }, leaky), '6:00').within).toBe(0)
    expect(rod(sesame({ ...base, counted: counted(3) }, leaky), '6:00').within).toBe(2)
  })

  it('[S30] given time, or sales without a name, then it is wider', () => {
    const within = (parts: Partial<Stock>, now: string) => rod(sesame({ ...base, ...parts }, leaky), now).within
    expect(within({}, '7:00')).toBeGreaterThan(within({}, '6:15'))
    expect(within({ unnamedSince: 20 }, '6:15')).toBeGreaterThan(within({}, '6:15'))
  })

  it('[S30] given a shop that no count has ever compared, then the books stand with a doubt, more so where nobody taps', () => {
    const doubt = (salesFrom: CounterRules['salesFrom']) =>
      rod(sesame(base, [], shopWith({ counter: counter(salesFrom) })), '9:00')
    expect(doubt('taps')).toMatchObject({ likely: 60 })
    expect(doubt('taps').within).toBeGreaterThan(5)
    expect(doubt('sweeps').within).toBeGreaterThan(doubt('taps').within)
  })

  it('[S30] given counts that were further off than reckoned, then it is wider', () => {
    const within = (squares: number) => rod(sesame(base, [habit('sesame', 100, 20, { squares })]), '9:00').within
    expect(within(40_000)).toBeGreaterThan(within(10_000))
  })
})

describe('what rests on it', () => {
  it('[S33] given nothing tapped and 12 an hour that leave unseen, then the rod runs out by that', () => {
    const state = sesame({ lots: lots(60), seen: seenAt('8:00') }, [habit('sesame', 2_400, 200)])
    const { perHour, goneAtMs } = rod(state, '8:00')
    expect(perHour).toBeGreaterThanOrEqual(11)
    expect(goneAtMs).toBeGreaterThan(at('12:30'))
    expect(goneAtMs).toBeLessThan(at('13:30'))
  })

  it('[S23] given a sweep, then the rod says swept; day-old pieces stand apart', () => {
    const counted = { atMs: at('8:40'), pieces: 12, within: 3 }
    const found = rod(sesame({ lots: lots(12), counted, dayOld: 5 }), '9:00')
    expect(found).toMatchObject({ known: { how: 'swept', atMs: at('8:40') }, dayOld: 5, forSale: 12 })
  })

  it('[S36] given rods known and not known to the piece, then only these are to be counted at close', () => {
    const state = stateWith({
      habits: [habit('sesame', 60)],
      stock: [
        stock('sesame', { lots: lots(30), seen: seenAt('6:00') }),
        stock('poppy', { lots: lots(30), seen: seenAt('15:00') }),
        stock('plain', { seen: seenAt('6:00') }),
      ],
    })
    expect(toCountAtClose(state, at('15:00'))).toEqual([varietyId('sesame')])
  })
})
