import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { shelfId } from '../../../shared-core/ids.ts'
import { expectedLoads, plannedAhead, plannedForShelf } from '../../../shared-core/line/planned.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, lines, load, loadOf, planned, stateWith, until } from '../support/make.ts'
import { dwell, shelf, shopWith, table, variety } from '../support/shop.ts'

const p = (id: string, order: number, more: Omit<Parameters<typeof planned>[0], 'id' | 'order'> = {}) =>
  planned({ id, order, ...more })
const forShelves = (state: State, ...shelves: readonly string[]) =>
  shelves.map((one) => plannedForShelf(state, shelfId(one))?.id ?? null)
/** "p1 s1 6:00 free": where and when each planned load is expected. */
const expected = (state: State, clock = '6:47') =>
  expectedLoads(state, at(clock)).map((one) => [one.planned.id, one.shelf.id, one.inAtMs, one.open])

describe('planned loads', () => {
  it.each([
    ['by the list', [p('a', 2), p('b', 1)], ['b', 'a']],
    ['by time before the list', [p('a', 1, { inAt: at('8:00') }), p('b', 2, { inAt: at('7:00') })], ['b', 'a']],
    [
      'one without a time after the one before it',
      [p('a', 1, { inAt: at('7:00') }), p('b', 2), p('c', 3, { inAt: at('6:50') })],
      ['c', 'a', 'b'],
    ],
    ['one without a time first when nothing is before it', [p('a', 1), p('b', 2, { inAt: at('6:00') })], ['a', 'b']],
    ['what is done is left out', [p('a', 1, { done: true }), p('b', 2)], ['b']],
    ['by id when all else is equal', [p('b', 1), p('a', 1)], ['a', 'b']],
  ])('[L38] given several, then they stand %s', (_how, all, ids) => {
    expect(plannedAhead(stateWith({ planned: all })).map((one) => one.id)).toEqual(ids)
  })

  it.each([
    ['any shelf: one each', [p('a', 1), p('b', 2)], ['a', 'b', null]],
    ['one by name: it goes there', [p('a', 1, { shelf: 's3' }), p('b', 2)], ['b', null, 'a']],
    ['a shelf asked for by name is left to that load', [p('a', 1), p('b', 2, { shelf: 's1' })], ['b', 'a', null]],
    ['a shelf that the set-up does not have: any shelf', [p('a', 1, { shelf: 'gone' })], ['a', null, null]],
    ['two for one shelf: the sooner', [p('a', 2, { shelf: 's2' }), p('b', 1, { shelf: 's2' })], [null, 'b', null]],
  ])('[L25] given %s, then each shelf takes its own', (_what, all, ids) => {
    expect(forShelves(stateWith({ planned: all }), 's1', 's2', 's3')).toEqual(ids)
  })

  it('[L25] given a shelf that is taken, then the load goes where there is room, whatever comes free soon', () => {
    const state = stateWith({ planned: [p('a', 1)], loads: [load({ shelf: 's1' })] })
    expect(forShelves(state, 's1', 's2')).toEqual([null, 'a'])
  })

  it('[L25] given a rotating oven, then a load for any shelf falls to the next one at the door', () => {
    const shop = shopWith({ oven: { kind: 'rotating', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null } })
    const s2 = { touchedAtMs: at('6:40'), boardsFreed: 0, boardsWetAtMs: at('6:45') }
    expect(forShelves(stateWith({ shop, planned: [p('a', 1), p('b', 2)], shelves: { s2 } }), 's1', 's2', 's3')).toEqual(
      [null, 'a', 'b'],
    )
  })

  it('[L25] given a retired shelf, then nothing falls to it, not even by name', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's1', retired: true }), shelf({ id: 's2', order: 2 })]) })
    expect(forShelves(stateWith({ shop, planned: [p('a', 1, { shelf: 's1' })] }), 's1', 's2')).toEqual([null, 'a'])
  })

  it('[L25] given a retired shelf with a load on it, then nothing falls to it either', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's1', retired: true }), shelf({ id: 's2', order: 2 })]) })
    const state = stateWith({ shop, loads: [load()], planned: [p('a', 1, { shelf: 's1' }), p('b', 2)] })
    expect(expected(state).map(([, on]) => on)).toEqual(['s2', 's2'])
  })

  it('[L25] given a shelf that was asked for by name and two that come free at once, then the turn decides again', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's1' }), shelf({ id: 's2', order: 2 })]) })
    const state = stateWith({ shop, planned: [p('a', 1, { shelf: 's1' }), p('b', 2), p('c', 3)] })
    expect(expected(state).map(([id, on]) => [id, on])).toEqual([
      ['a', 's1'],
      ['b', 's2'],
      ['c', 's1'],
    ])
  })

  it('[L39] given a full oven, then loads follow each other by out, handling and bake', () => {
    const s2 = { touchedAtMs: at('6:30'), boardsFreed: 0, boardsWetAtMs: at('6:35') }
    const shop = shopWith({ shelves: table([shelf({ id: 's1' }), shelf({ id: 's2', order: 2 })]) })
    const state = stateWith({ shop, planned: [p('a', 1), p('b', 2), p('c', 3)], loads: [load()], shelves: { s2 } })
    expect(expected(state)).toEqual([
      ['a', 's2', at('6:31'), true], // free since its last touch and the handling
      ['b', 's1', at('6:57'), false], // out at 6:56, a minute of handling
      ['c', 's2', at('7:04'), false], // if loaded now, 16 min of bake and a minute of handling
    ])
  })

  it('[L39] given an out that is late, then what follows moves on with the clock', () => {
    const shop = shopWith({ shelves: table([shelf({ id: 's1' })]) })
    const state = stateWith({ shop, planned: [p('a', 1)], loads: [load()] })
    expect(expected(state, '7:10')).toEqual([['a', 's1', at('7:11'), false]])
  })

  it('[L39] given a planned time, then the load goes in no sooner', () => {
    expect(expected(stateWith({ planned: [p('a', 1, { inAt: at('8:00') })] }))).toEqual([['a', 's1', at('8:00'), true]])
  })

  it('[L39] given a hearth, then loads go in while there is room and wait for the outs that make it', () => {
    const shop = shopWith({
      oven: { kind: 'hearth', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
      shelves: table([shelf({ id: 'floor', floorBoards: 12, pieces: 72 })]),
    })
    const on = loadOf({ shelf: 'floor' }, lines('sesame', 36)) // 6 of 12 boards, out at 6:56
    const all = [p('a', 1, { lines: lines('poppy', 36) }), p('b', 2, { lines: lines('plain', 24) })]
    expect(expected(stateWith({ shop, loaded: [on], planned: all }))).toEqual([
      ['a', 'floor', at('4:00'), true], // room since the day was opened
      ['b', 'floor', at('6:57'), false],
    ])
  })

  it('[L39] given a hearth with room for two loads, then one is open at a time', () => {
    const shop = shopWith({
      oven: { kind: 'hearth', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
      shelves: table([shelf({ id: 'floor', floorBoards: 12, pieces: 72 })]),
    })
    const small = { lines: lines('poppy', 24) }
    const state = stateWith({ shop, planned: [p('a', 1, small), p('b', 2, small)] })
    expect(expected(state).map(([id, , , open]) => [id, open])).toEqual([
      ['a', true],
      ['b', false],
    ])
  })

  it('[L39] given a hearth whose loads come out in another order than they went in, then the first out makes room', () => {
    const shop = shopWith({
      oven: { kind: 'hearth', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
      shelves: table([shelf({ id: 'floor', floorBoards: 12, pieces: 72 })]),
      varieties: table([
        variety({ id: 'slow', windows: { bake: dwell(30, 40, 50, 'min') } }),
        variety({ id: 'quick', order: 2 }),
      ]),
    })
    const slow = loadOf({ id: 'a', shelf: 'floor', out: until('7:08', '7:10', '7:12') }, lines('slow', 36), shop)
    const quick = loadOf({ id: 'b', shelf: 'floor' }, lines('quick', 36), shop) // out at 6:56
    const one = planned({ lines: lines('quick', 36) })
    expect(expected(stateWith({ shop, loaded: [slow, quick], planned: [one] }))[0]?.[2]).toBe(at('6:57'))
    const all = [
      p('a', 1, { lines: lines('slow', 36) }),
      p('b', 2, { lines: lines('quick', 36) }),
      p('c', 3, { lines: lines('quick', 36) }),
    ]
    expect(expected(stateWith({ shop, planned: all })).at(-1)?.[2]).toBe(at('7:04')) // 16 min of bake from now, handling
  })

  it('[L39] given a load larger than the whole floor, then it waits for all of the floor and what follows for it', () => {
    const shop = shopWith({
      oven: { kind: 'hearth', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
      shelves: table([shelf({ id: 'floor', floorBoards: 12, pieces: 72 })]),
    })
    const on = loadOf({ shelf: 'floor' }, lines('sesame', 6)) // out at 6:56
    const all = [p('a', 1, { lines: lines('poppy', 96) }), p('b', 2, { lines: lines('poppy', 6) })]
    expect(expected(stateWith({ shop, loaded: [on], planned: all }))).toEqual([
      ['a', 'floor', at('6:57'), false],
      ['b', 'floor', at('7:14'), false],
    ])
  })

  it('[L39] given no set-up or no shelf in use, then nothing is expected', () => {
    expect(expected(stateWith({ shop: null, planned: [p('a', 1)] }))).toEqual([])
    expect(expected(stateWith({ shop: shopWith({ shelves: table([]) }), planned: [p('a', 1)] }))).toEqual([])
  })
})
