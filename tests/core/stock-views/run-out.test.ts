import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rods } from '../../../shared-core/stock/left.ts'
import { paceOf, piecesPerHour, runOutAt } from '../../../shared-core/stock/run-out.ts'
import { at, lot, stateWith, stock } from '../support/make.ts'

const quarters = (...sold: readonly (readonly [clock: string, pieces: number])[]) =>
  sold.map(([clock, pieces]) => ({ fromMs: at(clock), pieces }))
const MIN = 60_000

describe('the pace of sales', () => {
  it.each([
    // sold                                  now      pieces  minutes
    ['twelve in an hour', quarters(['7:00', 6], ['7:45', 6]), '8:00', 12, 60],
    ['six a quarter of an hour ago: half an hour is counted', quarters(['7:45', 6]), '8:00', 6, 30],
    ['none lately: the quiet time counts', quarters(['6:30', 12]), '8:00', 12, 90],
    ['some more than two hours ago: they are forgotten', quarters(['5:45', 40], ['7:00', 8]), '8:00', 8, 60],
    ['a first quarter without a sale', quarters(['6:30', 0], ['7:00', 8]), '8:00', 8, 60],
  ])('[S24] given %s, then the pace follows', (_what, pace, clock, pieces, minutes) => {
    expect(paceOf({ pace }, at(clock))).toEqual({ pieces, overMs: minutes * MIN })
  })

  it.each([
    ['five pieces', quarters(['7:00', 5]), '8:00'],
    ['nothing', [], '8:00'],
    ['six pieces, of which two are long ago', quarters(['5:00', 2], ['7:00', 4]), '8:00'],
  ])('[S24] given %s sold, then no pace is told', (_what, pace, clock) => {
    expect(paceOf({ pace }, at(clock))).toBeNull()
  })

  it('[S24] given 6 left at 12 an hour, then they are gone in half an hour', () => {
    const pace = { pieces: 12, overMs: 60 * MIN }
    expect(runOutAt(6, pace, at('8:00'))).toBe(at('8:30'))
    expect(piecesPerHour(pace)).toBe(12)
    expect(piecesPerHour({ pieces: 7, overMs: 120 * MIN })).toBe(3)
  })

  it('[S24] given none left or no pace, then nothing is estimated', () => {
    expect(runOutAt(0, { pieces: 12, overMs: 60 * MIN }, at('8:00'))).toBeNull()
    expect(runOutAt(6, null, at('8:00'))).toBeNull()
  })

  it('[S24] given any sales, then what is left is gone after now, later the more is left, at a whole millisecond', () => {
    const pieces = fc.integer({ min: 1, max: 400 })
    fc.assert(
      fc.property(pieces, pieces, fc.integer({ min: 1, max: 7_200_000 }), (left, sold, overMs) => {
        const pace = { pieces: sold, overMs }
        const goneAtMs = runOutAt(left, pace, at('8:00')) ?? 0
        expect(Number.isInteger(goneAtMs)).toBe(true)
        expect(goneAtMs).toBeGreaterThanOrEqual(at('8:00'))
        expect(runOutAt(left + 1, pace, at('8:00')) ?? 0).toBeGreaterThanOrEqual(goneAtMs)
      }),
    )
  })

  it('[S24] given a rod, then only what is for sale counts towards its end', () => {
    const lots = [lot({ id: '1', pieces: 6 }), lot({ id: '2', pieces: 40, readyAt: at('8:05') })]
    const state = stateWith({ stock: [stock('sesame', { lots, kept: 10, pace: quarters(['7:00', 12]) })] })
    expect(rods(state, at('8:00'))[0]).toMatchObject({ forSale: 6, goneAtMs: at('8:30'), perHour: 12 })
  })
})
