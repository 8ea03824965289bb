import { describe, expect, it } from 'vitest'
import type { State } from '../../../shared-core/day/state.ts'
import { commandId, portionId, runId, shelfId, varietyId } from '../../../shared-core/ids.ts'
import { piecesOf } from '../../../shared-core/line/lines.ts'
import type { ItemPart, OrderCommand } from '../../../shared-core/orders/order-commands.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, lines, lot, stateWith, stock } from '../support/make.ts'
import { decided, eventsOf, outcome, play } from '../support/play.ts'
import { askedItem, askedLine, orderShop, slip } from './order-makers.ts'

/** Twelve sesame for sale, ten balls counted; one sandwich on sesame and one flatbread ordered on slip 1. */
function waiting(): State {
  const shop = orderShop()
  const state = stateWith({ shop, stock: [stock('sesame', { lots: [lot({ pieces: 12 })] }, shop)] })
  play(state, { type: 'countPortions', portionId: portionId('ball'), portions: 10 })
  play(state, slip(askedItem('lox', { varietyId: varietyId('sesame') }), askedItem('flatbread')))
  return state
}

function part(state: State, no: number, step = 0): ItemPart {
  const [order] = state.orders.values()
  if (order === undefined) throw new Error('no order')
  return { orderId: order.id, no, step }
}

type To = Extract<OrderCommand, { type: 'moveItems' }>['to']
const moved = (to: To, ...parts: ItemPart[]) => ({ type: 'moveItems', parts, to, shelfId: null }) as const

const stepsOf = (state: State, no: number) =>
  [...state.orders.values()][0]?.items.find((item) => item.no === no)?.steps ?? []

describe('items made to order', () => {
  it('[M10] given a sandwich, when begun and made, then its bagel is used once, and the time that it took is learnt', () => {
    const state = waiting()
    const begun = play(state, moved('begun', part(state, 1)), { nowMs: at('6:48') })
    expect(eventsOf(begun, 'stockTaken')).toMatchObject([{ varietyId: 'sesame', fate: 'kitchen' }])
    const made = play(state, moved('made', part(state, 1)), { nowMs: at('6:50') })
    expect(eventsOf(made, 'stockTaken')).toEqual([])
    expect(state.makeTimes.get('lox 0')?.tookMs).toEqual([spanMs(2, 'min')])
  })

  it('[M10] given one that is made at a touch, then its bagel is used and nothing is learnt, as nobody saw it begin', () => {
    const state = waiting()
    const events = play(state, moved('made', part(state, 1)))
    expect(eventsOf(events, 'stockTaken')).toHaveLength(1)
    expect(state.makeTimes.size).toBe(0)
  })

  it('[M17] given portions that are counted, when items begin, then these count down and others do not', () => {
    const state = waiting()
    play(state, moved('begun', part(state, 2)))
    expect(state.portions.get(portionId('ball'))?.portions).toBe(9)
    expect(state.portions.has(portionId('sauce'))).toBe(false)
  })

  it('[M18] given a flatbread, when it goes into the oven, then what came before counts as made, and it turns and comes out', () => {
    const state = waiting()
    const bake = { ...moved('begun', part(state, 2, 1)), shelfId: shelfId('s1') }
    play(state, bake, { nowMs: at('6:50') })
    expect(stepsOf(state, 2)).toMatchObject([
      { madeAtMs: at('6:50') },
      { begunAtMs: at('6:50'), shelfId: 's1', turned: 0 },
      { begunAtMs: null },
    ])
    play(state, moved('turned', part(state, 2, 1)), { nowMs: at('6:52') })
    expect(outcome(decided(state, moved('turned', part(state, 2, 1)), { nowMs: at('6:53') }))).toBe('already-moved')
    play(state, moved('made', part(state, 2, 1)), { nowMs: at('6:54') })
    expect(stepsOf(state, 2)[1]).toMatchObject({ turned: 1, madeAtMs: at('6:54') })
  })

  it('[M19] given two taps of the same, then one of them did it', () => {
    const state = waiting()
    play(state, moved('begun', part(state, 1)))
    expect(outcome(decided(state, moved('begun', part(state, 1))))).toBe('already-moved')
    expect(outcome(decided(state, moved('begun', part(state, 9))))).toBe('unknown-order')
    play(state, moved('begun', part(state, 2, 1)))
    play(state, moved('turned', part(state, 2, 1), part(state, 2, 1)))
    expect(stepsOf(state, 2)[1]?.turned).toBe(1)
  })

  it('[M20] given one that fell, when it is to be made again, then all of it waits and uses its bagel anew', () => {
    const state = waiting()
    play(state, moved('made', part(state, 1)))
    play(state, moved('waiting', part(state, 1)))
    expect(stepsOf(state, 1)).toMatchObject([{ begunAtMs: null, madeAtMs: null }])
    expect(eventsOf(play(state, moved('begun', part(state, 1))), 'stockTaken')).toHaveLength(1)
  })

  it('[M24] given others that begin and make the same thing since, when one is taken back, then its portions come back and theirs stay taken', () => {
    const state = waiting()
    play(state, slip(askedItem('flatbread', { times: 2 })))
    const [, other] = [...state.orders.keys()]
    const balls = () => state.portions.get(portionId('ball'))?.portions
    const ring = (no: number): ItemPart => ({ orderId: other ?? part(state, 2).orderId, no, step: 0 })
    const back = (id: string) => ({ type: 'takeBack', commandId: commandId(id) }) as const
    play(state, moved('begun', part(state, 2)), { id: 'begun00001' })
    play(state, moved('begun', ring(1)), { id: 'begun00002' })
    play(state, moved('made', part(state, 2)), { id: 'made000001', nowMs: at('6:49') })
    play(state, moved('made', ring(1)), { id: 'made000002', nowMs: at('6:50') })
    play(state, moved('begun', ring(2)), { id: 'begun00003', nowMs: at('6:50') })
    expect(balls()).toBe(7)
    play(state, back('made000001'), { nowMs: at('6:51') })
    play(state, back('begun00001'), { nowMs: at('6:51') })
    expect([balls(), stepsOf(state, 2)[0]]).toMatchObject([8, { begunAtMs: null, madeAtMs: null }])
    play(state, back('begun00003'), { nowMs: at('6:51') })
    expect(balls()).toBe(9)
    play(state, { type: 'countPortions', portionId: portionId('ball'), portions: 4 }, { nowMs: at('6:52') })
    play(state, back('made000002'), { nowMs: at('6:53') })
    expect(outcome(decided(state, back('begun00002'), { nowMs: at('6:53') })), 'counted without it').toBe(
      'take-back-changed-since',
    )
  })

  it('[M21] given an order that is changed, then what is begun stays, and what is new goes on counting', () => {
    const state = waiting()
    play(state, moved('begun', part(state, 1)))
    const { orderId } = part(state, 1)
    play(state, { ...slip(askedItem('coffee')), type: 'changeOrder', orderId })
    const items = state.orders.get(orderId)?.items.map(({ no, itemId }) => [no, itemId])
    expect(items).toEqual([
      [1, 'lox'],
      [3, 'coffee'],
    ])
    const onNoRun = { ...slip(), type: 'changeOrder', orderId, way: 'delivery', runId: runId('west') } as const
    expect(outcome(decided(state, { ...onNoRun, dueAtMs: at('9:00') }))).toBe('unknown-run')
  })

  it('[M7] given items that nobody began, when handed over, then they were made all the same', () => {
    const state = waiting()
    const events = play(state, { type: 'handOverOrder', orderId: part(state, 1).orderId, lines: null })
    expect(eventsOf(events, 'stockTaken')).toMatchObject([{ varietyId: 'sesame', fate: 'kitchen' }])
    expect(state.portions.get(portionId('ball'))?.portions).toBe(9)
  })

  it('[M7] given pieces and an unbegun sandwich of the same variety, when handed over, then each takes pieces of its own', () => {
    const state = waiting()
    const { orderId } = part(state, 1)
    const asked = { ...slip(), type: 'changeOrder', orderId, keepsItems: true } as const
    play(state, { ...asked, lines: [askedLine('sesame', { pieces: 11 })] })
    play(state, { type: 'keep', lines: lines('sesame', 5), orderId })
    const events = play(state, { type: 'handOverOrder', orderId, lines: lines('sesame', 4) })
    expect(eventsOf(events, 'stockTaken').map(({ fate, found, takes }) => [fate, found, piecesOf(takes)])).toEqual([
      ['sold', 0, 4],
      ['kitchen', 0, 1],
    ])
  })
})
