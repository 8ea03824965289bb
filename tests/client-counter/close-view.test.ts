import { describe, expect, it } from 'vitest'
import { allTo, closeActs, fateSums, leftRods, nextFate } from '../../client/counter/close-view.ts'
import { counterRods } from '../../client/counter/counter-rods.ts'
import { varietyId } from '../../shared-core/ids.ts'
import { at, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { rod, UNTIL_THREE } from './counter-maker.ts'

const rods = [
  rod({ varietyId: varietyId('sesame'), forSale: 10, cooling: 2 }),
  rod({ varietyId: varietyId('poppy'), forSale: 4, dayOld: 3 }),
  rod({ varietyId: varietyId('plain'), forSale: 0 }),
]

describe('what becomes of what is left', () => {
  it('given nothing chosen, then all of it is day-old and rods of nothing are not asked about', () => {
    const left = leftRods(rods, new Map())
    expect(left.map((one) => [one.varietyId, one.fresh, one.dayOld, one.fate])).toEqual([
      ['sesame', 12, 0, 'dayOld'],
      ['poppy', 4, 3, 'dayOld'],
    ])
    expect(closeActs(left, '2026-11-24', 0)).toEqual([{ type: 'closeDay', label: '2026-11-24' }])
  })

  it('given touches of a rod, then its fate goes round', () => {
    expect(nextFate('dayOld')).toBe('given')
    expect(nextFate('given')).toBe('wasted')
    expect(nextFate('wasted')).toBe('dayOld')
  })

  it('given fates and crew hours, then what goes leaves the rods before the close, day-old pieces by their own act', () => {
    const fates = new Map([[varietyId('poppy'), 'wasted' as const]])
    const left = leftRods(rods, fates)
    expect(fateSums(left)).toEqual([
      { fate: 'dayOld', pieces: 12 },
      { fate: 'wasted', pieces: 7 },
    ])
    expect(closeActs(left, '2026-11-24', 18)).toEqual([
      { type: 'remove', varietyId: 'poppy', pieces: 4, fate: 'wasted' },
      { type: 'dayOldOut', varietyId: 'poppy', pieces: 3, fate: 'wasted' },
      { type: 'closeDay', label: '2026-11-24', crewMinutes: 1_080 },
    ])
  })

  it('given all given away, when the day is closed, then every piece is accounted for and none is day-old', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot({ pieces: 12 })], dayOld: 0 })] })
    const left = leftRods(counterRods(state, at('15:00'), UNTIL_THREE), new Map())
    const given = leftRods(counterRods(state, at('15:00'), UNTIL_THREE), allTo(left, 'given'))
    for (const [n, act] of closeActs(given, '2026-11-24', 8).entries())
      play(state, act, { nowMs: at('15:05'), id: `close0000${n}` })
    expect(state.day).toBeNull()
    expect(state.lastDay?.left).toEqual([])
    expect(state.lastDay?.crewMinutes).toBe(480)
    expect(state.lastDay?.account[0]?.account).toMatchObject({ given: 12, dayOld: 0 })
  })
})
