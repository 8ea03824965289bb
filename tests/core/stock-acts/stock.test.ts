import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { keepId, varietyId } from '../../../shared-core/ids.ts'
import { at, lines, lot, stateWith, stock } from '../support/make.ts'
import { decided, eventsOf, outcome, places, play } from '../support/play.ts'

const SESAME = varietyId('sesame')
const oldest = lot({ id: 'a', pieces: 4, readyAt: at('6:30') })
const newer = lot({ id: 'b', pieces: 12, readyAt: at('6:40') })
const cooling = lot({ id: 'c', pieces: 36, outAt: at('6:40'), readyAt: at('6:55') })

const with16 = (): State => stateWith({ stock: [stock('sesame', { lots: [oldest, newer] })] })
const with16and36cooling = (): State => stateWith({ stock: [stock('sesame', { lots: [oldest, newer, cooling] })] })
const sesame = (state: State) => state.stock.get(SESAME)
const unexplained = (state: State) => [...state.account.values()].reduce((sum, one) => sum + one.unexplained, 0)

describe('selling', () => {
  it.each([1, 6, 12, 13])('[S2] given lots of 4 and 12, when %i are sold, then the oldest go first', (pieces) => {
    const state = with16()
    play(state, { type: 'sell', lines: lines('sesame', pieces) })
    expect(sesame(state)?.lots.map((one) => `${one.id} ${one.pieces}`)).toEqual(
      { 1: ['a 3', 'b 12'], 6: ['b 10'], 12: ['b 4'], 13: ['b 3'] }[pieces],
    )
    expect(sesame(state)?.soldToday).toBe(pieces)
  })

  it('[S1] given 16 known, when 24 are sold, then 8 are found and the rod is gone since then', () => {
    const state = with16()
    play(state, { type: 'sell', lines: lines('sesame', 24) })
    expect(unexplained(state)).toBe(-8)
    expect(sesame(state)).toMatchObject({ lots: [], goneSinceMs: at('6:47'), soldToday: 24 })
  })

  it('[S1] given a rod never seen, when one is sold, then it is taken all the same', () => {
    const state = stateWith()
    play(state, { type: 'sell', lines: lines('poppy', 1, 'sesame', 2) })
    expect(unexplained(state)).toBe(-3)
  })

  it('[S1] given a rod gone since 6:47, when more is sold from it at 6:50, then it is gone since 6:47 all the same', () => {
    const state = with16()
    play(state, { type: 'sell', lines: lines('sesame', 16) })
    play(state, { type: 'sell', lines: lines('sesame', 2) }, { nowMs: at('6:50'), id: 'later00001' })
    expect(sesame(state)?.goneSinceMs).toBe(at('6:47'))
  })

  it.each(['kitchen', 'wasted', 'given'] as const)('[T1] given 6 %s, then the account says so', (fate) => {
    const state = with16()
    play(state, { type: 'remove', varietyId: SESAME, pieces: 6, fate })
    expect([...state.account.values()][0]?.[fate]).toBe(6)
    expect(places(state)).toEqual(['out sesame 10'])
  })

  it('[S2] given sales over three hours, then the pace keeps quarters of the last two', () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot({ pieces: 400 })] })] })
    for (let minute = 0; minute < 180; minute += 5) {
      const nowMs = at(`${6 + Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`)
      play(state, { type: 'sell', lines: lines('sesame', 2) }, { nowMs, id: `sale${String(minute).padStart(7, '0')}` })
    }
    expect(sesame(state)?.pace.map((one) => one.pieces)).toEqual([6, 6, 6, 6, 6, 6, 6, 6])
    expect(sesame(state)?.pace[0]?.fromMs).toBe(at('7:00'))
  })
})

describe('counting', () => {
  it.each([
    // counted, unexplained, left in lots
    [16, 0, 'as known'],
    [10, 6, 'fewer than known'],
    [20, -4, 'more than known, but nearer to that than with the cooling ones'],
    [52, 0, 'the cooling ones are on the rod already'],
    [50, 2, 'the same less two'],
    [0, 16, 'none at all'],
    [34, -18, 'as far from one as from the other: what should cool is left to cool'],
  ])('[S3] given 16 ready and 36 cooling, when %i are counted, then %i are unexplained (%s)', (pieces, gap) => {
    const state = with16and36cooling()
    play(state, { type: 'count', varietyId: SESAME, pieces })
    expect(unexplained(state)).toBe(gap)
    const ready = sesame(state)?.lots.filter((one) => one.readyAtMs <= at('6:47')) ?? []
    expect(ready.reduce((sum, one) => sum + one.pieces, 0)).toBe(pieces)
    expect(sesame(state)?.counted).toEqual({ atMs: at('6:47'), pieces, within: 0 })
  })

  it('[S4] given 16 known, when 60 are counted, then it is asked back once', () => {
    const state = with16()
    const count = { type: 'count', varietyId: SESAME, pieces: 60 } as const
    expect(outcome(decided(state, count))).toBe('ask far-count')
    play(state, count, { confirmed: ['far-count'] })
    expect(places(state)).toEqual(['out sesame 60'])
  })
})

describe('keeping', () => {
  it('[S5] given 16 for sale, when 12 are kept, released and kept again and handed over, then each time they move', () => {
    const state = with16()
    play(state, { type: 'keep', lines: lines('sesame', 12) })
    expect(places(state)).toEqual(['kept sesame 12', 'out sesame 4'])
    play(state, { type: 'release', keepId: [...state.keeps.keys()][0] ?? keepId('none') })
    expect(places(state)).toEqual(['out sesame 16'])
    play(state, { type: 'keep', lines: lines('sesame', 12) })
    play(state, { type: 'handOver', keepId: [...state.keeps.keys()][0] ?? keepId('none') })
    expect(places(state)).toEqual(['out sesame 4'])
    expect(sesame(state)?.soldToday).toBe(12)
    expect(state.keeps.size).toBe(0)
  })

  it('[S5] given 16 for sale, when 18 are kept, then the two nobody knew of are found', () => {
    const state = with16()
    const events = play(state, { type: 'keep', lines: lines('sesame', 18) })
    expect(eventsOf(events, 'kept')[0]?.parts[0]?.found).toBe(2)
    expect(unexplained(state)).toBe(-2)
  })

  it.each(['release', 'handOver'] as const)('[L14] given nothing kept, when %s, then unknown-keep', (type) => {
    expect(outcome(decided(with16(), { type, keepId: keepId('none') }))).toBe('unknown-keep')
  })

  it.each([
    { type: 'sell', lines: lines('bialy', 1) },
    { type: 'remove', varietyId: varietyId('bialy'), pieces: 1, fate: 'given' },
    { type: 'count', varietyId: varietyId('bialy'), pieces: 1 },
    { type: 'keep', lines: lines('bialy', 1) },
  ] as const)('[L14] given a variety that the shop does not have, when %o, then unknown-variety', (act) => {
    expect(outcome(decided(with16(), act))).toBe('unknown-variety')
  })
})
