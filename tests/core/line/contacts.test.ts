import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, doughId, shelfId, toppingId } from '../../../shared-core/ids.ts'
import { contacts, newToKettle } from '../../../shared-core/line/contacts.ts'
import { at, batch, lines, stateWith } from '../support/make.ts'
import { play } from '../support/play.ts'
import { dough, shopWith, table, variety } from '../support/shop.ts'

const PLAIN = doughId('plain')
const EGG = doughId('egg')
const SHOP = shopWith({
  doughs: table([
    dough({ id: 'plain', order: 1, contains: ['wheat'] }),
    dough({ id: 'egg', order: 2, contains: ['wheat', 'egg', 'milk'] }),
    dough({ id: 'old', order: 3, contains: [], retired: true }),
  ]),
  toppings: table([
    { id: toppingId('seed'), name: 'Seed', order: 1, contains: ['sesame'], madeOf: [], retired: false } as const,
  ]),
  varieties: table([
    variety({ id: 'sesame', order: 1, toppingId: toppingId('seed') }),
    variety({ id: 'plain', order: 2, topping: 'none' }),
    variety({ id: 'cheese', order: 3, topping: 'after-flip', toppingId: toppingId('seed') }),
    variety({ id: 'focaccia', order: 4, bakedOn: 'pan', flip: false }),
    variety({ id: 'egg', order: 5, doughId: EGG, topping: 'none' }),
  ]),
})
const shop = () =>
  stateWith({ shop: SHOP, batches: [batch({ id: 'p', pieces: 200 }), batch({ id: 'e', dough: 'egg', pieces: 100 })] })
const dip = (state: State, of: typeof PLAIN, pieces: number, clock: string) =>
  play(state, { type: 'dip', doughId: of, varietyId: null, pieces }, { nowMs: at(clock) })
const care = (state: State, kind: 'change' | 'washBoards', clock: string, day = 0) =>
  play(state, { type: 'care', care: kind }, { nowMs: at(clock, day) })
const load = (state: State, shelf: string, some: ReturnType<typeof lines>, clock: string, id?: string) =>
  play(
    state,
    { type: 'load', shelfId: shelfId(shelf), plannedId: null, lines: some },
    { nowMs: at(clock), ...(id === undefined ? {} : { id }) },
  )
const kettle = (state: State) => contacts(state).kettle.map(({ name, pieces }) => [name, pieces])
const boards = (state: State) => contacts(state).boards.map(({ name, pieces }) => [name, pieces])

describe('what touched the kettle', () => {
  it('[K4] given two doughs boiled, one of them by a load that nobody dipped for, then both, in the order of the set-up', () => {
    const state = shop()
    dip(state, EGG, 12, '6:00')
    load(state, 's1', lines('sesame', 24), '6:10')
    expect(contacts(state).kettle).toEqual([
      { doughId: 'plain', varietyId: null, name: 'Plain', contains: ['wheat'], pieces: 24 },
      { doughId: 'egg', varietyId: null, name: 'Egg', contains: ['milk', 'egg', 'wheat'], pieces: 12 },
    ])
  })

  it('[K4] given the water changed, then nothing that is known; a wash of the boards changes no water', () => {
    const state = shop()
    dip(state, EGG, 12, '6:00')
    care(state, 'washBoards', '6:01')
    expect(kettle(state)).toEqual([['Egg', 12]])
    care(state, 'change', '6:02')
    expect(kettle(state)).toEqual([])
    dip(state, PLAIN, 24, '6:04')
    expect(kettle(state)).toEqual([['Plain', 24]])
  })

  it('[K4] given water that stands overnight, then yesterday is in it', () => {
    const state = shop()
    dip(state, EGG, 12, '6:00')
    play(state, { type: 'closeDay' }, { nowMs: at('15:00'), confirmed: ['line-not-empty'] })
    play(state, { type: 'openDay' }, { nowMs: at('4:00', 1), localDate: '2026-11-25' })
    expect(kettle(state)).toEqual([['Egg', 12]])
  })

  it('[K4] given a dip taken back after the water was changed, when as many are boiled again, then they touched it', () => {
    const state = shop()
    play(state, { type: 'dip', doughId: EGG, varietyId: null, pieces: 36 }, { nowMs: at('6:00'), id: 'dipegg0001' })
    care(state, 'change', '6:10')
    play(state, { type: 'takeBack', commandId: commandId('dipegg0001') }, { nowMs: at('6:20') })
    expect(kettle(state)).toEqual([])
    dip(state, EGG, 36, '6:25')
    expect(kettle(state)).toEqual([['Egg', 36]])
  })

  it('[K4] given a dip taken back after the water was changed, then none, not fewer', () => {
    const state = shop()
    play(state, { type: 'dip', doughId: EGG, varietyId: null, pieces: 12 }, { nowMs: at('6:00'), id: 'dip0000001' })
    care(state, 'change', '6:02')
    play(state, { type: 'takeBack', commandId: commandId('dip0000001') }, { nowMs: at('6:03') })
    expect(kettle(state)).toEqual([])
  })
})

describe('what a dough brings into the water', () => {
  it('[K5] given plain dough boiled, then egg dough brings egg and milk; wheat, which all contain, says nothing', () => {
    const state = shop()
    dip(state, PLAIN, 24, '6:00')
    expect(newToKettle(state, EGG)).toEqual(['milk', 'egg'])
    expect(newToKettle(state, PLAIN)).toEqual([])
  })

  it('[K5] given egg dough boiled already, then it brings nothing new until the water is changed', () => {
    const state = shop()
    dip(state, EGG, 12, '6:00')
    expect(newToKettle(state, EGG)).toEqual([])
    care(state, 'change', '6:10')
    expect(newToKettle(state, EGG)).toEqual(['milk', 'egg'])
  })

  it('[K5] given a dough or a set-up that is not there, then nothing', () => {
    expect(newToKettle(shop(), doughId('none'))).toEqual([])
    expect(newToKettle(stateWith({ shop: null }), EGG)).toEqual([])
    expect(contacts(stateWith({ shop: null }))).toEqual({ kettle: [], boards: [], trays: [], peel: [], stone: [] })
  })
})

describe('what touched the boards', () => {
  it('[K4] given a load, then each variety with what its dough and its topping contain; on a pan it touched none', () => {
    const state = shop()
    load(state, 's1', lines('sesame', 12, 'focaccia', 6, 'cheese', 6, 'egg', 6), '6:00')
    expect(contacts(state).boards).toEqual([
      { doughId: 'plain', varietyId: 'sesame', name: 'Sesame', contains: ['wheat', 'sesame'], pieces: 12 },
      // What goes on after the flip goes on after the boards.
      { doughId: 'plain', varietyId: 'cheese', name: 'Cheese', contains: ['wheat'], pieces: 6 },
      { doughId: 'egg', varietyId: 'egg', name: 'Egg', contains: ['milk', 'egg', 'wheat'], pieces: 6 },
    ])
  })

  it('[K4] given pieces that stand on boards, then they count already, and once when they are loaded', () => {
    const state = shop()
    play(state, { type: 'board', lines: lines('sesame', 12) }, { nowMs: at('6:00') })
    expect(boards(state)).toEqual([['Sesame', 12]])
    load(state, 's1', lines('sesame', 12), '6:05')
    expect(boards(state)).toEqual([['Sesame', 12]])
  })

  it('[K4] given the boards washed, then nothing that is known; a change of the water washes no boards', () => {
    const state = shop()
    load(state, 's1', lines('sesame', 12), '6:00')
    care(state, 'change', '6:20')
    expect(boards(state)).toEqual([['Sesame', 12]])
    care(state, 'washBoards', '6:21')
    expect(boards(state)).toEqual([])
  })

  it('[K4] given a load put right while it bakes, then what it was counts, and what it was not does not', () => {
    const state = shop()
    load(state, 's1', lines('sesame', 12, 'plain', 12), '6:00')
    const [inside] = state.loads.keys()
    if (inside === undefined) throw new Error('no load')
    play(state, { type: 'changeLoad', loadId: inside, lines: lines('plain', 24) }, { nowMs: at('6:01') })
    expect(boards(state)).toEqual([['Plain', 24]])
  })

  it('[K4] given pieces from the boards added to a load while it bakes, then they count once', () => {
    const state = shop()
    load(state, 's1', lines('plain', 12), '6:00')
    play(state, { type: 'board', lines: lines('sesame', 12) }, { nowMs: at('6:01') })
    const [inside] = state.loads.keys()
    if (inside === undefined) throw new Error('no load')
    play(state, { type: 'changeLoad', loadId: inside, lines: lines('plain', 12, 'sesame', 12) }, { nowMs: at('6:02') })
    expect(boards(state)).toEqual([
      ['Sesame', 12],
      ['Plain', 12],
    ])
  })

  it('[K4] given a load back onto boards, then its pieces count once', () => {
    const state = shop()
    load(state, 's1', lines('sesame', 12), '6:00')
    const [inside] = state.loads.keys()
    if (inside === undefined) throw new Error('no load')
    const back = { type: 'moveLoad', loadId: inside, from: 'first-side', to: 'boards', shelfId: shelfId('s1') } as const
    play(state, back, { nowMs: at('6:01') })
    expect(boards(state)).toEqual([['Sesame', 12]])
  })

  it('[K4] given a load taken back, then it touched nothing', () => {
    const state = shop()
    load(state, 's1', lines('sesame', 12), '6:00', 'load000001')
    play(state, { type: 'takeBack', commandId: commandId('load000001') }, { nowMs: at('6:01') })
    expect(boards(state)).toEqual([])
    expect(kettle(state)).toEqual([])
  })
})
