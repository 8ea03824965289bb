import { describe, expect, it } from 'vitest'
import { menuItemId, runId, varietyId } from '../../../shared-core/ids.ts'
import { keepNow } from '../../../shared-core/orders/keep-now.ts'
import type { Order, OrderItem } from '../../../shared-core/orders/order.ts'
import { packList } from '../../../shared-core/orders/packs.ts'
import { pickOf } from '../../../shared-core/orders/picks.ts'
import { spokenFor } from '../../../shared-core/orders/spoken-for.ts'
import { at, lines, lot, stateWith } from '../support/make.ts'
import { kitchenParts } from '../support/shop-kitchen.ts'
import { DATE, keepFor, onRod, order, orderLine, promiseShop } from './promise-makers.ts'

const SHOP = promiseShop()
const NOW = at('7:00')

function outOf(variety: string, pieces: number) {
  return {
    varietyId: varietyId(variety),
    doughId: SHOP.varieties.get(varietyId(variety))?.doughId ?? ('' as never),
    lot: lot({ pieces, outAt: NOW }),
  }
}

/** On a bagel, with one part by hand. */
function item(no: number, isBegun: boolean): OrderItem {
  const step = {
    stationId: 'sandwich' as never,
    takesMs: 60_000 as never,
    oven: null,
    shelfId: null,
    turned: 0,
    madeAtMs: null,
  }
  return {
    no,
    itemId: menuItemId('lox'),
    varietyId: varietyId('plain'),
    toasted: false,
    without: [],
    more: [],
    allergies: [],
    steps: [{ ...step, begunAtMs: isBegun ? NOW : null }],
  }
}

describe('what orders still need', () => {
  it('[M43] given what is kept, when it is asked what is spoken for, then it counts for lines by name, then for the mixed one that takes fewest', () => {
    const strict = orderLine(null, 6, { without: ['sesame', 'plain', 'rye'].map(varietyId) })
    const wanted = order('A', '9:00', [orderLine(null, 6), strict, orderLine('sesame', 6)])
    const state = stateWith({ shop: SHOP, orders: [wanted], keeps: [keepFor('A', lines('sesame', 8, 'poppy', 5))] })
    expect(spokenFor(state, [wanted]).map((one) => [one.varietyId, one.without.length, one.pieces])).toEqual([
      [null, 0, 4],
      [null, 3, 1],
    ])
  })

  it('[M43] given things made to order on bagels, when it is asked what is spoken for, then those of which nothing is begun', () => {
    const waiting = order('A', '9:00', [], { items: [item(1, true), item(2, false), item(3, false)] })
    const state = stateWith({ shop: SHOP, orders: [waiting] })
    expect(spokenFor(state, [waiting])).toMatchObject([{ varietyId: 'plain', pieces: 2, isPacked: false }])
  })
})

describe('what just came out', () => {
  const orders = [
    order('late', '10:00', [orderLine('sesame', 12)]),
    order('soon', '8:00', [orderLine('sesame', 10), orderLine('poppy', 6), orderLine(null, 12)]),
    order('evening', '14:00', [orderLine('poppy', 40)]),
  ]

  it('[M44] given orders, when a load comes out, then its pieces go to what is ordered by name, soonest due first, never more than is missing', () => {
    const state = stateWith({ shop: SHOP, orders, keeps: [keepFor('soon', lines('sesame', 4))] })
    expect(keepNow(state, SHOP, [outOf('sesame', 16), outOf('poppy', 30)])).toEqual([
      { orderId: 'soon', lines: lines('sesame', 6, 'poppy', 6) },
      { orderId: 'late', lines: lines('sesame', 10) },
    ])
    expect(keepNow(state, SHOP, [outOf('sesame', 60)]).map((one) => one.lines)).toEqual([
      lines('sesame', 6),
      lines('sesame', 12),
    ])
  })

  it('[M44] given a mixed order that is due sooner, when a load comes out, then what it will need of it is kept for no later one', () => {
    const strict = orderLine(null, 6, { without: ['plain', 'rye', 'focaccia', 'cheddar', 'poppy'].map(varietyId) })
    const mixed = order('mixed', '8:00', [strict])
    const later = order('later', '9:00', [orderLine('sesame', 10)])
    const state = (pieces: number) =>
      stateWith({ shop: SHOP, orders: [mixed, later], stock: pieces === 0 ? [] : [onRod('sesame', pieces)] })
    expect(keepNow(state(0), SHOP, [outOf('sesame', 12)])).toEqual([{ orderId: 'later', lines: lines('sesame', 6) }])
    expect(keepNow(state(4), SHOP, [outOf('sesame', 12)])).toEqual([{ orderId: 'later', lines: lines('sesame', 10) }])
  })

  it('[M44] given an order of the afternoon, when a load comes out at seven, then it waits for a fresher one; a shop that keeps by hand keeps nothing', () => {
    const state = stateWith({ shop: SHOP, orders: orders.slice(2) })
    expect(keepNow(state, SHOP, [outOf('poppy', 30)])).toEqual([])
    const noon = [order('noon', '11:00', [orderLine('poppy', 40)])]
    expect(keepNow(stateWith({ shop: SHOP, orders: noon }), SHOP, [outOf('poppy', 30)])).toHaveLength(1)
    const byHand = promiseShop({ keepsAsTheyCome: false })
    expect(keepNow(stateWith({ shop: byHand, orders: noon }), byHand, [outOf('poppy', 30)])).toEqual([])
  })
})

describe('picking', () => {
  const stocked = (orders: readonly Order[], ...rods: readonly ReturnType<typeof onRod>[]) =>
    stateWith({ shop: SHOP, orders, stock: rods })

  it('[M55] given what is kept and what lies there, when an order is picked, then the rest is kept in one touch', () => {
    const one = order('A', '9:00', [orderLine('sesame', 12), orderLine('poppy', 6)])
    const state = {
      ...stocked([one], onRod('sesame', 20), onRod('poppy', 4)),
      keeps: new Map([keepFor('A', lines('sesame', 5))].map((keep) => [keep.id, keep])),
    }
    const pick = pickOf(state, one, NOW)
    expect([pick.kept, pick.keep, pick.missing]).toEqual([lines('sesame', 5), lines('sesame', 7, 'poppy', 4), 2])
    // Of 13 sesame that are left over two could stand in.
    expect(pick.lines.map(({ missing, instead }) => [missing, instead])).toEqual([
      [0, []],
      [2, lines('sesame', 2)],
    ])
  })

  it('[M55] given a mixed line, when it is picked, then of what there is most of, and never of what must not be in it', () => {
    const one = order('A', '9:00', [orderLine(null, 12, { without: [varietyId('plain')] })])
    const state = stocked([one], onRod('plain', 60), onRod('sesame', 20), onRod('poppy', 10))
    expect(pickOf(state, one, NOW).keep).toEqual(lines('sesame', 8, 'poppy', 4))
  })

  it('[M55] given other orders, when one is picked, then what is due before is not there, and mixed pieces are of what later ones do not need', () => {
    const before = order('B', '8:00', [orderLine('sesame', 15)])
    const after = order('C', '10:00', [orderLine('poppy', 10)])
    const one = order('A', '9:00', [orderLine('sesame', 6)])
    const rods = [onRod('sesame', 20), onRod('poppy', 12), onRod('plain', 6)]
    expect(pickOf(stocked([before, after, one], ...rods), one, NOW)).toMatchObject({
      keep: lines('sesame', 5),
      missing: 1,
    })
    const mixed = order('M', '9:00', [orderLine(null, 12)])
    expect(pickOf(stocked([before, after, mixed], ...rods), mixed, NOW).keep).toEqual(
      lines('sesame', 5, 'poppy', 2, 'plain', 5),
    )
    const much = order('N', '9:00', [orderLine(null, 20)])
    expect(pickOf(stocked([before, after, much], ...rods), much, NOW)).toMatchObject({ missing: 0 })
  })
})

describe('the van', () => {
  const shop = promiseShop({ packMs: 120_000 as never, sliceCoolMs: 1_800_000 as never, boxPieces: 12 }, kitchenParts())
  const tub: OrderItem = { ...item(1, false), itemId: menuItemId('tub'), varietyId: null, steps: [] }
  const onVan = (id: string, stop: number, parts: Partial<Order> = {}) =>
    order(id, '7:00', [orderLine('sesame', 20)], { way: 'delivery', runId: runId('van'), stop, ...parts })
  const at7 = { date: DATE, noonMs: at('12:00') }

  it('[M56] given a run that leaves at 7:00, when its list is made, then stops, boxes and tubs, and when packing begins', () => {
    const orders = [
      onVan('third', 0),
      onVan('second', 5, {
        items: [tub, { ...tub, no: 2 }],
        lines: [orderLine('plain', 13, { sliced: true }), orderLine(null, 5)],
      }),
      onVan('first', 2, { dueAtMs: at('6:50') }),
      order('counter', '9:00', [orderLine('sesame', 6)]),
    ]
    const state = stateWith({
      shop,
      orders,
      keeps: [keepFor('first', lines('sesame', 8)), keepFor('second', lines('poppy', 2), 'k2')],
    })
    const list = packList(state, runId('van'), at7)
    expect(
      list.stops.map(({ order: { id }, atMs, isLate, boxes, pieces, keptPieces, tubs }) => [
        id,
        atMs,
        isLate,
        boxes,
        pieces,
        keptPieces,
        tubs,
      ]),
    ).toEqual([
      ['first', at('7:10'), true, 2, 20, 8, []],
      ['second', at('7:20'), false, 2, 18, 2, [{ itemId: 'tub', count: 2 }]],
      ['third', at('7:30'), false, 2, 20, 0, []],
    ])
    expect([list.leavesAtMs, list.boxes, list.pieces, list.mixedPieces]).toEqual([
      at('7:00'),
      6,
      lines('sesame', 40, 'poppy', 2, 'plain', 13),
      3,
    ])
    // 58 pieces are five dozen begun: ten minutes, and ten to load; the plain ones are out half an hour before.
    expect([list.packMs, list.packFromMs, list.outByMs]).toEqual([600_000, at('6:40'), at('6:10')])
  })

  it('[M56] given two orders for one stop, when the list is made, then the van is there once for both', () => {
    const orders = [onVan('school', 1), onVan('its café', 1), onVan('hotel', 4), onVan('a', 0), onVan('b', 0)]
    const { stops } = packList(stateWith({ shop, orders }), runId('van'), at7)
    const ten = [at('7:10'), at('7:10'), at('7:20'), at('7:30'), at('7:40')]
    expect(stops.map(({ atMs }) => atMs)).toEqual(ten)
  })

  it('[M56] given no run, when the list is made, then what is fetched, by due time; of an empty run there is nothing to pack', () => {
    const orders = [
      order('B', '9:00', [orderLine('sesame', 6)]),
      order('A', '8:00', [orderLine('sesame', 6)]),
      order('W', '8:00', [], { way: 'here' }),
    ]
    const list = packList(stateWith({ shop, orders }), null, at7)
    expect(list.stops.map(({ order: { id } }) => id)).toEqual(['A', 'B'])
    expect([list.leavesAtMs, list.packFromMs]).toEqual([null, null])
    const van = packList(stateWith({ shop, orders }), runId('van'), at7)
    expect([van.leavesAtMs, van.packFromMs, van.stops]).toEqual([at('7:00'), null, []])
  })
})
