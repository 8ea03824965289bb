import { describe, expect, it } from 'vitest'
import type { Line } from '../../../shared-core/day/state.ts'
import { shelfId } from '../../../shared-core/ids.ts'
import { advisedId } from '../../../shared-core/live/plan.ts'
import { ordersAtRisk } from '../../../shared-core/orders/at-risk.ts'
import type { SupplyAsked } from '../../../shared-core/orders/promise.ts'
import type { OrderRules } from '../../../shared-core/shop/rules.ts'
import { at, batch, lines, stateWith } from '../support/make.ts'
import { planLoad, planWith } from '../support/plan.ts'
import { asking, keepFor, onRod, order, orderLine, promiseShop, walkIns } from './promise-makers.ts'

type Parts = Parameters<typeof stateWith>[0]
const risks = (parts: Parts, asked: Partial<SupplyAsked> = {}, rules: Partial<OrderRules> = {}) =>
  ordersAtRisk(asking(stateWith({ shop: promiseShop(rules), ...parts }), asked))
const short = (varietyId: string | null, pieces: number) => ({ varietyId, pieces })
const SESAME = (pieces: number) => [orderLine('sesame', pieces)]
const load = (clock: string, n: number, some: readonly Line[]) => planLoad(clock, n, { lines: some })

describe('orders at risk', () => {
  it('[M53] given fewer pieces than are ordered, when it is asked who goes without, then the later ones, each with what is missing', () => {
    const orders = [order('B', '9:00', SESAME(20)), order('A', '8:00', SESAME(10)), order('C', '10:00', SESAME(6))]
    const found = risks({ orders, stock: [onRod('sesame', 24)] })
    expect(found.map(({ orderId, missing }) => [orderId, missing])).toEqual([
      ['B', [short('sesame', 6)]],
      ['C', [short('sesame', 6)]],
    ])
    expect(risks({ orders, stock: [onRod('sesame', 36)] })).toEqual([])
    const kept = [keepFor('B', lines('sesame', 20))]
    expect(risks({ orders, stock: [onRod('sesame', 16)], keeps: kept })).toEqual([])
  })

  it('[M53] given a load that comes too late, when it is asked, then it counts from when it is ready; overdue orders are asked for now', () => {
    const orders = [order('A', '8:00', SESAME(10))]
    const plan = (clock: string) => ({ plan: planWith([load(clock, 1, lines('sesame', 24))]) })
    expect(risks({ orders }, plan('7:29'))).toEqual([])
    expect(risks({ orders }, plan('7:30'))).toMatchObject([{ orderId: 'A', missing: [short('sesame', 10)] }])
    const overdue = [order('O', '6:30', SESAME(10))]
    expect(risks({ orders: overdue, stock: [onRod('sesame', 9)] })).toMatchObject([{ missing: [short('sesame', 1)] }])
    expect(risks({ orders: overdue, stock: [onRod('sesame', 10)] })).toEqual([])
  })

  it('[M53] given walk-ins, when it is asked, then they take of the rods before, but not of what is kept as it comes', () => {
    const orders = [order('A', '9:00', SESAME(20))]
    const asked = { outlook: walkIns('sesame', 40) }
    // Five an hour: ten until nine.
    expect(risks({ orders, stock: [onRod('sesame', 30)] }, asked, { walkInPercent: 100 })).toEqual([])
    expect(risks({ orders, stock: [onRod('sesame', 29)] }, asked, { walkInPercent: 100 })).toMatchObject([
      { missing: [short('sesame', 1)] },
    ])
    const plan = planWith([load('7:29', 1, lines('sesame', 20))])
    expect(risks({ orders }, { ...asked, plan }, { walkInPercent: 100 })).toEqual([])
    const byHand = { walkInPercent: 100, keepsAsTheyCome: false }
    expect(risks({ orders }, { ...asked, plan }, byHand)).toMatchObject([{ missing: [short('sesame', 5)] }])
  })

  it('[M53] given mixed lines, when it is asked, then they have what is nobody’s, soonest due first', () => {
    const orders = [
      order('N', '8:30', SESAME(12)),
      order('A', '8:00', [orderLine(null, 12)]),
      order('B', '9:00', [orderLine(null, 12)]),
    ]
    const found = risks({ orders, stock: [onRod('sesame', 20), onRod('poppy', 10)] })
    expect(found.map(({ orderId, missing }) => [orderId, missing])).toEqual([['B', [short(null, 6)]]])
  })
})

describe('what saves an order', () => {
  it('[M54] given pieces that walk-ins would take, when an order is at risk, then keeping them now saves it', () => {
    const orders = [order('first', '8:00', SESAME(4)), order('A', '14:00', SESAME(12))]
    const found = risks(
      { orders, stock: [onRod('sesame', 16)] },
      { outlook: walkIns('sesame', 40) },
      { walkInPercent: 100 },
    )
    expect(found.map(({ orderId }) => orderId)).toEqual(['A'])
    expect(found[0]?.saves[0]).toEqual({ code: 'keepNow', lines: lines('sesame', 12) })
  })

  it('[M54] given loads that are planned, when an order is at risk, then an earlier one or another that has dough', () => {
    const orders = [order('A', '9:00', SESAME(12))]
    const late = planWith([load('9:30', 1, lines('sesame', 24))])
    expect(risks({ orders }, { plan: late })[0]?.saves).toEqual([
      {
        code: 'earlierLoad',
        loadId: advisedId(7, 1),
        shelfId: shelfId('s1'),
        readyAtMs: at('10:01'),
        readyByMs: at('9:00'),
      },
      { code: 'later', atMs: at('10:01') },
    ])
    const other = planWith([load('8:00', 1, lines('poppy', 24))])
    const chilled = (pieces: number) => [batch({ pieces, stage: 'chill' })]
    const found = risks({ orders, batches: chilled(34) }, { plan: other })
    expect(found[0]?.saves).toContainEqual({
      code: 'otherLoad',
      loadId: advisedId(7, 1),
      shelfId: shelfId('s1'),
      lines: lines('sesame', 10),
    })
    expect(risks({ orders, batches: chilled(24) }, { plan: other })[0]?.saves.map(({ code }) => code)).not.toContain(
      'otherLoad',
    )
  })

  it('[M54] given plenty of others and a later load, when an order is at risk, then others in its place, splitting, and later', () => {
    const orders = [
      order('A', '7:20', [orderLine('sesame', 12), orderLine('poppy', 6)]),
      order('P', '7:10', [orderLine('plain', 10)]),
    ]
    const plan = planWith([load('7:05', 1, lines('sesame', 24))])
    const found = risks({ orders, stock: [onRod('sesame', 4), onRod('poppy', 6), onRod('plain', 15)] }, { plan })
    expect(found).toMatchObject([{ orderId: 'A', missing: [short('sesame', 8)] }])
    // The load needs 34 minutes from the kettle on: it cannot be ready by then.
    expect(found[0]?.saves.map(({ code }) => code)).not.toContain('earlierLoad')
    expect(found[0]?.saves.slice(-3)).toEqual([
      { code: 'otherVariety', lines: lines('plain', 5) },
      { code: 'split', restAtMs: at('7:36') },
      { code: 'later', atMs: at('7:36') },
    ])
  })
})
