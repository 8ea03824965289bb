import { describe, expect, it } from 'vitest'
import { doughId, personId, stepId, toppingId, varietyId, weekdayId } from '../../../shared-core/ids.ts'
import { DEFAULT_MIXER } from '../../../shared-core/shop/default-rules.ts'
import { dwell } from '../../../shared-core/shop/default-windows.ts'
import type { Misfit } from '../../../shared-core/shop/misfit.ts'
import { applySetUp } from '../../../shared-core/shop/set-up-apply.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { changeMisfits, shopMisfits } from '../../../shared-core/shop/set-up-rules.ts'
import type { Dough, Hours, Shop, Station, Step, Topping, Variety } from '../../../shared-core/shop/shop.ts'
import { shopOf, smallFile, smallHearthFile } from './set-up-file-maker.ts'

const SHOP = shopOf(smallFile())
const HEARTH = shopOf(smallHearthFile())

const hours = (parts: Partial<Hours>): SetUpChange => ({ entity: 'hours', value: { ...SHOP.hours, ...parts } })
const dough = (parts: Partial<Dough>): SetUpChange => ({ entity: 'dough', value: { ...first(SHOP.doughs), ...parts } })
const variety = (parts: Partial<Variety>): SetUpChange => ({
  entity: 'variety',
  value: { ...first(SHOP.varieties), ...parts },
})
const station = (parts: Partial<Station>): SetUpChange => ({
  entity: 'station',
  value: { ...first(SHOP.stations), ...parts },
})
const SESAME: Topping = {
  id: toppingId('sesame'),
  name: 'Sesame',
  order: 0,
  contains: ['sesame'],
  madeOf: [],
  retired: false,
}
const topping = (parts: Partial<Topping>) => ({ entity: 'topping', value: { ...SESAME, ...parts } }) as const
const step = ({ id, ...parts }: Partial<Omit<Step, 'id'>> & { readonly id: string }) => {
  const value: Step = {
    name: id,
    order: 0,
    list: 'opening',
    offsetMs: 0,
    kind: 'plain',
    retired: false,
    ...parts,
    id: stepId(id),
  }
  return { entity: 'step', value } as const
}

function first<Entity>(entities: ReadonlyMap<string, Entity>): Entity {
  const [entity] = entities.values()
  if (entity === undefined) throw new Error('nothing in it')
  return entity
}

function said(misfits: readonly Misfit[]): string[] {
  return misfits.map(
    ({ entity, id, field, wrong, right }) => `${entity} ${id ?? '-'} ${field || '-'}: ${wrong} ${right}`,
  )
}

const CHANGEOVER = { changeoverFromMinute: 660, changeoverToMinute: 720 }

describe('what does not fit inside one part', () => {
  it.each<readonly [SetUpChange, string]>([
    [
      hours({ ovenReadyMinute: 361 }),
      'hours - ovenReadyMinute: The oven is ready at 06:01, after opening. 06:00 or before.',
    ],
    [hours({ closeMinute: 360 }), 'hours - closeMinute: The shop closes at 06:00, not after opening. After 06:00.'],
    [
      hours({ changeoverFromMinute: 660 }),
      'hours - changeoverFromMinute: The changeover has only one end. Both ends of the changeover, or neither.',
    ],
    [
      hours({ secondMenu: 'Flatbreads' }),
      'hours - secondMenu: There is a second menu and no changeover to it. No second menu, or the hours of the changeover.',
    ],
    [
      hours({ ...CHANGEOVER, changeoverFromMinute: 359 }),
      'hours - changeoverFromMinute: The changeover begins at 05:59, when the shop is closed. From 06:00 to 15:00.',
    ],
    [
      hours({ ...CHANGEOVER, changeoverToMinute: 660 }),
      'hours - changeoverToMinute: The changeover ends at 11:00, not after it begins. After 11:00.',
    ],
    [
      hours({ ...CHANGEOVER, changeoverToMinute: 901 }),
      'hours - changeoverToMinute: The changeover ends at 15:01, after closing. 15:00 or before.',
    ],
    [
      { entity: 'windows', value: { cool: dwell('min', 10, 9, 20) } },
      'windows - cool: Earliest, target and latest are 10 min, 9 min and 20 min. None longer than the next: earliest, target, latest.',
    ],
    [
      { entity: 'windows', value: { cool: dwell('min', 10, 15, 14) } },
      'windows - cool: Earliest, target and latest are 10 min, 15 min and 14 min. None longer than the next: earliest, target, latest.',
    ],
    [
      { entity: 'windows', value: { firstSide: dwell('min', 3, 4, 5), bake: dwell('s', 200, 240, 300) } },
      'windows - bake: The flip is due after 4 min, the end of the bake after 240 s. The whole time in the oven: longer than the first side.',
    ],
    [
      dough({ windows: { chill: dwell('h', 9, 8, 48) } }),
      'dough plain windows/chill: Earliest, target and latest are 9 h, 8 h and 48 h. None longer than the next: earliest, target, latest.',
    ],
    [
      dough({ route: ['proof', 'proof', 'oven'] }),
      'dough plain route: The route goes through "proof" twice. Each stage once.',
    ],
    [
      dough({ route: ['proof', 'kettle'] }),
      'dough plain route: The route does not end in the oven. "oven" as its last stage.',
    ],
    [
      dough({ route: ['kettle', 'oven'] }),
      'dough plain route: The route does not begin where shaped pieces wait. First "proof", "chill" or "rack".',
    ],
    [
      dough({ route: ['proof', 'boards', 'kettle', 'oven'] }),
      'dough plain route: The route is proof, boards, kettle, oven. Proof, chill and rack first, then kettle, boards and oven in this order; any may be left out but the oven.',
    ],
    [
      dough({ route: ['proof', 'kettle', 'chill', 'oven'] }),
      'dough plain route: The route is proof, kettle, chill, oven. Proof, chill and rack first, then kettle, boards and oven in this order; any may be left out but the oven.',
    ],
    [
      variety({ flip: false }),
      'variety plain flip: Baked on a board, and not flipped: the flip is what takes pieces off their board. Flipped, or baked on a "pan".',
    ],
    [
      variety({ flip: false, bakedOn: 'pan', topping: 'after-flip' }),
      'variety plain topping: Topped after the flip, and not flipped. "before-flip" or "none", or a flip.',
    ],
    [
      variety({ windows: { bake: dwell('min', 20, 18, 25) } }),
      'variety plain windows/bake: Earliest, target and latest are 20 min, 18 min and 25 min. None longer than the next: earliest, target, latest.',
    ],
    [station({ acts: ['load', 'out', 'load'] }), 'station line acts: "load" is named twice. Each act once.'],
    [topping({ contains: ['egg', 'egg'] }), 'topping sesame contains: "egg" is named twice. Each allergen once.'],
    [dough({ contains: ['wheat', 'wheat'] }), 'dough plain contains: "wheat" is named twice. Each allergen once.'],
    [
      variety({ topping: 'none', toppingId: toppingId('sesame') }),
      'variety plain toppingId: Topped with "sesame", and "topping" says "none". No topping, or when it goes on.',
    ],
    [
      step({ id: 'late', list: 'changeover', kind: 'float-test' }),
      'step late kind: A float test in the changeover. "plain", or the list "opening".',
    ],
    [
      {
        entity: 'mixer',
        value: {
          ...DEFAULT_MIXER,
          leastFlour: { thousandths: 2_205, unit: 'lb' },
          mostFlour: { thousandths: 1_000, unit: 'kg' },
        },
      },
      'mixer - leastFlour: The least flour is 2.205 lb, more than the most. At most 1 kg.',
    ],
    [
      { entity: 'weekday', value: { id: weekdayId('6'), retired: false, hours: { ...SHOP.hours, closeMinute: 300 } } },
      'weekday 6 closeMinute: The shop closes at 05:00, not after opening. After 06:00.',
    ],
    [
      { entity: 'shelf', value: { ...first(SHOP.shelves), pieces: 1_001 } },
      'shelf 1 pieces: It holds 1001 pieces. At most 1000.',
    ],
  ])('%j', (change, expected) => {
    expect(said(changeMisfits(change))).toEqual([expected])
    // Of the shop as a whole the same is said, and more where other parts no longer fit this one.
    expect(said(shopMisfits(applySetUp(SHOP, [change])))).toContain(expected)
  })

  it('given a changeover after closing, then both its ends are said', () => {
    const late = hours({ changeoverFromMinute: 901, changeoverToMinute: 930 })
    expect(changeMisfits(late).map(({ field }) => field)).toEqual(['changeoverFromMinute', 'changeoverToMinute'])
  })

  it.each<SetUpChange>([
    hours({ ...CHANGEOVER, secondMenu: 'Flatbreads' }),
    hours({ ...CHANGEOVER, changeoverToMinute: 900 }),
    hours(CHANGEOVER),
    hours({ ovenReadyMinute: 360 }),
    dough({ route: ['chill', 'proof', 'rack', 'boards', 'oven'] }),
    dough({ windows: { chill: dwell('h', 8, 8, 8) } }),
    variety({ bakedOn: 'pan', flip: true, topping: 'after-flip' }),
    variety({ bakedOn: 'pan', flip: false, topping: 'before-flip' }),
    { entity: 'kettle', value: SHOP.kettle },
    { entity: 'mixer', value: null },
    {
      entity: 'mixer',
      value: {
        ...DEFAULT_MIXER,
        leastFlour: { thousandths: 2_204, unit: 'lb' },
        mostFlour: { thousandths: 1_000, unit: 'kg' },
      },
    },
    { entity: 'weekday', value: { id: weekdayId('7'), retired: false, hours: null } },
    { entity: 'weekday', value: { id: weekdayId('7'), retired: true, hours: { ...SHOP.hours, closeMinute: 300 } } },
    step({ id: 'float', kind: 'float-test' }),
  ])('%j fits', (change) => {
    expect(changeMisfits(change)).toEqual([])
    expect(shopMisfits(applySetUp(SHOP, [change]))).toEqual([])
  })
})

describe('what does not fit between parts', () => {
  it.each<readonly [string, (shop: Shop) => Shop, readonly string[]]>([
    ['no shelf', (shop) => retireAll(shop, 'shelves'), ['shelf - -: No shelf is in use. One at least.']],
    ['no variety', (shop) => retireAll(shop, 'varieties'), ['variety - -: No variety is in use. One at least.']],
    [
      'no station',
      (shop) => retireAll(shop, 'stations'),
      [
        'station - -: No station is in use. One at least.',
        'station - -: No station in use taps "load". "load" among the acts of one station at least.',
        'station - -: No station in use taps "out". "out" among the acts of one station at least.',
      ],
    ],
    [
      'nobody taps out',
      (shop) => applySetUp(shop, [station({ acts: ['load', 'flip'] })]),
      ['station - -: No station in use taps "out". "out" among the acts of one station at least.'],
    ],
    [
      '13 shelves',
      (shop) => ({ ...shop, shelves: many(first(shop.shelves), 13) }),
      ['shelf - -: 13 shelves are in use. At most 12; retire others.'],
    ],
    [
      'no window for the bake',
      (shop) => ({ ...shop, windows: { firstSide: dwell('min', 3, 3, 4) } }),
      ['windows - bake: The shop has no window for "bake". A window: every load needs it.'],
    ],
    [
      'a shelf on a hearth',
      () => ({ ...HEARTH, shelves: new Map([...HEARTH.shelves, ...SHOP.shelves]) }),
      ['shelf 1 -: A hearth has no shelves, and "1" is one. Retire it.'],
    ],
    [
      'a hearth without floor',
      () => ({ ...SHOP, oven: HEARTH.oven }),
      [
        'shelf 1 -: A hearth has no shelves, and "1" is one. Retire it.',
        'shelf - -: The hearth has no floor. One, in boards.',
      ],
    ],
    [
      'a hearth with two floors',
      () => ({ ...HEARTH, shelves: many(first(HEARTH.shelves), 2) }),
      ['shelf - -: The hearth has 2 floors. One.'],
    ],
    [
      'a floor among shelves',
      () => ({ ...HEARTH, oven: SHOP.oven }),
      ['shelf floor -: "floor" is a hearth\'s floor, and the oven has shelves. Pieces, or retire it.'],
    ],
    [
      'a dough that is not there',
      (shop) => applySetUp(shop, [variety({ doughId: doughId('oat') })]),
      ['variety plain doughId: There is no dough "oat". The id of a dough: "plain", "rye".'],
    ],
    [
      'a retired dough',
      (shop) => applySetUp(shop, [dough({ retired: true })]),
      [
        'variety plain doughId: Its dough "plain" is retired. A dough in use, or the variety retired too.',
        'variety sesame doughId: Its dough "plain" is retired. A dough in use, or the variety retired too.',
      ],
    ],
    [
      'boards off the route',
      (shop) => applySetUp(shop, [dough({ id: doughId('rye'), name: 'Rye', route: ['proof', 'oven'] })]),
      ['variety rye bakedOn: Baked on a board, and "rye" has none on its route. "pan", or boards on the route.'],
    ],
    [
      'a shop without boards',
      (shop) => ({ ...shop, varieties: many(first(shop.varieties), 1), boards: { ...shop.boards, count: 0 } }),
      ['variety plain.0 bakedOn: Baked on a board, and the shop has no boards. "pan", or the number of boards.'],
    ],
    [
      'a topping that is not there',
      (shop) => applySetUp(shop, [variety({ topping: 'before-flip', toppingId: toppingId('gold') })]),
      ['variety plain toppingId: There is no topping "gold". None, or a topping of that id.'],
    ],
    [
      'a topping retired under a variety',
      (shop) =>
        applySetUp(shop, [
          topping({ retired: true }),
          variety({ topping: 'before-flip', toppingId: toppingId('sesame') }),
        ]),
      ['variety plain toppingId: Its topping "sesame" is retired. A topping in use, or the variety retired too.'],
    ],
    [
      'two people of one name',
      (shop) =>
        applySetUp(
          shop,
          ['ana', 'ana2'].map((id) => ({
            entity: 'person',
            value: { id: personId(id), name: 'Ana', order: 0, retired: false },
          })),
        ),
      ['person ana2 name: Two people in use are called "Ana". A name of its own, or "ana" retired.'],
    ],
    [
      '41 steps',
      (shop) => ({ ...shop, steps: many(step({ id: 's' }).value, 41) }),
      ['step - -: 41 steps are in use. At most 40; retire others.'],
    ],
    [
      'a bake shorter than the first side of its dough',
      (shop) =>
        applySetUp(shop, [
          dough({ windows: { firstSide: dwell('min', 3, 4, 5) } }),
          variety({ windows: { bake: dwell('min', 2, 3, 4) } }),
        ]),
      [
        'variety plain windows: The flip is due after 4 min, the end of the bake after 3 min. A bake longer than its first side.',
      ],
    ],
    [
      'a bake shorter than the first side, both of the shop',
      (shop) => ({ ...shop, windows: { firstSide: dwell('min', 3, 4, 5), bake: dwell('min', 2, 3, 4) } }),
      [
        'windows - bake: The flip is due after 4 min, the end of the bake after 3 min. The whole time in the oven: longer than the first side.',
      ],
    ],
    [
      'two of one name',
      (shop) => applySetUp(shop, [variety({ name: 'SESAME' })]),
      ['variety sesame name: Two varieties in use are called "Sesame". A name of its own, or "plain" retired.'],
    ],
  ])('given %s, then it is said once', (_name, spoil, expected) => {
    expect(said(shopMisfits(spoil(SHOP)))).toEqual(expected)
  })

  it.each<readonly [string, () => Shop]>([
    ['a shop', () => SHOP],
    ['a hearth', () => HEARTH],
    [
      'a hearth with retired shelves',
      () => ({ ...HEARTH, shelves: new Map([...HEARTH.shelves, ...retireAll(SHOP, 'shelves').shelves]) }),
    ],
    [
      'a retired variety of a retired dough',
      () =>
        applySetUp(SHOP, [
          dough({ id: doughId('oat'), name: 'Oat', retired: true }),
          variety({ id: varietyId('oat'), name: 'Oat', doughId: doughId('oat'), retired: true }),
        ]),
    ],
    [
      'a retired name used again',
      () => applySetUp(SHOP, [variety({ id: first(SHOP.varieties).id, retired: true, name: 'Sesame' })]),
    ],
  ])('given %s, then it fits', (_name, shop) => {
    expect(shopMisfits(shop())).toEqual([])
  })

  it('given more than may be kept, then it is said even when they are retired', () => {
    const shelves = many({ ...first(SHOP.shelves), retired: true }, 500)
    const shop = { ...SHOP, shelves: new Map([...shelves, ...SHOP.shelves]) }
    expect(said(shopMisfits(shop))).toEqual(['shelf - -: There are 501 shelves. At most 500, retired ones included.'])
    expect(shopMisfits({ ...SHOP, shelves: new Map([...shelves].slice(1).concat([...SHOP.shelves])) })).toEqual([])
  })
})

function many<Entity extends { readonly id: string; readonly name: string }>(
  one: Entity,
  count: number,
): Map<Entity['id'], Entity> {
  return new Map(
    Array.from({ length: count }, (_, n) => {
      const id = `${one.id}.${n}` as Entity['id']
      return [id, { ...one, id, name: `${n}` }]
    }),
  )
}

function retireAll(shop: Shop, list: 'shelves' | 'varieties' | 'stations'): Shop {
  return { ...shop, [list]: new Map([...shop[list]].map(([id, entity]) => [id, { ...entity, retired: true }])) }
}
