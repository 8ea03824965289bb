import { describe, expect, it } from 'vitest'
import { actOfShelf } from '../../client/bench/act-of-shelf.ts'
import { shelfViews, unconfirmedPlaces } from '../../client/bench/shelf-view.ts'
import type { State } from '../../shared-core/day/state.ts'
import { commandId, deviceId, loadId, shelfId } from '../../shared-core/ids.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { askedItem, orderShop, slip } from '../core/orders/order-makers.ts'
import type { StateParts } from '../core/support/make.ts'
import { at, lines, loadOf, planned, stateWith } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { shelf, shopWith, table } from '../core/support/shop.ts'
import { wordsOf } from './support.ts'

const NONE: ReadonlySet<never> = new Set()

function views(state: State, nowMs: EpochMs = at('6:41')) {
  return shelfViews({ state, plan: null, nowMs, words: wordsOf(state.shop ?? shopWith()), unconfirmed: NONE })
}

/** The shelf's one key when a load of 36 sesame and 12 poppy stands there since 6:40. */
function keyAt(nowMs: EpochMs, parts: Parameters<typeof loadOf>[0] = {}) {
  const [view] = views(stateWith({ loaded: [loadOf(parts, lines('sesame', 36, 'poppy', 12))] }), nowMs)
  if (view === undefined) throw new Error('no key')
  return view
}

describe('[B1] given one key a shelf', () => {
  it.each([
    ['its first side counts', at('6:42:50'), {}, 'Flip 1', 'in 40 s', 'plain', 'running'],
    ['the flip is due', at('6:43:40'), {}, 'Flip 1', 'now', 'act', 'act'],
    ['the flip is late', at('6:47'), {}, 'Flip 1', '3 min late', 'late', 'late'],
    [
      'its second side counts',
      at('6:50'),
      { phase: 'second-side', flippedAt: at('6:43:30') },
      'Out of 1',
      'in 6 min',
      'plain',
      'running',
    ],
    [
      'the out is due',
      at('6:56:30'),
      { phase: 'second-side', flippedAt: at('6:43:30') },
      'Out of 1',
      'now',
      'act',
      'act',
    ],
  ] as const)('when %s, then it says so', (_case, nowMs, parts, what, when, tone, ring) => {
    const view = keyAt(nowMs, parts)
    expect([view.what, view.when, view.tone, view.ring.state]).toEqual([what, when, tone, ring])
    expect(view.contents).toEqual(['Sesame 36', 'Poppy 12'])
  })

  it('when its ring empties, then by what is left of the side', () => {
    expect(keyAt(at('6:41:45')).ring.fraction).toBeCloseTo(0.5)
    expect(keyAt(at('6:49:45'), { phase: 'second-side', flippedAt: at('6:43:30') }).ring.fraction).toBeCloseTo(0.5)
  })

  it('when a load is planned, then it presumes it, and a touch loads just that', () => {
    const load = planned({ id: 'p7', shelf: 's2', lines: lines('poppy', 24) })
    const state = stateWith({ planned: [load] })
    const view = views(state)[1]
    expect(view?.what).toBe('Load 2')
    expect(view?.contents).toEqual(['Poppy 24'])
    expect(view && actOfShelf(state, view.key)).toEqual({
      type: 'load',
      shelfId: 's2',
      plannedId: 'p7',
      lines: load.lines,
    })
  })

  it('when nothing is planned, then it asks what, and a touch alone loads nothing', () => {
    const state = stateWith()
    const [view] = views(state)
    expect(view?.contents).toEqual(['choose what'])
    expect(view && actOfShelf(state, view.key)).toBeNull()
  })

  it('when its shelf is done with bagels, then it says so and asks for nothing', () => {
    const state = stateWith()
    play(state, { type: 'changeOverShelf', shelfId: shelfId('s1'), to: 'secondMenu' }, { nowMs: at('10:51') })
    const [done, other] = views(state, at('10:52'))
    expect([done?.contents, other?.contents]).toEqual([['Done with bagels'], ['choose what']])
  })

  it('when the second menu bakes on it, then it says for which orders', () => {
    const state = stateWith({ shop: orderShop() })
    play(state, { type: 'changeOverShelf', shelfId: shelfId('s1'), to: 'secondMenu' }, { nowMs: at('10:51') })
    play(state, slip(askedItem('flatbread', { times: 2 })), { nowMs: at('10:52') })
    const parts = [...state.orders.keys()].flatMap((orderId) => [1, 2].map((no) => ({ orderId, no, step: 1 })))
    play(state, { type: 'moveItems', parts, to: 'begun', shelfId: shelfId('s1') }, { nowMs: at('10:53') })
    expect(views(state, at('10:54'))[0]?.contents).toEqual(['bakes for 1'])
  })

  it('when touched through, then it flips and then takes out by what it showed', () => {
    const first = stateWith({ loaded: [loadOf({}, lines('sesame', 36))] })
    const [flips] = views(first)
    expect(flips && actOfShelf(first, flips.key)).toEqual({ type: 'flip', loadId: 'l1' })
    const second = stateWith({ loaded: [loadOf({ phase: 'second-side' }, lines('sesame', 36))] })
    const [outs] = views(second)
    const out = { type: 'out', loadId: 'l1', from: 'second-side', lines: null }
    expect(outs && actOfShelf(second, outs.key)).toEqual(out)
  })
})

describe('given what else must be known of a shelf', () => {
  it('when it is fuller than it takes, then that is said first', () => {
    const state = stateWith({ loaded: [loadOf({}, lines('cheddar', 60))] })
    expect(views(state)[0]?.notes).toEqual(['more than the shelf takes', 'then top: Cheddar'])
  })

  it.each([
    ['before the flip', {}, at('6:43'), ['then top: Cheddar']],
    ['just flipped', { phase: 'second-side', flippedAt: at('6:43:30') }, at('6:44'), ['top Cheddar now']],
    ['a minute after the flip', { phase: 'second-side', flippedAt: at('6:43:30') }, at('6:44:30'), []],
  ] as const)('when something is topped after the flip and it is %s, then it says so', (_case, parts, nowMs, notes) => {
    expect(views(stateWith({ loaded: [loadOf(parts, lines('cheddar', 24))] }), nowMs)[0]?.notes).toEqual(notes)
  })

  it('when an oven turns, then its keys keep their places and the mark of the door moves', () => {
    const shop = shopWith({ oven: { ...shopWith().oven, kind: 'rotating' } })
    const used = { touchedAtMs: at('6:30'), boardsFreed: 0, boardsWetAtMs: at('6:30') }
    const keys = views(stateWith({ shop, shelves: { s2: used } }))
    expect(keys.map((view) => view.key.shelfName)).toEqual(['1', '2', '3'])
    expect(keys.map((view) => view.notes)).toEqual([[], ['at the door'], []])
  })

  it('when a hearth holds two loads, then it has a key for each, named by what is in it, and one to load', () => {
    const shop = shopWith({
      oven: { ...shopWith().oven, kind: 'hearth' },
      shelves: table([shelf({ id: 'floor', name: 'floor', floorBoards: 20 })]),
    })
    const loaded = [
      loadOf({ id: 'a', shelf: 'floor', phase: 'second-side' }, lines('sesame', 36, 'plain', 6)),
      loadOf({ id: 'b', shelf: 'floor', loadedAt: at('6:41') }, lines('poppy', 24)),
    ]
    const keys = views(stateWith({ shop, loaded }))
    expect(keys[0]?.contents).toEqual(['Plain 6'])
    expect(keys.map((view) => view.what)).toEqual(['Out Sesame 36', 'Flip Poppy 24', 'Load floor'])
  })
})

describe('[B6] given a tap that is not answered', () => {
  const tapped = (type: string, parts: StateParts, loads: readonly string[]) => {
    const state = stateWith(parts)
    const touched = loads.map((id) => ({ table: 'loads', id, before: null }) as const)
    const told = { type, shelfId: shelfId('s1') }
    const trace = {
      commandId: commandId('c1'),
      deviceId: deviceId('d'),
      seq: 2,
      atMs: at('6:40'),
      told,
      touched,
      booked: [],
      touches: [],
    }
    return { ...state, traces: [trace] }
  }
  const pending = [
    {
      command: { id: commandId('c1'), deviceSeq: 1, tappedAtMs: at('6:40'), type: 'flip', loadId: loadId('l1') },
      guess: 'taken',
    },
  ] as const
  const loaded = { loaded: [loadOf({}, lines('sesame', 36))] }

  it.each([
    ['there is no contact', at('6:40'), false, ['l1']],
    ['an answer is overdue', at('6:40:03'), true, ['l1']],
    ['an answer may still come', at('6:40:01'), true, []],
  ])('when %s, then its load is marked or not', (_case, nowMs, isLinked, marked) => {
    const state = tapped('flip', loaded, ['l1'])
    expect([...unconfirmedPlaces(state, pending, { nowMs, isLinked })]).toEqual(marked)
  })

  it('when the load has gone, then its shelf is marked', () => {
    const state = tapped('out', {}, ['l1'])
    const places = unconfirmedPlaces(state, pending, { nowMs: at('6:41'), isLinked: false })
    const [first, second] = shelfViews({ state, plan: null, nowMs: at('6:41'), words: wordsOf(), unconfirmed: places })
    expect([first?.unconfirmed, first?.notes, second?.unconfirmed]).toEqual([true, ['not confirmed yet'], false])
  })
})

it('given a load with a window that nobody set, when it bakes, then its key waits without a time', () => {
  const [view] = views(stateWith({ loaded: [loadOf({ flip: null, out: null }, lines('focaccia', 12))] }))
  expect([view?.what, view?.when, view?.ring.state]).toEqual(['Out of 1', '', 'idle'])
})
