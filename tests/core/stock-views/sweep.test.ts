import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { ClosedDay } from '../../../shared-core/day/closed-day.ts'
import type { Habit } from '../../../shared-core/day/habit.ts'
import type { State, Stock } from '../../../shared-core/day/state.ts'
import { varietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import { assorted } from '../../../shared-core/stock/assorted.ts'
import { dayOldToPut } from '../../../shared-core/stock/day-old.ts'
import { NO_HABIT } from '../../../shared-core/stock/learn.ts'
import { sweepFor } from '../../../shared-core/stock/sweep.ts'
import { at, lines, lot, stateWith, stock } from '../support/make.ts'
import { play } from '../support/play.ts'
import { shopWith, table, variety } from '../support/shop.ts'

const HOUR = 3_600_000
const IDS = Array.from({ length: 12 }, (_none, n) => `v${String(n).padStart(2, '0')}`)
const SHOP = shopWith({ varieties: table(IDS.map((id, order) => variety({ id, order }))) })
const habit = (id: string, missing: number): Habit => ({
  ...NO_HABIT,
  varietyId: varietyId(id),
  missing,
  usualMs: 20 * HOUR,
  busyMs: 20 * HOUR,
  checks: 20,
  squares: 2_000,
})
const seen = (clock: string) => ({ atMs: at(clock), sold: 0, shopSold: 0 })
const rod = (id: string, pieces: number, parts: Partial<Stock> = {}) =>
  stock(id, { lots: [lot({ id: `lot-${id}`, pieces, readyAt: at('5:45') })], seen: seen('6:00'), ...parts }, SHOP)
const leaky = (stocks: readonly Stock[]): State =>
  stateWith({ shop: SHOP, stock: stocks, habits: IDS.map((id) => habit(id, 120)) })
const named = (state: State, clock: string, most?: number) => sweepFor(state, at(clock), most).varietyIds.map(String)

describe('which rods to count', () => {
  it('[S31] given one near running out, one full and one known, all leaking alike, then the first stands first', () => {
    const state = leaky([
      rod('v00', 200),
      rod('v01', 36),
      rod('v02', 36, { seen: seen('9:00'), counted: { atMs: at('9:00'), pieces: 36, within: 0 } }),
    ])
    const ids = named(state, '9:00')
    expect(ids[0]).toBe('v01')
    expect(ids).not.toContain('v02')
  })

  it('[S31] given twelve in doubt near the line, then six are named, or as many as asked for', () => {
    const state = leaky(IDS.map((id) => rod(id, 36)))
    expect(named(state, '9:00')).toHaveLength(6)
    expect(named(state, '9:00', 4)).toHaveLength(4)
  })

  it('[S31] given one worth a count and others in doubt that are full, then four are named all the same', () => {
    const state = leaky([rod('v00', 36), ...IDS.slice(1).map((id) => rod(id, 300))])
    const ids = named(state, '9:00')
    expect(ids[0]).toBe('v00')
    expect(ids).toHaveLength(4)
  })

  it.each([
    [
      'nothing leaks and all was compared',
      stateWith({ shop: SHOP, stock: [rod('v00', 12)], habits: [{ ...habit('v00', 0), checks: 400 }] }),
      '9:00',
    ],
    ['all was counted a moment ago', leaky(IDS.map((id) => rod(id, 36, { seen: seen('9:00') }))), '9:00'],
    ['before opening', leaky([rod('v00', 36)]), '5:59'],
    ['after close', leaky([rod('v00', 36)]), '15:00'],
    ['nothing on any rod', leaky([stock('v00', {}, SHOP)]), '9:00'],
  ])('[S31, S32] given %s, then no sweep is due', (_what, state, clock) => {
    expect(sweepFor(state, at(clock))).toEqual({ dueAtMs: null, varietyIds: [] })
  })

  it('[S32] given open since 6:00 and a sweep every 90 min, then the first is due at 7:30; a single count puts it not off', () => {
    expect(sweepFor(leaky([rod('v00', 24)]), at('7:00')).dueAtMs).toBe(at('7:30'))
    const one = { counted: { atMs: at('7:00'), pieces: 36, within: 0 }, seen: seen('7:00') }
    expect(sweepFor(leaky([rod('v00', 24, one), rod('v01', 24)]), at('7:10')).dueAtMs).toBe(at('7:30'))
  })

  it.each([
    ['in half-dozens', 3, 1],
    ['two rods to the piece', 0, 2],
  ])('[S32] given a sweep at 8:00, %s, then the next is due at 9:30', (_what, within, rodsThen) => {
    const counted = { atMs: at('8:00'), pieces: 36, within }
    const all = IDS.slice(0, 4).map((id, n) => rod(id, 36, n < rodsThen ? { counted, seen: seen('8:00') } : {}))
    expect(sweepFor(leaky(all), at('9:00')).dueAtMs).toBe(at('9:30'))
  })
})

describe('a mixed dozen', () => {
  const rods = (...pieces: readonly number[]) =>
    stateWith({ shop: SHOP, stock: pieces.map((some, n) => rod(IDS[n] ?? '', some)) })

  it.each([
    [[40, 20], 6, ['v00 4', 'v01 2']],
    [[40, 2, 40], 6, ['v00 3', 'v02 3']],
    [[30, 30, 30], 12, ['v00 4', 'v01 4', 'v02 4']],
    [[3, 2], 6, ['v00 4', 'v01 2']],
    [[], 3, ['v00 1', 'v01 1', 'v02 1']],
  ])('[S34] given rods of %j, when %i are taken, then %j', (pieces, some, taken) => {
    const found = assorted(rods(...pieces), at('6:00'), some)
    expect(found.map((line) => `${line.varietyId} ${line.pieces}`)).toEqual(taken)
  })

  it('[S34] given minis besides, then a dozen is of regular ones as long as there are any', () => {
    const shop = shopWith({
      varieties: table([variety({ id: 'mini', size: 'mini' }), variety({ id: 'sesame', order: 2 })]),
    })
    const of = (id: string, pieces: number) => stock(id, { lots: [lot({ id, pieces })] }, shop)
    const state = stateWith({ shop, stock: [of('mini', 90), of('sesame', 10)] })
    expect(assorted(state, at('6:47'), 12)).toEqual(lines('mini', 2, 'sesame', 10))
  })

  it('[S34] given any rods, then it is whole, and no rod gives more than it has while another has some', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(30), { maxLength: 12 }), fc.integer({ min: 1, max: 24 }), (pieces, some) => {
        const taken = assorted(rods(...pieces.map((one) => one + 1)), at('6:00'), some)
        expect(piecesOf(taken)).toBe(some)
        const there = pieces.reduce((sum, one) => sum + one + 1, 0)
        if (there >= some)
          for (const line of taken)
            expect(line.pieces).toBeLessThanOrEqual((pieces[IDS.indexOf(line.varietyId)] ?? 0) + 1)
      }),
    )
  })
})

describe('day-old pieces', () => {
  const lastDay: ClosedDay = {
    label: '2026-11-23',
    openedAtMs: at('4:00', -1),
    closedAtMs: at('15:00', -1),
    closedOn: '2026-11-23',
    account: [],
    left: lines('poppy', 4, 'sesame', 7),
    crewMinutes: null,
    before: null,
  }

  it('[S35] given what was left yesterday, when some is put out, then the rest is told in the set-up’s order', () => {
    const state: State = { ...stateWith(), lastDay }
    expect(dayOldToPut(state)).toEqual(lines('sesame', 7, 'poppy', 4))
    play(state, { type: 'dayOldIn', lines: lines('sesame', 5) })
    expect(dayOldToPut(state)).toEqual(lines('sesame', 2, 'poppy', 4))
    play(state, { type: 'dayOldIn', lines: lines('sesame', 2, 'poppy', 4) })
    expect(dayOldToPut(state)).toEqual([])
    expect(dayOldToPut(stateWith())).toEqual([])
  })

  it('[S11] given 5 day-old put out beside 12 of today, when 2 are sold and 1 wasted, then 12 and 2 are left', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot()] })] })
    play(state, { type: 'dayOldIn', lines: lines('sesame', 5) })
    const out = (pieces: number, fate: 'sold' | 'wasted') =>
      play(state, { type: 'dayOldOut', varietyId: varietyId('sesame'), pieces, fate })
    out(2, 'sold')
    out(1, 'wasted')
    expect(state.stock.get(varietyId('sesame'))).toMatchObject({ dayOld: 2, soldToday: 0 })
    expect(piecesOf(state.stock.get(varietyId('sesame'))?.lots ?? [])).toBe(12)
    out(3, 'sold')
    expect([...state.account.values()].reduce((sum, one) => sum + one.unexplained, 0)).toBe(-1)
  })
})
