import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import type { ShelfKey } from '../../../shared-core/line/shelf-keys.ts'
import { shelfKeys } from '../../../shared-core/line/shelf-keys.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, batch, lines, load, loadOf, planned, stateWith, until } from '../support/make.ts'
import { ALL_STATIONS, shelf, shopWith, station, table } from '../support/shop.ts'

const HEARTH = shopWith({
  oven: { kind: 'hearth', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
  shelves: table([shelf({ id: 'floor', floorBoards: 12, pieces: 72 })]),
})
const told = (state: State, clock = '6:47') =>
  shelfKeys(state, at(clock)).map((key) => [key.act, key.shelfId, key.loadId ?? key.plannedId])
const first = (state: State, clock = '6:47'): ShelfKey => {
  const [key] = shelfKeys(state, at(clock))
  if (key === undefined) throw new Error('no key')
  return key
}

describe('one key for each shelf', () => {
  it('[L30] given a shelf to load, one to flip and one to take out, then three keys in the order of the set-up', () => {
    const state = stateWith({
      loads: [
        load({ id: 'y', shelf: 's3', phase: 'second-side', flippedAt: at('6:43') }),
        load({ id: 'x', shelf: 's2' }),
      ],
      planned: [planned()],
    })
    expect(told(state)).toEqual([
      ['load', 's1', 'p1'],
      ['flip', 's2', 'x'],
      ['out', 's3', 'y'],
    ])
  })

  it('[L30] given a hearth, then a key for each load, oldest first, and one that loads while there is room', () => {
    const a = loadOf({ id: 'a', shelf: 'floor', loadedAt: at('6:44') }, lines('sesame', 24))
    const b = loadOf({ id: 'b', shelf: 'floor', loadedAt: at('6:40') }, lines('poppy', 24))
    const state = stateWith({ shop: HEARTH, loaded: [a, b], planned: [planned({ lines: lines('plain', 24) })] })
    expect(told(state)).toEqual([
      ['flip', 'floor', 'b'],
      ['flip', 'floor', 'a'],
      ['load', 'floor', 'p1'],
    ])
    const full = loadOf({ id: 'c', shelf: 'floor', loadedAt: at('6:45') }, lines('plain', 24))
    expect(told(stateWith({ shop: HEARTH, loaded: [a, b, full] })).map(([act]) => act)).toEqual([
      'flip',
      'flip',
      'flip',
    ])
  })

  it('[L30] given a load of which some came out, then its key shows the rest and the floor is free again', () => {
    const part = loadOf({ id: 'a', shelf: 'floor', phase: 'second-side' }, lines('sesame', 6))
    const state = stateWith({ shop: HEARTH, loaded: [part], planned: [planned({ lines: lines('plain', 66) })] })
    expect(first(state).lines).toEqual(lines('sesame', 6))
    expect(shelfKeys(state, at('6:47'))[1]).toMatchObject({ act: 'load', over: false })
  })

  it('[L30] given a retired shelf with a load on it, then its key stays until the out', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's1', retired: true })]) })
    expect(told(stateWith({ shop, loads: [load()] }))).toEqual([['flip', 's1', 'l1']])
    expect(told(stateWith({ shop }))).toEqual([])
  })

  it('[L30] given a retired hearth with a load on it, then it is emptied and not loaded again', () => {
    const shelves = table([shelf({ id: 'floor', floorBoards: 12, pieces: 72, retired: true })])
    const on = loadOf({ shelf: 'floor' }, lines('sesame', 6))
    expect(told(stateWith({ shop: { ...HEARTH, shelves }, loaded: [on] })).map(([act]) => act)).toEqual(['flip'])
  })

  it('[L30] given no set-up, then there are no keys', () => {
    expect(told(stateWith({ shop: null }))).toEqual([])
  })
})

describe('what a key says', () => {
  it('[L31] given a planned load, then its contents are presumed and its time is shown', () => {
    const state = stateWith({ planned: [planned({ inAt: at('6:50'), lines: lines('sesame', 36, 'cheddar', 12) })] })
    expect(first(state)).toEqual({
      shelfId: 's1',
      shelfName: '1',
      loadId: null,
      act: 'load',
      atMs: at('6:50'),
      latestAtMs: null,
      startedAtMs: null,
      status: 'coming',
      lines: lines('sesame', 36, 'cheddar', 12),
      pieces: 48,
      plannedId: 'p1',
      toppingAfterFlip: ['cheddar'],
      over: false,
      atDoor: false,
      isOver: false,
      tooEarlyUntilMs: null,
    })
  })

  it('[L31] given nothing planned, then the key loads what one says', () => {
    expect(first(stateWith())).toMatchObject({ act: 'load', atMs: null, status: 'coming', lines: [], plannedId: null })
  })

  it('[L24] given stations that tap the boil and dough that is not on boards, then the key shows the load without calling', () => {
    const state = stateWith({ shop: shopWith({ stations: table(ALL_STATIONS) }), planned: [planned()] })
    expect(first(state)).toMatchObject({ act: 'load', atMs: null, status: 'coming', lines: lines('sesame', 48) })
  })

  it('[L24] given its dough on boards too long, then the load is late', () => {
    const boards = batch({ stage: 'boards', variety: 'sesame', pieces: 48, until: until('6:36', '6:38', '6:44') })
    expect(first(stateWith({ planned: [planned()], batches: [boards] }))).toMatchObject({
      status: 'late',
      latestAtMs: at('6:44'),
    })
  })

  it.each([
    ['6:42', 'coming', at('6:43')],
    ['6:43', 'coming', null],
    ['6:44', 'due', null],
    ['6:46', 'late', null],
  ])('[L22] given a flip 6:43–6:43:30–6:45, when it is %s, then its key is %s', (clock, status, tooEarlyUntilMs) => {
    expect(first(stateWith({ loads: [load()] }), clock)).toMatchObject({
      status,
      tooEarlyUntilMs,
      atMs: at('6:43:30'),
      startedAtMs: at('6:40'),
    })
  })

  it('[L22] given a load on its second side, then the ring to the out begins at the flip', () => {
    const state = stateWith({ loads: [load({ phase: 'second-side', flippedAt: at('6:44') })] })
    expect(first(state)).toMatchObject({ act: 'out', startedAtMs: at('6:44'), atMs: at('6:56') })
  })

  it('[L23] given nobody who taps flips, then a load goes straight to its out', () => {
    const shop = shopWith({ stations: table([station('oven', ['load', 'out'])]) })
    expect(told(stateWith({ shop, loads: [load()] }))[0]).toEqual(['out', 's1', 'l1'])
  })

  it('[L23] given a load without a bake window, then its key takes it out without a time', () => {
    expect(first(stateWith({ loads: [load({ flip: null, out: null })] }))).toMatchObject({ act: 'out', atMs: null })
  })

  it.each([
    [48, false],
    [49, true],
  ])('[L31] given %i pieces planned for a shelf of 48, then more than fits is %s', (pieces, over) => {
    expect(first(stateWith({ planned: [planned({ lines: lines('sesame', pieces) })] })).over).toBe(over)
    expect(first(stateWith({ loaded: [loadOf({}, lines('sesame', pieces))] })).over).toBe(over)
  })

  it.each([
    [36, false],
    [37, true],
  ])('[L31] given half a hearth taken and %i pieces planned, then more than fits is %s', (pieces, over) => {
    const half = loadOf({ shelf: 'floor' }, lines('sesame', 36))
    const state = stateWith({ shop: HEARTH, loaded: [half], planned: [planned({ lines: lines('poppy', pieces) })] })
    expect(shelfKeys(state, at('6:47'))[1]?.over).toBe(over)
  })

  it.each([
    [72, false],
    [73, true],
  ])('[L31] given %i pieces on a hearth of 12 boards, then more than fits is %s', (pieces, over) => {
    const state = stateWith({ shop: HEARTH, loaded: [loadOf({ shelf: 'floor' }, lines('sesame', pieces))] })
    expect(first(state).over).toBe(over)
  })

  it('[L34] given a rotating oven, then the shelf touched last stands at the door', () => {
    const shop = shopWith({ oven: { kind: 'rotating', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null } })
    const s2 = { touchedAtMs: at('6:40'), boardsFreed: 0, boardsWetAtMs: at('6:40') }
    const keys = shelfKeys(stateWith({ shop, shelves: { s2 } }), at('6:47'))
    expect(keys.map((key) => key.atDoor)).toEqual([false, true, false])
  })
})
