import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import type { Rod } from '../../../shared-core/stock/left.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import { at, batch, lines, load, loadOf, lot, planned, stateWith, stock } from '../support/make.ts'
import { shopWith, table, variety } from '../support/shop.ts'

const rod = (state: State, id: string, clock = '6:47'): Rod => {
  const found = rods(state, at(clock)).find((one) => one.varietyId === id)
  if (found === undefined) throw new Error(`no rod ${id}`)
  return found
}
const coming = (state: State, id: string, clock = '6:47') =>
  rod(state, id, clock).onTheWay.map((one) => [one.pieces, one.readyAtMs, one.from])

describe('rods', () => {
  it('[S20] given a shop, then each variety has a rod in the order of the set-up', () => {
    expect(rods(stateWith(), at('6:47')).map((one) => one.name)).toEqual([
      'Sesame',
      'Poppy',
      'Plain',
      'Focaccia',
      'Cheddar',
      'Rye',
    ])
    expect(rods(stateWith({ shop: null }), at('6:47'))).toEqual([])
  })

  it.each([
    ['none of it', [], ['sesame']],
    ['some for sale', [{ lots: [lot()] }], ['old', 'sesame']],
    ['some kept', [{ kept: 3 }], ['old', 'sesame']],
  ])('[S20] given a retired variety and %s, then its rod stands as long as there are pieces', (_what, known, ids) => {
    const shop = shopWith({
      varieties: table([variety({ id: 'old', retired: true }), variety({ id: 'sesame', order: 2 })]),
    })
    const state = stateWith({ shop, stock: known.map((parts) => stock('old', parts, shop)) })
    expect(rods(state, at('6:47')).map((one) => one.varietyId)).toEqual(ids)
  })

  it('[S21] given lots that are ready, one that cools and some kept, then each is told apart', () => {
    const lots = [
      lot({ id: '1', pieces: 12 }),
      lot({ id: '2', pieces: 7, readyAt: at('6:47') }),
      lot({ id: '3', pieces: 24, readyAt: at('6:50') }),
    ]
    const state = stateWith({ stock: [stock('sesame', { lots, kept: 6, soldToday: 13 })] })
    expect(rod(state, 'sesame')).toMatchObject({ forSale: 19, cooling: 24, kept: 6, soldToday: 13, goneSinceMs: null })
    expect(rod(state, 'sesame', '6:50')).toMatchObject({ forSale: 43, cooling: 0 })
  })

  it('[S21] given none left, then it says since when', () => {
    const state = stateWith({ stock: [stock('sesame', { goneSinceMs: at('6:30') })] })
    expect(rod(state, 'sesame')).toMatchObject({ forSale: 0, goneSinceMs: at('6:30'), goneAtMs: null })
  })
})

describe('what is on the way', () => {
  it('[S22] given pieces cooling, in the oven, on boards and planned, then each is told once with its time', () => {
    const used = { touchedAtMs: at('6:46'), boardsFreed: 0, boardsWetAtMs: at('6:46') }
    const state = stateWith({
      stock: [stock('sesame', { lots: [lot({ pieces: 6, readyAt: at('6:52') })] })],
      loaded: [loadOf({ shelf: 's1' }, lines('sesame', 24, 'poppy', 24))],
      batches: [batch({ stage: 'boards', variety: 'sesame', pieces: 30 })],
      planned: [planned({ lines: lines('sesame', 36) })],
      shelves: { s2: used, s3: used },
    })
    expect(coming(state, 'sesame')).toEqual([
      [6, at('6:52'), 'cooling'],
      [24, at('7:11'), 'oven'], // out at 6:56, 15 min to cool
      [30, at('7:18'), 'boards'], // in at 6:47, 16 min of bake, 15 min to cool
      [6, at('7:18'), 'planned'],
    ])
    expect(coming(state, 'poppy')).toEqual([[24, at('7:11'), 'oven']])
    expect(coming(state, 'plain')).toEqual([])
  })

  it('[S22] given an out that is late, then it counts from now', () => {
    const state = stateWith({ loaded: [loadOf({}, lines('sesame', 24))] })
    expect(coming(state, 'sesame', '7:05')).toEqual([[24, at('7:20'), 'oven']])
  })

  it('[S22] given two loads that are ready within a minute, then they are one, at the later time', () => {
    const out = (clock: string) => ({ earliestAtMs: at(clock), targetAtMs: at(clock), latestAtMs: at(clock) })
    const a = loadOf({ id: 'a', shelf: 's1', out: out('6:56:10') }, lines('sesame', 24))
    const b = loadOf({ id: 'b', shelf: 's2', out: out('6:56:50') }, lines('sesame', 12))
    const c = loadOf({ id: 'c', shelf: 's3', out: out('6:57:00') }, lines('sesame', 6))
    expect(coming(stateWith({ loaded: [a, b, c] }), 'sesame')).toEqual([
      [36, at('7:11:50'), 'oven'],
      [6, at('7:12'), 'oven'],
    ])
  })

  it('[S22] given topped pieces on boards that no load takes, then they count as if they went in now; plain dough does not', () => {
    const batches = [batch({ stage: 'boards', variety: 'poppy', pieces: 12 }), batch({ id: 'x', stage: 'boards' })]
    expect(coming(stateWith({ batches }), 'poppy')).toEqual([[12, at('7:18'), 'boards']])
    expect(coming(stateWith({ batches }), 'sesame')).toEqual([])
  })

  it('[S22] given plain dough on boards that a planned load takes, then it counts as what it becomes', () => {
    const batches = [batch({ stage: 'boards', pieces: 36 })]
    const state = stateWith({ batches, planned: [planned({ inAt: at('7:00'), lines: lines('poppy', 48) })] })
    expect(coming(state, 'poppy')).toEqual([
      [36, at('7:31'), 'boards'],
      [12, at('7:31'), 'planned'],
    ])
  })

  it('[S22] given all of a planned load on boards, then nothing of it is told as dough', () => {
    const batches = [batch({ stage: 'boards', pieces: 36 })]
    const state = stateWith({ batches, planned: [planned({ inAt: at('7:00'), lines: lines('poppy', 36) })] })
    expect(coming(state, 'poppy')).toEqual([[36, at('7:31'), 'boards']])
  })

  it('[S22] given pieces kept, then they are not on the way again', () => {
    expect(coming(stateWith({ stock: [stock('sesame', { kept: 12 })] }), 'sesame')).toEqual([])
  })

  it('[S22] given a load without a bake window, then it counts from now', () => {
    const state = stateWith({
      loads: [load({ out: null })],
      batches: [batch({ stage: 'oven', load: 'l1', variety: 'rye', dough: 'rye' })],
    })
    expect(coming(state, 'rye')).toEqual([[36, at('7:02'), 'oven']])
  })
})

describe('how it is known', () => {
  const counted = { atMs: at('8:40'), pieces: 15, within: 0 }
  const out = (clock: string) => [lot({ outAt: at(clock), readyAt: at(clock) })]
  const sold = (clock: string, pieces = 3) => [{ fromMs: at(clock), pieces }]

  it.each([
    ['nothing', {}, { how: 'nothing', atMs: null }],
    ['a count', { counted }, { how: 'counted', atMs: at('8:40') }],
    ['a bake after the count', { counted, lots: out('8:50') }, { how: 'baked', atMs: at('8:50') }],
    ['two bakes', { lots: [...out('8:30'), ...out('8:50')] }, { how: 'baked', atMs: at('8:50') }],
    ['a bake before the count', { counted, lots: out('8:30') }, { how: 'counted', atMs: at('8:40') }],
    ['a sale after both', { counted, lots: out('8:30'), pace: sold('8:45') }, { how: 'sold', atMs: at('8:45') }],
    ['a sale in the quarter of the count', { counted, pace: sold('8:30') }, { how: 'counted', atMs: at('8:40') }],
    ['a quarter without a sale', { counted, pace: sold('8:45', 0) }, { how: 'counted', atMs: at('8:40') }],
    ['a count and a bake at once', { counted, lots: out('8:40') }, { how: 'counted', atMs: at('8:40') }],
  ])('[S23] given %s, then the rod says so', (_what, parts, known) => {
    expect(rod(stateWith({ stock: [stock('sesame', parts)] }), 'sesame', '9:00').known).toEqual(known)
  })
})
