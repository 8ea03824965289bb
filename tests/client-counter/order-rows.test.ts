import { describe, expect, it } from 'vitest'
import { stringOf } from '../../client/counter/orders/lying-rod.tsx'
import { found, orderRows } from '../../client/counter/orders/order-rows.ts'
import { bagOf, insteadOf, missingOf, orderedOf } from '../../client/counter/orders/pick-view.ts'
import { ringsOf } from '../../client/counter/orders/queue-view.ts'
import { rowText } from '../../client/counter/orders/row-text.ts'
import { counterOrderWords } from '../../client/words/counter-orders.ts'
import { orderId } from '../../shared-core/ids.ts'
import type { WaitingOrder } from '../../shared-core/kitchen/queue.ts'
import { pickOf } from '../../shared-core/orders/picks.ts'
import { keepFor, onRod, order, orderLine, promiseShop } from '../core/orders/promise-makers.ts'
import { at, lines, stateWith } from '../core/support/make.ts'
import { CLOCK, wordsIn } from './counter-maker.ts'

const say = counterOrderWords(wordsIn('en'))
const live = { shopClock: CLOCK, nowMs: at('8:00') } as never
const room = { widthPx: 500, fontPx: 21 }
const state = stateWith({
  shop: promiseShop(),
  stock: [onRod('sesame', 9), onRod('poppy', 12)],
  orders: [
    order('LATE', '7:50', [orderLine('plain', 6)]),
    order('SOON', '8:05', [orderLine('sesame', 13, { dozens: 1 })]),
    order('KEPT', '8:05', [orderLine('sesame', 6)]),
    order('FAR', '12:00', [orderLine('poppy', 6)], { details: 1 }),
    order('NEXT', '12:00', [orderLine('poppy', 6)], { dueAtMs: at('7:00', 1) }),
  ],
  keeps: [keepFor('KEPT', lines('sesame', 6))],
})
const risk = { orderId: orderId('FAR'), dueAtMs: at('12:00'), missing: [{ varietyId: null, pieces: 4 }], saves: [] }
const rows = orderRows(state, at('8:00'), [risk])
const rowOf = (mark: string) => {
  const row = rows.find((one) => one.order.mark === mark)
  if (row === undefined) throw new Error(mark)
  return row
}

describe('[M130] given open orders', () => {
  it('then those at risk stand first, the others by due time', () => {
    expect(rows.map((row) => row.order.mark)).toEqual(['FAR', 'LATE', 'KEPT', 'SOON', 'NEXT'])
  })

  it('then each says what is kept of it, and what is over is late, what is near is due, what is ready neither', () => {
    expect(['LATE', 'SOON', 'KEPT', 'NEXT'].map((mark) => rowOf(mark).when)).toEqual([
      'late',
      'due',
      'coming',
      'coming',
    ])
    expect(rowOf('KEPT')).toMatchObject({ kept: 6, pieces: 6, isReady: true })
    expect(rowText(rowOf('SOON'), '', { say, live, room })).toMatchObject({ due: '8:05', state: 'kept 0 of 13' })
    expect(rowText(rowOf('KEPT'), '', { say, live, room }).state).toBe('ready')
    expect(rowText(rowOf('NEXT'), '', { say, live, room }).due).toBe('Wed, Nov 25 7:00')
  })

  it('then one at risk says what is missing, and a long line says how many others there are', () => {
    expect(rowText(rowOf('FAR'), '', { say, live, room })).toMatchObject({ state: 'at risk', line: '4 mixed missing' })
    const narrow = rowText(rowOf('SOON'), 'A long name of somebody', { say, live, room: { widthPx: 330, fontPx: 21 } })
    expect(narrow.line).toBe('A long name of somebody, +3')
    expect(narrow.spoken).toContain('13 Sesame')
  })

  it('when something is typed, then marks and words of names that begin so are found, and four digits of a phone', () => {
    const details = { name: 'Ánna Example', phone: '(555) 01 00', note: '' }
    const marks = (typed: string) =>
      found(rows, typed, (one) => (one.details > 0 ? details : null)).map((row) => row.order.mark)
    expect(marks('')).toHaveLength(5)
    expect(marks('so')).toEqual(['SOON'])
    expect(marks('anna')).toEqual(['FAR'])
    expect(marks(' exam')).toEqual(['FAR'])
    expect(marks('xample')).toEqual([])
    expect(marks('5501')).toEqual(['FAR'])
    expect(marks('555')).toEqual([])
  })

  it('then rods show kept before missing, in proportion where there is no room, and never none of what there is', () => {
    expect(stringOf({ kept: 6, there: 0, missing: 7 }, 6, 20)).toEqual(['kept', 'missing', 'missing'])
    expect(stringOf({ kept: 1, there: 0, missing: 600 }, 6, 10)).toHaveLength(10)
    expect(stringOf({ kept: 1, there: 0, missing: 600 }, 6, 10)[0]).toBe('kept')
  })
})

describe('[M135] given an order that is picked', () => {
  it('then what is missing and what could stand in for it are asked about, and the bag holds what was said', () => {
    const pick = pickOf(state, rowOf('SOON').order, at('8:00'))
    expect(orderedOf(pick)).toBe(13)
    expect(missingOf(pick)).toEqual([{ varietyId: 'sesame', pieces: 4 }])
    expect(insteadOf(pick)).toEqual(lines('poppy', 4))
    expect(bagOf(pick, false)).toEqual(lines('sesame', 9))
    expect(bagOf(pick, true)).toEqual(lines('sesame', 9, 'poppy', 4))
  })
})

describe('[M137] given those who wait', () => {
  const waiting = (mark: string, taken: string, due: string, status: WaitingOrder['status']): WaitingOrder => ({
    orderId: orderId(mark),
    mark,
    way: 'here',
    takenAtMs: at(taken),
    dueAtMs: at(due),
    readyAtMs: null,
    items: 1,
    made: 0,
    hasAllergy: mark === '2',
    status,
  })

  it('then each is a ring by its time: running, to be hurried, or late, with how long it waits', () => {
    const rings = ringsOf(
      [
        waiting('3', '7:58', '8:06', 'coming'),
        waiting('2', '7:52', '8:02', 'due'),
        waiting('1', '7:40', '7:50', 'late'),
      ],
      at('8:00'),
      480_000,
    )
    expect(rings.map(({ mark, state: how, waitsMs }) => [mark, how, waitsMs / 60_000])).toEqual([
      ['1', 'late', 20],
      ['2', 'act', 8],
      ['3', 'running', 2],
    ])
    expect(rings.map(({ fraction }) => fraction)).toEqual([0, 0.2, 0.75])
    expect(rings[1]?.hasAllergy).toBe(true)
  })
})
