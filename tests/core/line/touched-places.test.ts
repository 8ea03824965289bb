import { describe, expect, it } from 'vitest'
import type { CareKind } from '../../../shared-core/day/said.ts'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, shelfId, toppingId } from '../../../shared-core/ids.ts'
import { CARE_OF, CONTACT_PLACES, contacts } from '../../../shared-core/line/contacts.ts'
import type { ContactPlace } from '../../../shared-core/live/plan.ts'
import { at, batch, lines, stateWith } from '../support/make.ts'
import { play } from '../support/play.ts'
import { dough, shopWith, table, variety } from '../support/shop.ts'

const topping = (id: string, contains: readonly ('sesame' | 'milk')[]) =>
  ({ id: toppingId(id), name: id, order: 1, contains, madeOf: [], retired: false }) as const
const SHOP = shopWith({
  doughs: table([dough({ id: 'plain', order: 1, contains: ['wheat'] })]),
  toppings: table([topping('seed', ['sesame']), topping('cheese', ['milk'])]),
  varieties: table([
    variety({ id: 'sesame', order: 1, toppingId: toppingId('seed') }),
    variety({ id: 'plain', order: 2, topping: 'none' }),
    variety({ id: 'cheese', order: 3, topping: 'after-flip', toppingId: toppingId('cheese') }),
    variety({ id: 'focaccia', order: 4, bakedOn: 'pan', flip: true, toppingId: toppingId('seed') }),
  ]),
})
const shop = () => stateWith({ shop: SHOP, batches: [batch({ id: 'p', pieces: 200 })] })
const MIXED = lines('sesame', 12, 'plain', 6, 'cheese', 6, 'focaccia', 6)

const load = (state: State, some = MIXED, clock = '6:00', id = 'load000001') => {
  play(state, { type: 'load', shelfId: shelfId('s1'), plannedId: null, lines: some }, { nowMs: at(clock), id })
  const [loadId] = state.loads.keys()
  if (loadId === undefined) throw new Error('no load')
  return loadId
}
const care = (state: State, kind: CareKind, clock: string, day = 0) =>
  play(state, { type: 'care', care: kind }, { nowMs: at(clock, day), id: `care${clock.replace(':', '')}00000${day}` })
const piecesAt = (state: State, place: ContactPlace) => contacts(state)[place].map(({ name, pieces }) => [name, pieces])

describe('what touched seed trays and peel', () => {
  it('[I6] given a load, then what has a topping touched the trays; a topping that comes later brings no dough there', () => {
    const state = shop()
    load(state)
    expect(contacts(state).trays).toMatchObject([
      { name: 'Sesame', pieces: 12, contains: ['wheat', 'sesame'] },
      { name: 'Cheese', pieces: 6, contains: ['milk'] },
      { name: 'Focaccia', pieces: 6, contains: ['wheat', 'sesame'] },
    ])
  })

  it('[I6] given pieces topped on boards, then they have touched the trays already, and the peel when they go in', () => {
    const state = shop()
    play(state, { type: 'board', lines: lines('sesame', 12, 'plain', 6) }, { nowMs: at('5:55') })
    expect(piecesAt(state, 'trays')).toEqual([['Sesame', 12]])
    expect(piecesAt(state, 'peel')).toEqual([])
    load(state, lines('sesame', 12, 'plain', 6))
    expect(piecesAt(state, 'trays')).toEqual([['Sesame', 12]])
    expect(piecesAt(state, 'peel')).toEqual([
      ['Sesame', 12],
      ['Plain', 6],
    ])
  })

  it('[I6] given a pan, then it touches trays, and neither peel nor stone', () => {
    const state = shop()
    const loadId = load(state, lines('focaccia', 6))
    play(state, { type: 'flip', loadId }, { nowMs: at('6:04') })
    expect(CONTACT_PLACES.map((place) => [place, piecesAt(state, place).length])).toEqual([
      ['kettle', 1],
      ['boards', 0],
      ['trays', 1],
      ['peel', 0],
      ['stone', 0],
    ])
  })
})

describe('what touched the stone', () => {
  it('[I7] given a load, then it lies on boards until the flip, and on the stone from then on', () => {
    const state = shop()
    const loadId = load(state)
    expect(piecesAt(state, 'stone')).toEqual([])
    play(state, { type: 'flip', loadId }, { nowMs: at('6:04') })
    expect(contacts(state).stone).toMatchObject([
      { name: 'Sesame', pieces: 12, contains: ['wheat', 'sesame'] },
      { name: 'Plain', pieces: 6, contains: ['wheat'] },
      { name: 'Cheese', pieces: 6, contains: ['milk', 'wheat'] },
    ])
  })

  it('[I7] given a flip that nobody tapped, then the out says that it was', () => {
    const state = shop()
    const loadId = load(state, lines('sesame', 12))
    play(state, { type: 'out', loadId, from: 'first-side', lines: null }, { nowMs: at('6:17') })
    expect(piecesAt(state, 'stone')).toEqual([['Sesame', 12]])
  })

  it('[I7] given a flip that was none, then it is counted off; flipped in earnest, it counts once', () => {
    const state = shop()
    const loadId = load(state, lines('sesame', 12))
    const move = (from: 'first-side' | 'second-side', clock: string, to: 'first-side' | 'second-side' | 'boards') =>
      play(
        state,
        { type: 'moveLoad', loadId, from, to, shelfId: shelfId('s1') },
        { nowMs: at(clock), id: `move${clock.replace(':', '')}00000` },
      )
    play(state, { type: 'flip', loadId }, { nowMs: at('6:03') })
    move('second-side', '6:04', 'first-side')
    expect(piecesAt(state, 'stone')).toEqual([])
    move('first-side', '6:05', 'second-side')
    expect(piecesAt(state, 'stone')).toEqual([['Sesame', 12]])
    move('second-side', '6:06', 'boards')
    expect([piecesAt(state, 'stone'), piecesAt(state, 'peel')]).toEqual([[], []])
  })

  it('[I7] given a flipped load put right, then what it was counts, and what it was not does not', () => {
    const state = shop()
    const loadId = load(state, lines('sesame', 12, 'plain', 12))
    play(state, { type: 'flip', loadId }, { nowMs: at('6:04') })
    play(state, { type: 'changeLoad', loadId, lines: lines('plain', 24) }, { nowMs: at('6:05') })
    expect(piecesAt(state, 'stone')).toEqual([['Plain', 24]])
    expect(piecesAt(state, 'peel')).toEqual([['Plain', 24]])
  })

  it('[I7] given a flip taken back, then it touched nothing', () => {
    const state = shop()
    const loadId = load(state, lines('sesame', 12))
    play(state, { type: 'flip', loadId }, { nowMs: at('6:04'), id: 'flip000001' })
    play(state, { type: 'takeBack', commandId: commandId('flip000001') }, { nowMs: at('6:05') })
    expect(piecesAt(state, 'stone')).toEqual([])
  })
})

describe('what ends a contact', () => {
  it.each(CONTACT_PLACES)('[I6] given the care of the place "%s", then it alone knows nothing any more', (place) => {
    const state = shop()
    const loadId = load(state)
    play(state, { type: 'flip', loadId }, { nowMs: at('6:04') })
    const known = () => CONTACT_PLACES.filter((one) => contacts(state)[one].length > 0)
    expect(known()).toEqual(CONTACT_PLACES)
    care(state, CARE_OF[place], '6:05')
    expect(known()).toEqual(CONTACT_PLACES.filter((one) => one !== place))
  })

  it('[I6] given a night between, then yesterday is still there', () => {
    const state = shop()
    const loadId = load(state, lines('sesame', 12))
    play(state, { type: 'out', loadId, from: 'first-side', lines: null }, { nowMs: at('6:17') })
    play(state, { type: 'closeDay' }, { nowMs: at('15:00'), confirmed: ['line-not-empty'] })
    play(state, { type: 'openDay' }, { nowMs: at('4:00', 1), localDate: '2026-11-25' })
    for (const place of ['trays', 'peel', 'stone'] as const) expect(piecesAt(state, place)).toEqual([['Sesame', 12]])
    care(state, 'sweepStone', '4:10', 1)
    expect(piecesAt(state, 'stone')).toEqual([])
  })
})
