import { describe, expect, it } from 'vitest'
import { retiredInUse } from '../../../shared-core/day/retired-in-use.ts'
import {
  doughId,
  kitchenStationId,
  menuItemId,
  orderId,
  runId,
  shelfId,
  standingId,
  varietyId,
} from '../../../shared-core/ids.ts'
import type { ItemStep, Order } from '../../../shared-core/orders/order.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { must } from '../../../shared-core/support.ts'
import { spanMs } from '../../../shared-core/units.ts'
import { at, batch, stateWith } from '../support/make.ts'
import { shopWith } from '../support/shop.ts'
import { kitchenParts } from '../support/shop-kitchen.ts'

const shop = shopWith(kitchenParts())
const baking: ItemStep = {
  stationId: kitchenStationId('oven'),
  takesMs: spanMs(4, 'min'),
  oven: null,
  begunAtMs: at('12:30'),
  shelfId: shelfId('s2'),
  turned: 0,
  madeAtMs: null,
}
const dressed: ItemStep = { ...baking, stationId: kitchenStationId('sandwiches'), shelfId: null, madeAtMs: at('12:29') }
const line = { varietyId: varietyId('rye'), without: [], pieces: 12, dozens: 1, sliced: false, bagged: false }

function order(id: string, parts: Partial<Order>): Order {
  return {
    id: orderId(id),
    mark: id,
    takenAtMs: at('12:00'),
    dueAtMs: at('13:00'),
    way: 'pickUp',
    runId: null,
    stop: 0,
    lines: [],
    items: [],
    isPaid: false,
    details: 0,
    standing: null,
    ref: null,
    isRisk: false,
    ...parts,
  }
}

const made = {
  no: 1,
  itemId: menuItemId('melt'),
  varietyId: varietyId('sesame'),
  toasted: false,
  without: [],
  more: [],
}
const state = stateWith({
  shop,
  orders: [
    order('a', { lines: [line, { ...line, sliced: true }] }),
    order('b', { runId: runId('van'), stop: 1, lines: [line] }),
    order('c', { items: [{ ...made, allergies: [], steps: [dressed, baking] }] }),
  ],
  standing: [
    {
      id: standingId('s'),
      mark: 'S',
      way: 'delivery',
      runId: runId('van'),
      stop: 1,
      dueMinute: 480,
      lines: [line],
      isPaid: false,
      details: 0,
      recurrence: {
        freq: 'weekly',
        interval: 1,
        from: '2026-11-23',
        until: null,
        weekdays: [1],
        nth: null,
        except: [],
        also: [],
      },
      onHolidays: false,
      takenUp: null,
    },
  ],
})

function asked(list: 'varieties' | 'menu' | 'runs' | 'kitchenStations' | 'shelves', id: string) {
  const entities: ReadonlyMap<string, object> = shop[list]
  const then = { ...shop, [list]: new Map(entities).set(id, { ...must(entities, id), retired: true }) } as Shop
  return retiredInUse(state, then).map(({ code, params }) => [code, params.id, params.pieces, params.orders])
}

describe('something that is retired while orders name it', () => {
  it.each([
    ['a variety of lines, counted once for each order, standing ones too', 'varieties', 'rye', 3],
    ['the bagel of an item', 'varieties', 'sesame', 1],
    ['an item', 'menu', 'melt', 1],
    ['a run', 'runs', 'van', 2],
    ['a station where a part waits', 'kitchenStations', 'oven', 1],
    ['a shelf on which a part bakes', 'shelves', 's2', 1],
  ] as const)('[M38] given %s, then it is asked about with how many', (_what, list, id, orders) => {
    expect(asked(list, id)).toEqual([['retires-in-use', id, 0, orders]])
  })

  it.each([
    ['a variety that nobody ordered', 'varieties', 'poppy'],
    ['an item that nobody ordered', 'menu', 'flatbread'],
    ['a station where all parts are made', 'kitchenStations', 'sandwiches'],
    ['another shelf', 'shelves', 's1'],
  ] as const)('[M38] given %s, then nothing is asked', (_what, list, id) => {
    expect(asked(list, id)).toEqual([])
  })

  it('[M38] given what was retired before, then nothing is asked again', () => {
    const rye = must(shop.varieties, varietyId('rye'))
    const then: Shop = { ...shop, varieties: new Map(shop.varieties).set(rye.id, { ...rye, retired: true }) }
    expect(retiredInUse({ ...state, shop: then }, then)).toEqual([])
  })

  it('[M38] given dough of a variety’s name, then its pieces are the dough’s alone', () => {
    const there = stateWith({ shop, batches: [batch({ dough: 'plain', pieces: 24 })] })
    const plain = { ...must(shop.varieties, varietyId('plain')), retired: true }
    const dough = { ...must(shop.doughs, doughId('plain')), retired: true }
    expect(retiredInUse(there, { ...shop, varieties: new Map(shop.varieties).set(plain.id, plain) })).toEqual([])
    expect(retiredInUse(there, { ...shop, doughs: new Map(shop.doughs).set(dough.id, dough) })).toMatchObject([
      { params: { id: 'plain', pieces: 24, orders: 0 } },
    ])
  })
})
