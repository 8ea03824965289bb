import { describe, expect, it } from 'vitest'
import { boardsNeeded, boardsNow, boardsWorth } from '../../../shared-core/line/boards.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, batch, lines, load, stateWith } from '../support/make.ts'
import { shopWith, table, variety } from '../support/shop.ts'

const onBoards = (id: string, pieces: number, variety: string | null = null, dough = 'plain') =>
  batch({ id, pieces, variety, dough, stage: 'boards' })

describe('boards', () => {
  it.each([
    // what is on boards                                                   out
    ['nothing', [], 0],
    ['36 plain dough', [onBoards('a', 36)], 6],
    ['37 plain dough: a board is begun', [onBoards('a', 37)], 7],
    ['two batches of one dough share a board', [onBoards('a', 9), onBoards('b', 9)], 3],
    ['each variety begins a board of its own', [onBoards('a', 9, 'sesame'), onBoards('b', 9, 'poppy')], 4],
    ['doughs do not share a board', [onBoards('a', 3), onBoards('b', 3, null, 'rye')], 2],
    ['a pan variety needs none', [onBoards('a', 12, 'focaccia'), onBoards('b', 6, 'sesame')], 1],
    ['what is in the kettle or on the rack needs none', [batch({ stage: 'kettle' }), batch({ id: 'r' })], 0],
  ] as const)('[L32] given %s, then so many boards are out', (_what, batches, out) => {
    const now = boardsNow(stateWith({ batches }), at('6:47'))
    expect(now).toEqual({ count: 24, free: 24 - out, out, drying: 0, over: 0, nextWetAtMs: null })
  })

  it('[L32] given a load before and one after its flip, then the boards of one are out, of the other re-wetting', () => {
    const state = stateWith({
      batches: [onBoards('a', 36)],
      loads: [
        load({ id: 'l1', boards: 8 }),
        load({ id: 'l2', shelf: 's2', boards: 7, phase: 'second-side', boardsWetAt: at('6:50') }),
      ],
    })
    expect(boardsNow(state, at('6:47'))).toMatchObject({ free: 3, out: 14, drying: 7, nextWetAtMs: at('6:50') })
    expect(boardsNow(state, at('6:50'))).toMatchObject({ free: 10, out: 14, drying: 0, nextWetAtMs: null })
  })

  it('[L32] given a shelf whose load has gone, then its boards re-wet until their time; the soonest is told', () => {
    const state = stateWith({
      loads: [load({ id: 'l2', shelf: 's2', boards: 7, phase: 'second-side', boardsWetAt: at('6:52') })],
      shelves: { s1: { touchedAtMs: at('6:46'), boardsFreed: 8, boardsWetAtMs: at('6:51') } },
    })
    expect(boardsNow(state, at('6:47'))).toMatchObject({ free: 9, drying: 15, nextWetAtMs: at('6:51') })
    expect(boardsNow(state, at('6:51:30'))).toMatchObject({ free: 17, drying: 7, nextWetAtMs: at('6:52') })
  })

  it('[L32] given more pieces than boards, then none is free and the excess is told', () => {
    const state = stateWith({ batches: [onBoards('a', 160)] })
    expect(boardsNow(state, at('6:47'))).toMatchObject({ count: 24, free: 0, out: 27, over: 3 })
  })

  it('[L32] given no set-up, then there are no boards', () => {
    expect(boardsNow(stateWith({ shop: null }), at('6:47')).count).toBe(0)
  })

  it.each([
    [lines('sesame', 24, 'poppy', 10), 6],
    [lines('sesame', 48), 8],
    [lines('focaccia', 12), 0],
    [lines('focaccia', 12, 'cheddar', 1), 1],
    [[], 0],
  ])('[L33] given %j, then it needs %i boards', (some, boards) => {
    expect(boardsNeeded(shopWith(), some)).toBe(boards)
  })

  it('[L33] given pan varieties, then they take floor on a hearth all the same', () => {
    expect(boardsWorth(shopWith(), lines('focaccia', 12, 'sesame', 7))).toBe(4)
  })

  it('[L33] given a variety that goes on a board but is never flipped, then it needs none', () => {
    const shop = shopWith({ varieties: table([variety({ id: 'twist', flip: false })]) })
    expect(boardsNeeded(shop, lines('twist', 12))).toBe(0)
  })

  it('[L33] given boards of another size, then they are counted in it', () => {
    const shop = shopWith({ boards: { count: 10, pieces: 8, rewetMs: spanMs(5, 'min') } })
    expect(boardsNeeded(shop, lines('sesame', 48))).toBe(6)
  })
})
