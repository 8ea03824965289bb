import { describe, expect, it } from 'vitest'
import { orderMarks } from '../../../shared-core/day/order-marks.ts'
import { orderId } from '../../../shared-core/ids.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import { at } from '../support/make.ts'

const SPAN = { fromMs: at('6:00'), toMs: at('15:00') }

function order(mark: string, due: string, pieces: number, way: Order['way'] = 'pickUp'): Order {
  const line = { varietyId: null, without: [], pieces, dozens: 0, sliced: false, bagged: false }
  return {
    id: orderId(mark.toLowerCase()),
    mark,
    takenAtMs: at('5:00'),
    dueAtMs: at(due),
    way,
    runId: null,
    stop: 0,
    lines: pieces === 0 ? [] : [line],
    items: [],
    isPaid: false,
    details: 0,
    standing: null,
    ref: null,
    isRisk: false,
  }
}

const told = (orders: readonly Order[]) =>
  orderMarks(orders, SPAN).map(({ atMs, orders: all, pieces }) => [all.map(({ mark }) => mark).join(' '), atMs, pieces])

describe('orders as marks on the ruler', () => {
  it('[M140] given orders apart from each other, when the ruler is drawn, then each is a mark at its time, soonest first', () => {
    expect(told([order('CD', '9:00', 24), order('AB', '8:30', 12)])).toEqual([
      ['AB', at('8:30'), 12],
      ['CD', at('9:00'), 24],
    ])
  })

  it('[M140] given orders within ten minutes of the first, then they are gathered into its mark; the next ten minutes are another one', () => {
    expect(told([order('C', '8:10', 1), order('A', '8:00', 12), order('B', '8:09', 6), order('D', '8:19', 3)])).toEqual(
      [
        ['A B', at('8:00'), 18],
        ['C D', at('8:10'), 4],
      ],
    )
  })

  it('[M140] given somebody who waits at the counter, or an order of another day, then it is no mark', () => {
    const others = [order('41', '8:00', 2, 'here'), order('AB', '5:59', 12), order('CD', '15:01', 12)]
    expect(told(others)).toEqual([])
    expect(told([order('EF', '6:00', 0), order('GH', '15:00', 2, 'delivery')])).toHaveLength(2)
  })

  it('[M140] given two due at the same instant, then their order does not follow the list they came in', () => {
    const [one, other] = [order('B', '8:00', 1), order('A', '8:00', 2)]
    expect(orderMarks([one, other], SPAN)).toEqual(orderMarks([other, one], SPAN))
  })
})
