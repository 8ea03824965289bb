import { describe, expect, it } from 'vitest'
import { counterRods } from '../../client/counter/counter-rods.ts'
import { lastDoneHere } from '../../client/counter/foot-view.ts'
import type { IdleKey } from '../../client/counter/idle-view.ts'
import { idleKeys, idleText } from '../../client/counter/idle-view.ts'
import type { OrdersNow } from '../../client/counter/use-orders-now.ts'
import type { State } from '../../shared-core/day/state.ts'
import { deviceId, keepId, orderId, varietyId } from '../../shared-core/ids.ts'
import { DEFAULT_COUNTER } from '../../shared-core/shop/default-rules.ts'
import { orderShop } from '../core/orders/order-makers.ts'
import { order, orderLine } from '../core/orders/promise-makers.ts'
import { at, lines, lot, stateWith, stock } from '../core/support/make.ts'
import { play } from '../core/support/play.ts'
import { shopWith } from '../core/support/shop.ts'
import { UNTIL_THREE, wordsIn } from './counter-maker.ts'

const words = wordsIn('en')
const NO_ORDERS: OrdersNow = { open: 0, risks: [], waiting: 0, ready: 0, lines: [] }
const ROOM = { widthPx: 220, lines: 3, fontPx: 19 }

function keysAt(state: State, clock: string, orders = NO_ORDERS): readonly IdleKey[] {
  const nowMs = at(clock)
  return idleKeys({
    state,
    rods: counterRods(state, nowMs, UNTIL_THREE),
    time: { nowMs, closeMs: at('15:00'), day: 'running' },
    afternoon: null,
    done: lastDoneHere(state, deviceId('bench-1'), words, ROOM),
    orders,
    room: ROOM,
    labelRoom: ROOM,
    words,
  })
}
const ids = (keys: readonly IdleKey[]) => keys.map((key) => key.id)
const keyOf = (keys: readonly IdleKey[], id: IdleKey['id']) => keys.find((key) => key.id === id)

const stocked = (salesFrom: 'taps' | 'till' | 'sweeps' = 'taps') =>
  stateWith({
    shop: shopWith({ counter: { ...DEFAULT_COUNTER, salesFrom } }),
    stock: [
      stock('sesame', { lots: [lot({ pieces: 24 })] }),
      stock('poppy', { lots: [lot({ id: 'l2', pieces: 12 })] }),
    ],
  })

describe('what the counter is for', () => {
  it('given a shop that taps its sales, then selling comes first', () => {
    expect(ids(keysAt(stocked(), '8:00'))).toEqual(['assorted', 'unnamed', 'sweep', 'orders', 'take-back', 'more'])
  })

  it.each(['till', 'sweeps'] as const)(
    'given a shop whose sales come from the %s, then counting comes first and nothing sells',
    (from) => {
      const keys = keysAt(stocked(from), '8:00')
      expect(ids(keys)).toEqual(['sweep', 'orders', 'take-back', 'more'])
      expect(keys[0]?.tone).not.toBe('plain')
    },
  )

  it.each([
    ['taps', 'Touch a rod, then the number sold'],
    ['till', 'The till tells what is sold: touch a rod to count or keep'],
    ['sweeps', 'Nobody taps sales here, counts keep the numbers: touch a rod'],
  ] as const)('given sales from %s, then the line over the keys says so in words', (from, text) => {
    expect(
      idleText(stocked(from), words, { isBakingOver: false, order: '', lastLoad: '', note: '', isPhone: false }),
    ).toBe(text)
  })

  it('[Q143] given the last hour before the changeover, then the line says what the last loads should carry more of', () => {
    const lastLoad = 'Last load by 10:38: 12 more Sesame'
    const told = { isBakingOver: false, order: '', lastLoad, isPhone: true } as const
    expect(idleText(stocked(), words, { ...told, note: '' })).toBe(lastLoad)
    expect(idleText(stocked(), words, { ...told, note: 'rye slow' })).toBe(`${lastLoad} · rye slow`)
  })

  it('given a day that was closed, then nobody is told how to sell', () => {
    const state = stocked()
    play(state, { type: 'closeDay' }, { nowMs: at('15:10') })
    expect(idleText(state, words, { isBakingOver: true, order: '', lastLoad: '', note: '', isPhone: false })).toBe('')
  })

  it('given the changeover and a note, then both are told', () => {
    const text = idleText(stocked(), words, {
      isBakingOver: true,
      order: '',
      lastLoad: '',
      note: 'note 6:10: rye slow',
      isPhone: false,
    })
    expect(text).toBe('None baked after this: what is here is for the afternoon · note 6:10: rye slow')
  })
})

describe('an assorted dozen', () => {
  it('given pieces for sale, then one touch sells what the key shows', () => {
    const key = keyOf(keysAt(stocked(), '8:00'), 'assorted')
    expect(key).toMatchObject({ label: 'Assorted 12', detail: 'Sesame 8, Poppy 4' })
    expect(key?.does).toEqual({ kind: 'act', act: { type: 'sell', lines: lines('sesame', 8, 'poppy', 4) } })
  })

  it.each([
    [200, 1, 'Sesame 8, Poppy 4'],
    [100, 2, 'Sesame 8, Poppy 4'],
    [125, 1, 'Sesame 8 +1'],
    [70, 1, '2 kinds'],
  ])('given %i px and %i lines of room, then it names as many kinds as fit', (widthPx, most, detail) => {
    const room = { widthPx, lines: most, fontPx: 19 }
    const time = { nowMs: at('8:00'), closeMs: null, day: 'running' } as const
    const keys = idleKeys({
      state: stocked(),
      rods: [],
      time,
      afternoon: null,
      done: null,
      orders: NO_ORDERS,
      room,
      labelRoom: ROOM,
      words,
    })
    expect(keyOf(keys, 'assorted')?.detail).toBe(detail)
  })
})

describe('the key of the hour', () => {
  it('given a few pieces of a rod, then one touch says that the last one has gone', () => {
    const state = stateWith({
      stock: [
        stock('sesame', { lots: [lot({ pieces: 3 })] }),
        stock('poppy', { lots: [lot({ id: 'l2', pieces: 2 })] }),
      ],
    })
    const key = keyOf(keysAt(state, '8:00'), 'last-gone')
    expect(key?.does).toEqual({ kind: 'act', act: { type: 'lastOneGone', varietyId: 'poppy' } })
    expect(key?.label).toBe('Last Poppy gone')
    const time = { nowMs: at('8:00'), closeMs: null, day: 'running' } as const
    const labelRoom = { ...ROOM, widthPx: 40 }
    const narrow = idleKeys({
      state,
      rods: counterRods(state, at('8:00'), UNTIL_THREE),
      time,
      afternoon: null,
      done: null,
      orders: NO_ORDERS,
      room: ROOM,
      labelRoom,
      words,
    })
    expect(ids(narrow)).not.toContain('last-gone')
  })

  const afterClose = () => {
    const state = stateWith({ stock: [stock('sesame', { lots: [lot({ pieces: 14 })] })] })
    play(state, { type: 'closeDay' }, { nowMs: at('15:10') })
    return state
  }

  it('given yesterday’s pieces, then the next morning offers them in one touch, and the same evening does not', () => {
    const state = afterClose()
    expect(ids(keysAt(state, '15:20'))).not.toContain('day-old')
    const nextMorning = idleKeys({
      state,
      rods: [],
      time: { nowMs: at('30:00'), closeMs: null, day: 'running' },
      afternoon: null,
      done: null,
      orders: NO_ORDERS,
      room: ROOM,
      labelRoom: ROOM,
      words,
    })
    expect(keyOf(nextMorning, 'day-old')).toMatchObject({
      label: 'Day-old: put out 14',
      does: { kind: 'act', act: { type: 'dayOldIn', lines: lines('sesame', 14) } },
    })
  })

  it('given closing time and an open day, then the close stands there', () => {
    expect(ids(keysAt(stocked(), '15:01'))).toContain('close')
    expect(ids(keysAt(stocked(), '14:59'))).not.toContain('close')
  })
})

describe('the sweep', () => {
  it('given rods in doubt long after the last sweep, then the key asks for it', () => {
    const state = stateWith({ recordedAt: at('6:00') })
    play(
      state,
      { type: 'sweep', counts: [{ varietyId: varietyId('sesame'), pieces: 24, within: 3 }] },
      { nowMs: at('6:10') },
    )
    for (const clock of ['6:20', '6:40', '7:00', '7:20'])
      play(state, { type: 'sell', lines: lines('sesame', 3) }, { nowMs: at(clock) })
    const key = keyOf(keysAt(state, '8:30'), 'sweep')
    expect(key).toMatchObject({ label: 'Count 1 rod', tone: 'act', detail: 'due since 7:40' })
  })

  it('given everything known, then counting is offered and not asked for', () => {
    expect(keyOf(keysAt(stateWith(), '8:30'), 'sweep')).toMatchObject({
      label: 'Count rods',
      tone: 'plain',
      detail: '',
    })
  })
})

describe('[M130] the key of the orders', () => {
  const kept = {
    id: keepId('k1'),
    lines: lines('sesame', 6),
    keptAtMs: at('7:00'),
    outAtMs: at('6:30'),
    readyAtMs: at('6:45'),
  }

  it('given pieces kept for nobody and no open order, then their key stands there; with an order it is the orders’', () => {
    const state = { ...stocked(), keeps: new Map([[kept.id, kept]]) }
    expect(ids(keysAt(state, '8:00'))).toContain('kept')
    const one = order('AB', '9:00', [orderLine('sesame')])
    const open = { ...state, orders: new Map([[one.id, one]]) }
    expect(ids(keysAt(open, '8:00'))).toContain('orders')
    expect(ids(keysAt(open, '8:00'))).not.toContain('kept')
    // What is kept for an order is no piece kept for nobody.
    const its = { ...state, keeps: new Map([[kept.id, { ...kept, orderId: orderId('AB') }]]) }
    expect(ids(keysAt(its, '8:00'))).toContain('orders')
  })

  it('given an order at risk, then the key is striped and says so before its customer comes', () => {
    const risk = { orderId: orderId('AB'), dueAtMs: at('9:00'), missing: [], saves: [] }
    const told = { ...NO_ORDERS, open: 3, risks: [risk] }
    expect(keyOf(keysAt(stocked(), '8:00', told), 'orders')).toMatchObject({ tone: 'late', detail: '1 at risk' })
    expect(keyOf(keysAt(stocked(), '8:00', { ...NO_ORDERS, open: 3 }), 'orders')).toMatchObject({ detail: '3 open' })
  })

  it('given a menu, then the slip has a key in place of the sale of unnamed kinds, inverted when somebody’s order is ready', () => {
    const kitchen = { ...stocked(), shop: orderShop() }
    const keys = keysAt(kitchen, '13:00', { ...NO_ORDERS, waiting: 2, ready: 1 })
    expect(ids(keys)).toEqual(['assorted', 'slip', 'sweep', 'orders', 'take-back', 'more'])
    expect(keyOf(keys, 'slip')).toMatchObject({ tone: 'act', detail: '1 ready' })
  })
})
