import { describe, expect, it } from 'vitest'
import demoFile from '../../../server/demo/demo-set-up.json' with { type: 'json' }
import type { Entry } from '../../../shared-core/day/events.ts'
import { upcastEntry } from '../../../shared-core/day/upcast.ts'
import { menuItemId, portionId } from '../../../shared-core/ids.ts'
import { DEFAULT_ORDERS } from '../../../shared-core/shop/default-rules.ts'
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import { setUpChanges } from '../../../shared-core/shop/set-up-diff.ts'
import { toSetUpFile } from '../../../shared-core/shop/set-up-export.ts'
import { shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import { shopWith } from '../support/shop.ts'
import { kitchenParts, of } from '../support/shop-kitchen.ts'
import { problemsOfFile, shopOf, smallFile, withValue } from './set-up-file-maker.ts'

const ORDERS = {
  dozenPieces: 13,
  cutOff: '17:30',
  walkInPercent: 60,
  walkInLeast: 12,
  keepsAsTheyCome: false,
  noShow: { minutes: 90 },
  forgetDays: 14,
  madeIn: { seconds: 450 },
  sliceCool: { minutes: 25 },
  pack: { seconds: 100 },
  boxPieces: 24,
}

const BALL = { id: 'ball', name: 'Ball', contains: ['wheat'], pull: { minutes: 90 }, trayPortions: 8 }
const SAUCE = { id: 'sauce', name: 'Sauce', contains: [], pull: null, trayPortions: 20 }
const BAKE = {
  station: 'oven',
  takes: { minutes: 4 },
  oven: { slots: 2, at: { degrees: 290, unit: 'C' }, turns: [{ after: { seconds: 130 }, what: 'turn' }] },
}
const FLATBREAD = {
  id: 'flatbread',
  name: 'Flatbread',
  priceCents: 950,
  onBagel: false,
  canToast: false,
  portions: [
    { portion: 'ball', portions: 2 },
    { portion: 'sauce', portions: 1 },
  ],
  steps: [{ station: 'bench', takes: { seconds: 50 }, oven: null }, BAKE],
}
const VAN = { id: 'van', name: 'Van', leaves: '07:15', stop: { minutes: 12 }, load: { seconds: 90 } }

/** A small shop with a kitchen in all that a file can say of one. */
function kitchenFile() {
  return {
    ...smallFile(),
    oven: { kind: 'shelves', shelves: [{ id: '1', name: '1', pieces: 72, slots: 4 }] },
    orders: ORDERS,
    kitchenStations: [
      { id: 'bench', name: 'Bench', hands: 2 },
      { id: 'oven', name: 'Oven', hands: 1 },
    ],
    portions: [BALL, SAUCE],
    menu: [FLATBREAD],
    runs: [VAN],
  }
}

describe('orders and the kitchen, in the set-up file', () => {
  it('[M30] given a file that says them, then the shop has them, and its own file says the same', () => {
    const file = kitchenFile()
    const shop = shopOf(file)
    expect(shop.orders).toEqual({
      dozenPieces: 13,
      cutOffMinute: 1_050,
      walkInPercent: 60,
      walkInLeast: 12,
      keepsAsTheyCome: false,
      noShowMs: 5_400_000,
      forgetDays: 14,
      madeInMs: 450_000,
      sliceCoolMs: 1_500_000,
      packMs: 100_000,
      boxPieces: 24,
    })
    expect(shop.menu.get(menuItemId('flatbread'))).toEqual({
      id: 'flatbread',
      name: 'Flatbread',
      order: 0,
      priceCents: 950,
      onBagel: false,
      canToast: false,
      portions: of({ ball: 2, sauce: 1 }),
      steps: [
        { stationId: 'bench', takesMs: 50_000, oven: null },
        {
          stationId: 'oven',
          takesMs: 240_000,
          oven: { slots: 2, at: { degrees: 290, unit: 'C' }, turns: [{ afterMs: 130_000, what: 'turn' }] },
        },
      ],
      retired: false,
    })
    expect(shop.portions.get(portionId('ball'))).toMatchObject({ pullMs: 5_400_000, trayPortions: 8 })
    expect([...shop.runs.values()]).toMatchObject([{ leavesMinute: 435, stopMs: 720_000, loadMs: 90_000 }])
    expect([...shop.shelves.values()]).toMatchObject([{ slots: 4 }])
    const { kitchenStations, portions, menu, runs } = file
    expect(toSetUpFile(shop)).toMatchObject({ orders: ORDERS, kitchenStations, portions, menu, runs })
  })

  it('[M30] given a file that says nothing of them, then orders go by common practice and there is no kitchen', () => {
    const shop = shopOf(smallFile())
    expect(shop.orders).toEqual(DEFAULT_ORDERS)
    for (const list of ['kitchenStations', 'portions', 'menu', 'runs'] as const) expect(shop[list].size).toBe(0)
    expect([...shop.shelves.values()]).toMatchObject([{ slots: 0 }])
  })

  it('[M30] given another shop, then what it lacks of the kitchen is retired, and all of it still fits', () => {
    const from = shopOf(kitchenFile())
    const then = applySetUp(from, setUpChanges(from, shopOf(smallFile())))
    for (const list of ['kitchenStations', 'portions', 'menu', 'runs'] as const)
      expect([...then[list].values()].every(({ retired }) => retired)).toBe(true)
    expect(shopMisfits(then)).toEqual([])
  })

  it('[M39] given the demo, then bagels are made into sandwiches, flatbreads bake, and every place is used by some item', () => {
    const shop = shopOf(demoFile)
    const items = [...shop.menu.values()]
    const baked = items.filter(({ steps }) => steps.some(({ oven }) => oven !== null))
    expect(items.filter(({ onBagel }) => onBagel).length).toBeGreaterThanOrEqual(3)
    expect(baked.filter(({ onBagel }) => !onBagel).length).toBeGreaterThanOrEqual(3)
    const stations = new Set(items.flatMap(({ steps }) => steps.map(({ stationId }) => stationId)))
    expect(stations).toEqual(new Set(shop.kitchenStations.keys()))
    const portions = new Set(items.flatMap((item) => item.portions.map((one) => one.portionId)))
    expect(portions).toEqual(new Set(shop.portions.keys()))
    expect([...shop.portions.values()].some(({ pullMs }) => pullMs === 90 * 60_000)).toBe(true)
  })
})

describe('set-ups of before there was any of it', () => {
  it.each([
    ['setUpChanged', 5, 'changes'],
    ['setUpPlanned', 4, 'setUp'],
  ] as const)('[M31] given %s of version %i, then no shelf has places', (type, v, where) => {
    const { shelves } = shopWith()
    const changes = [...shelves.values()].map(({ slots: _none, ...value }) => ({ entity: 'shelf', value }))
    const held = where === 'changes' ? { changes } : { setUp: { id: 'p', fromMs: 0, deviceId: 'd', changes } }
    const [event] = upcastEntry({ events: [{ v, atMs: 0, type, ...held }] } as unknown as Entry).events
    const read =
      event?.type === 'setUpChanged' ? event.changes : event?.type === 'setUpPlanned' ? event.setUp.changes : []
    expect(read).toEqual([...shelves.values()].map((value) => ({ entity: 'shelf', value })))
  })

  it('[M31] given a first set-up that says nothing of orders, then common practice', () => {
    const old = setUpChanges(null, shopWith()).filter(({ entity }) => entity !== 'orders')
    const shop = applySetUp(null, old)
    expect(shop.orders).toEqual(DEFAULT_ORDERS)
    expect(shop.menu.size).toBe(0)
  })
})

const isTold = (...[, at, value, path, wrong, right]: Wrong) =>
  expect(problemsOfFile(withValue(kitchenFile(), at, value))).toEqual([{ path, wrong, right }])
type Wrong = readonly [what: string, at: string, value: unknown, told: string, wrong: string, right: string]

describe('what does not fit in the kitchen', () => {
  const turns = (...seconds: number[]) => seconds.map((s) => ({ after: { seconds: s }, what: 'turn' }))
  it.each<Wrong>([
    [
      'a part at a station that there is not',
      '/menu/0/steps/0/station',
      'grill',
      '/menu/0/steps/0/station',
      'The kitchen has no station "grill".',
      'The id of a station of the kitchen: "bench", "oven".',
    ],
    [
      'a part at a station that is retired',
      '/kitchenStations/0/retired',
      true,
      '/menu/0/steps/0/station',
      'Its station "bench" is retired.',
      'A station in use, or the item retired too.',
    ],
  ])('[M32] given %s, then it is refused with its place', isTold)

  it.each<Wrong>([
    [
      'a portion that there is not',
      '/menu/0/portions/1/portion',
      'oil',
      '/menu/0/portions/1/portion',
      'There is no portion "oil".',
      'The id of a portion: "ball", "sauce".',
    ],
    [
      'a portion that is retired',
      '/portions/1/retired',
      true,
      '/menu/0/portions/1/portion',
      'Its portion "sauce" is retired.',
      'A portion in use, or the item retired too.',
    ],
    [
      'a portion twice',
      '/menu/0/portions/1/portion',
      'ball',
      '/menu/0/portions',
      '"ball" stands twice.',
      'Each portion once, with how many.',
    ],
    [
      'an allergen of a portion twice',
      '/portions/0/contains',
      ['wheat', 'wheat'],
      '/portions/0/contains',
      '"wheat" is named twice.',
      'Each allergen once.',
    ],
  ])('[M33] given %s, then it is refused with its place', isTold)

  it.each<Wrong>([
    [
      'a turn as it comes out',
      '/menu/0/steps/1/oven/turns',
      turns(240),
      '/menu/0/steps/1/oven/turns/0/after',
      'It is turned after 240 s, and is out after 240 s.',
      'Before 240 s.',
    ],
    [
      'turns out of order',
      '/menu/0/steps/1/oven/turns',
      turns(130, 120),
      '/menu/0/steps/1/oven/turns/1/after',
      '120 s is not after 130 s.',
      'Times in order, each of them once.',
    ],
    [
      'the same turn twice',
      '/menu/0/steps/1/oven/turns',
      turns(130, 130),
      '/menu/0/steps/1/oven/turns/1/after',
      '130 s is not after 130 s.',
      'Times in order, each of them once.',
    ],
  ])('[M34] given %s, then it is refused with its place', isTold)

  it.each<Wrong>([
    [
      'more places than a shelf has',
      '/menu/0/steps/1/oven/slots',
      5,
      '/menu/0/steps/1/oven/slots',
      'It takes 5 places, and no shelf has more than 4.',
      'At most 4, or more places on a shelf.',
    ],
  ])('[M35] given %s, then it is refused with its place', isTold)

  it.each<Wrong>([
    [
      'a dozen of nine',
      '/orders/dozenPieces',
      9,
      '/orders/dozenPieces',
      '"dozenPieces" is 9.',
      'A whole number from 10 to 14.',
    ],
    [
      'four parts of an item',
      '/menu/0/steps',
      Array(4).fill(FLATBREAD.steps[0]),
      '/menu/0/steps',
      '"steps" has 4 entries.',
      'A list of 0 to 3 steps.',
    ],
  ])('[M36] given %s, then it is refused with its place', isTold)

  it.each<Wrong>([
    [
      'a van that leaves as the oven is ready',
      '/runs/0/leaves',
      '04:30',
      '/runs/0/leaves',
      'It leaves at 04:30, when nobody is there.',
      'After 04:30, when the oven is ready, and 15:00 at the latest.',
    ],
    [
      'a van that leaves after the close',
      '/runs/0/leaves',
      '15:01',
      '/runs/0/leaves',
      'It leaves at 15:01, when nobody is there.',
      'After 04:30, when the oven is ready, and 15:00 at the latest.',
    ],
  ])('[M37] given %s, then it is refused with its place', isTold)

  it.each<Wrong>([
    [
      'toast of what is on no bagel',
      '/menu/0/canToast',
      true,
      '/menu/0/canToast',
      'It can be toasted, and is not made on a bagel.',
      'Made on a bagel, or not toasted.',
    ],
  ])('[M36] given %s, then it is refused with its place', isTold)

  it('[M32, M33] given an item that is retired, then it may name what is retired, and nothing that never was', () => {
    const retired = [
      ['/menu/0/retired', true],
      ['/kitchenStations/0/retired', true],
      ['/portions/1/retired', true],
    ].reduce<object>((file, [at, value]) => withValue(file, String(at), value), kitchenFile())
    expect(problemsOfFile(retired)).toEqual([])
    expect(problemsOfFile(withValue(retired, '/menu/0/steps/0/station', 'grill'))).toMatchObject([
      { wrong: 'The kitchen has no station "grill".' },
    ])
  })

  it('[M32] given a station that cannot be read, then it is no fault of its items', () => {
    expect(problemsOfFile(withValue(kitchenFile(), '/kitchenStations/0/hands', 0)).map(({ path }) => path)).toEqual([
      '/kitchenStations/0/hands',
    ])
  })

  it('[M35] given no shelf with places yet, then what bakes is taken: the places may come later', () => {
    expect(problemsOfFile(withValue(kitchenFile(), '/oven/shelves/0/slots', 0))).toEqual([])
  })

  it('[M37] given a retired run, or one at the minute of the close, then it fits', () => {
    const late = withValue(kitchenFile(), '/runs/0/leaves', '23:00')
    expect(problemsOfFile(withValue(late, '/runs/0/retired', true))).toEqual([])
    expect(problemsOfFile(withValue(kitchenFile(), '/runs/0/leaves', '15:00'))).toEqual([])
  })

  it('[M32, M35] given a change at the desk, then it meets the same rules', () => {
    const shop = shopWith(kitchenParts())
    expect(shopMisfits(shop)).toEqual([])
    const [first] = shop.kitchenStations.values()
    if (first === undefined) throw new Error('a kitchen without stations')
    const then = applySetUp(shop, [{ entity: 'kitchenStation', value: { ...first, retired: true } }])
    const blamed = shopMisfits(then).map(({ entity, id, field }) => `${entity} ${id} ${field}`)
    expect(blamed).toContain('menuItem lox steps/0/stationId')
    expect(blamed).toContain('menuItem flatbread steps/2/stationId')
    expect(blamed).not.toContain('menuItem coffee steps/0/stationId')
  })
})
