import { describe, expect, it } from 'vitest'
import { standingNow } from '../../../shared-core/line/quiet.ts'
import { at, batch, lines, lot, stateWith, stock, until } from '../support/make.ts'

describe('what stands while the line is quiet', () => {
  it('[L37] given pieces in several stages, then they stand by stage and dough in the order of the set-up', () => {
    const state = stateWith({
      batches: [
        batch({ id: 'a', dough: 'rye', stage: 'chill', pieces: 24 }),
        batch({ id: 'b', stage: 'chill', pieces: 60 }),
        batch({ id: 'c', stage: 'rack', pieces: 36 }),
        batch({ id: 'd', stage: 'proof', pieces: 48 }),
        batch({ id: 'e', stage: 'kettle' }),
        batch({ id: 'f', stage: 'boards' }),
      ],
      stock: [stock('sesame', { lots: [lot({ readyAt: at('6:50') })] })],
    })
    expect(standingNow(state, at('6:47')).map((one) => [one.stage, one.doughId, one.pieces])).toEqual([
      ['proof', 'plain', 48],
      ['chill', 'plain', 60],
      ['chill', 'rye', 24],
      ['rack', 'plain', 36],
      ['cool', 'plain', 12],
    ])
  })

  it('[L37] given two batches on the rack, one ready, then it says how many, when the rest are and when the first is over', () => {
    const state = stateWith({
      batches: [
        batch({ id: 'a', pieces: 36, until: until('6:20', '6:40', '7:30') }),
        batch({ id: 'b', pieces: 24, until: until('7:00', '7:20', '8:10') }),
      ],
    })
    expect(standingNow(state, at('6:47'))).toEqual([
      {
        stage: 'rack',
        doughId: 'plain',
        doughName: 'Plain',
        pieces: 60,
        readyPieces: 36,
        trays: 4,
        lines: [],
        opensAtMs: at('7:00'),
        allReadyAtMs: at('7:00'),
        closesAtMs: at('7:30'),
        status: 'ready',
      },
    ])
  })

  it.each([
    ['6:19', 'waiting', 0, at('6:20')],
    ['6:20', 'ready', 36, null],
    ['7:30', 'ready', 36, null],
    ['7:31', 'over', 36, null],
  ])('[L37] given a window 6:20–7:30, when it is %s, then it is %s', (clock, status, readyPieces, opensAtMs) => {
    const state = stateWith({ batches: [batch({ until: until('6:20', '6:40', '7:30') })] })
    expect(standingNow(state, at(clock))[0]).toMatchObject({ status, readyPieces, opensAtMs, closesAtMs: at('7:30') })
  })

  it('[L37] given no window, then the pieces are ready and nothing is over', () => {
    expect(standingNow(stateWith({ batches: [batch()] }), at('6:47'))[0]).toMatchObject({
      status: 'ready',
      opensAtMs: null,
      closesAtMs: null,
    })
  })

  it('[L37] given lots that cool, then their varieties and times are told; what is cool is not among them', () => {
    const cooling = [
      lot({ id: '1', pieces: 12, readyAt: at('6:40') }),
      lot({ id: '2', pieces: 24, readyAt: at('6:55') }),
    ]
    const state = stateWith({
      stock: [
        stock('poppy', { lots: [lot({ id: '3', pieces: 6, readyAt: at('6:50') })] }),
        stock('sesame', { lots: cooling }),
      ],
    })
    expect(standingNow(state, at('6:47'))).toMatchObject([
      {
        stage: 'cool',
        pieces: 30,
        readyPieces: 0,
        trays: null,
        lines: lines('sesame', 24, 'poppy', 6),
        opensAtMs: at('6:50'),
        allReadyAtMs: at('6:55'),
        status: 'waiting',
      },
    ])
  })

  it('[L37] given no set-up, then nothing stands', () => {
    expect(standingNow(stateWith({ shop: null, batches: [batch()] }), at('6:47'))).toEqual([])
  })
})
