import fc from 'fast-check'
import { dateAfter } from '../../../shared-core/day/label.ts'
import {
  doughId,
  formulaId,
  ingredientId,
  personId,
  shelfId,
  specialDayId,
  stationId,
  stepId,
  toppingId,
  varietyId,
  weekdayId,
} from '../../../shared-core/ids.ts'
import { inOrder } from '../../../shared-core/shop/in-order.ts'
import type { CounterRules } from '../../../shared-core/shop/rules.ts'
import type {
  DwellWindow,
  Hours,
  Oven,
  Shelf,
  Shop,
  SpecialDay,
  Station,
  Step,
  Temperature,
  Variety,
  Weekday,
  Weight,
  Windows,
} from '../../../shared-core/shop/shop.ts'
import { ALLERGENS, LINE_ACTS, SPECIAL_KINDS, WINDOW_STAGES } from '../../../shared-core/shop/stages.ts'
import { durationMs, spanMs } from '../../../shared-core/units.ts'
import { anyDoughRoom, weight as anyWeight, pieceWeight } from './formula-maker.ts'
import { anyKitchen } from './kitchen-maker.ts'

/** Any shop whose parts fit: every kind of oven, retired entities, windows at every level, orders with gaps. */
export const anyShop: fc.Arbitrary<Shop> = fc
  .record({
    kind: fc.constantFrom<Oven['kind']>('shelves', 'rotating', 'hearth'),
    profile: fc.record({
      name: fc.constantFrom('Test Bagels', 'Ñandú & Co', '"Quoted" / ~1'),
      zone: fc.constantFrom('America/Chicago', 'Europe/Madrid'),
      language: fc.constantFrom('en' as const, 'es' as const),
      temperature: fc.constantFrom('C' as const, 'F' as const),
      weight: fc.constantFrom('g' as const, 'lb-oz' as const),
      clock: fc.constantFrom(12 as const, 24 as const),
    }),
    changeover: fc.option(
      fc.record({ from: minute(360, 600), to: minute(601, 900), menu: fc.option(fc.constant('Flatbreads')) }),
    ),
    kettle: fc.record({
      pieces: fc.integer({ min: 1, max: 500 }),
      cycleMs: ms(5_000, 1_800_000),
      recoverMs: ms(0, 3_600_000),
      care: fc.record({ topUp: careEvery(), malt: careEvery(), skim: careEvery(), change: careEvery() }),
    }),
    heat: fc.record({ bakeAt: fc.option(temperature()), secondAt: fc.option(temperature()) }),
    room: anyDoughRoom,
    kitchen: anyKitchen,
    mixer: fc.option(
      fc.record({
        name: fc.constantFrom('Mixer', 'Spiral 2'),
        washMs: ms(0, 7_200_000),
        leastFlour: weight(1, 10_000),
        mostFlour: weight(1_000_000, 1_000_000_000),
      }),
    ),
    cooler: fc.option(fc.record({ trays: fc.integer({ min: 1, max: 2_000 }), keepsAt: fc.option(temperature()) })),
    counter: fc.record({
      salesFrom: fc.constantFrom<CounterRules['salesFrom']>('taps', 'till', 'sweeps'),
      sweepEveryMs: ms(600_000, 43_200_000),
      dayOldPercent: fc.integer({ min: 0, max: 100 }),
    }),
    demand: fc.record({
      region: fc.option(fc.constantFrom('US-IL', 'ES-MD', 'MX')),
      disappointCents: fc.integer({ min: 0, max: 100_000 }),
      takeAnotherPercent: fc.integer({ min: 0, max: 100 }),
      dayOldSells: fc.integer({ min: 0, max: 5_000 }),
    }),
    baking: fc.record({
      advice: fc.boolean(),
      changeGainCents: fc.integer({ min: 0, max: 100_000 }),
      stalePercentPerHour: fc.integer({ min: 0, max: 100 }),
      carryPercent: fc.integer({ min: 0, max: 100 }),
      boardWaitMs: ms(0, 7_200_000),
      unitPieces: fc.constant(1),
      toleranceMs: ms(0, 1_800_000),
      door: fc.record({ loadMs: ms(0, 1_800_000), flipMs: ms(0, 1_800_000), outMs: ms(0, 1_800_000) }),
      turnMs: ms(0, 1_800_000),
      people: fc
        .uniqueArray(fc.record({ fromMinute: fc.integer({ min: 0, max: 1_439 }), people: fc.nat({ max: 99 }) }), {
          selector: ({ fromMinute }) => fromMinute,
          maxLength: 6,
        })
        .map((rows) => rows.sort((one, other) => one.fromMinute - other.fromMinute)),
      showUntilMinute: fc.option(fc.integer({ min: 361, max: 900 })),
      contactCents: fc.integer({ min: 0, max: 100_000 }),
    }),
    specialDays: entries(fc.record({ kind: fc.constantFrom(...SPECIAL_KINDS), spans: someSpans() })),
    weekdays: fc.uniqueArray(
      fc.record({ day: fc.integer({ min: 1, max: 7 }), hours: fc.option(ownHours()), retired: fc.boolean() }),
      {
        selector: ({ day }) => day,
        maxLength: 7,
      },
    ),
    toppings: entries(fc.record({ contains: fc.subarray([...ALLERGENS]), madeOf: fc.option(anyWeight()) })),
    people: entries(fc.record({})),
    steps: entries(
      fc.record({
        list: fc.constantFrom<Step['list']>('opening', 'changeover'),
        offsetMs: fc.integer({ min: -86_400_000, max: 86_400_000 }),
        isTest: fc.boolean(),
      }),
    ),
    boards: fc.record({
      count: fc.integer({ min: 1, max: 300 }),
      pieces: fc.integer({ min: 1, max: 8 }),
      rewetMs: ms(0, 3_600_000),
    }),
    handlingMs: ms(0, 1_800_000),
    windows: someWindows(),
    shelves: entries(
      fc.record({
        pieces: fc.integer({ min: 1, max: 1_000 }),
        floor: fc.boolean(),
        emptyByMinute: fc.option(fc.integer({ min: 271, max: 400 })),
        slots: fc.integer({ min: 0, max: 40 }),
      }),
    ),
    doughs: entries(
      fc.record({
        trayPieces: fc.integer({ min: 1, max: 200 }),
        contains: fc.subarray([...ALLERGENS]),
        windows: someWindows(),
        rack: fc.boolean(),
        pieceWeight: fc.option(pieceWeight()),
        labelWeight: fc.option(pieceWeight()),
        shapedBy: fc.constantFrom('divider' as const, 'hand' as const),
      }),
    ),
    varieties: entries(
      fc.record({
        size: fc.constantFrom<Variety['size']>('mini', 'regular', 'large', 'stick'),
        decidedAt: fc.constantFrom<Variety['decidedAt']>('mixer', 'line'),
        topping: fc.constantFrom<Variety['topping']>('none', 'before-flip', 'after-flip'),
        isToppingSaid: fc.boolean(),
        windows: someWindows(),
        priceCents: fc.integer({ min: 0, max: 100_000 }),
        costCents: fc.integer({ min: 0, max: 100_000 }),
        kitchenCents: fc.option(fc.integer({ min: 0, max: 100_000 })),
        showLeast: fc.integer({ min: 0, max: 1_000 }),
        avoids: fc.subarray([...ALLERGENS]),
        usual: fc.option(fc.integer({ min: 0, max: 20_000 })),
      }),
    ),
    stations: entries(fc.record({ acts: fc.subarray([...LINE_ACTS]) })),
  })
  .map((drawn): Shop => {
    const { kind, profile, changeover, kettle, boards, handlingMs, windows } = drawn
    const shelf = drawn.shelves.map(({ id, order, retired, pieces, floor, emptyByMinute, slots }, at): Shelf => {
      const isFloor = kind === 'hearth' ? at === 0 || floor : retired && at > 0 && floor
      return {
        id: shelfId(id),
        name: id,
        order,
        pieces,
        emptyByMinute,
        floorBoards: isFloor ? 10 : null,
        slots,
        retired: kind === 'hearth' ? at > 0 : retired && at > 0,
      }
    })
    return {
      profile,
      hours: {
        ovenReadyMinute: 270,
        openMinute: 360,
        changeoverFromMinute: changeover?.from ?? null,
        changeoverToMinute: changeover?.to ?? null,
        closeMinute: 900,
        secondMenu: changeover?.menu ?? null,
      },
      kettle,
      boards,
      oven: { kind, handlingMs, ...drawn.heat },
      mixer: drawn.mixer,
      cooler: drawn.cooler,
      counter: drawn.counter,
      demand: drawn.demand,
      baking: drawn.baking,
      ...drawn.room,
      ...drawn.kitchen,
      toppings: byId(
        drawn.toppings.map((one, at) => ({
          ...one,
          id: toppingId(one.id),
          name: `Topping ${one.id}`,
          madeOf: one.madeOf === null ? [] : [{ ingredientId: ingredientId('i6'), weight: one.madeOf }],
          retired: one.retired && at > 0,
        })),
      ),
      people: byId(drawn.people.map((one) => ({ ...one, id: personId(one.id), name: `Who ${one.id}` }))),
      steps: byId(
        drawn.steps.map(
          ({ isTest, ...one }): Step => ({
            ...one,
            id: stepId(one.id),
            name: `Step ${one.id}`,
            kind: isTest && one.list === 'opening' ? 'float-test' : 'plain',
          }),
        ),
      ),
      specialDays: byId(
        drawn.specialDays.map((one): SpecialDay => ({ ...one, id: specialDayId(one.id), name: `Day ${one.id}` })),
      ),
      weekdays: byId(drawn.weekdays.map(({ day, ...one }): Weekday => ({ ...one, id: weekdayId(String(day)) }))),
      windows: { firstSide: min(3, 3.5, 4), bake: min(15, 18, 25), ...windows },
      shelves: byId(shelf),
      doughs: byId(
        drawn.doughs.map(({ rack, ...one }, at) => ({
          ...one,
          id: doughId(one.id),
          name: `Dough ${one.id}`,
          formulaId: one.pieceWeight === null ? null : formulaId('plain'),
          route: ['proof', ...(rack ? ['rack' as const] : []), 'kettle', 'boards', 'oven'],
          retired: one.retired && at > 0,
        })),
      ),
      varieties: byId(
        drawn.varieties.map(({ isToppingSaid, ...one }, at) => ({
          ...one,
          id: varietyId(one.id),
          name: `Variety ${one.id}`,
          doughId: doughId(drawn.doughs[0]?.id ?? ''),
          toppingId: one.topping !== 'none' && isToppingSaid ? toppingId(drawn.toppings[0]?.id ?? '') : null,
          bakedOn: one.topping === 'none' ? 'pan' : 'board',
          flip: one.topping !== 'none',
          retired: one.retired && at > 0,
        })),
      ),
      stations: byId(
        drawn.stations.map(
          (one, at): Station => ({
            ...one,
            id: stationId(one.id),
            name: `St ${one.id}`,
            acts: at === 0 ? ['load', 'out'] : one.acts,
            retired: one.retired && at > 0,
          }),
        ),
      ),
    }
  })

/**
 * The same with `order` counted from 0 in each list, as a file read gives it. A weekday that has the usual hours again is
 * not in a file: it says nothing.
 */
export function renumbered(shop: Shop): Shop {
  const list = <Id, Entity extends { id: string; order: number; retired: boolean }>(map: ReadonlyMap<Id, Entity>) =>
    new Map(inOrder(map as ReadonlyMap<string, Entity>).map((one, order) => [one.id as Id, { ...one, order }]))
  return {
    ...shop,
    ingredients: list(shop.ingredients),
    preparations: list(shop.preparations),
    formulas: list(shop.formulas),
    shelves: list(shop.shelves),
    doughs: list(shop.doughs),
    toppings: list(shop.toppings),
    varieties: list(shop.varieties),
    stations: list(shop.stations),
    people: list(shop.people),
    steps: list(shop.steps),
    specialDays: list(shop.specialDays),
    kitchenStations: list(shop.kitchenStations),
    portions: list(shop.portions),
    menu: list(shop.menu),
    runs: list(shop.runs),
    weekdays: new Map([...shop.weekdays].filter(([, { retired }]) => !retired)),
  }
}

function careEvery() {
  return fc.option(fc.integer({ min: 1, max: 50_000 }))
}

/** Dates in order: each span begins some days after the one before. */
function someSpans(): fc.Arbitrary<SpecialDay['spans']> {
  const step = fc.record({ after: fc.integer({ min: 1, max: 400 }), days: fc.integer({ min: 0, max: 20 }) })
  return fc.array(step, { maxLength: 5 }).map((steps) => {
    let last = '2023-12-31'
    return steps.map(({ after, days }) => {
      const from = dateAfter(last, after)
      last = dateAfter(from, days)
      return { from, to: last }
    })
  })
}

function temperature(): fc.Arbitrary<Temperature> {
  return fc.record({ degrees: fc.integer({ min: -60, max: 1_200 }), unit: fc.constantFrom('C' as const, 'F' as const) })
}

/** Whatever the units, the most is more than the least: at least a thousand ounces against at most ten. */
function weight(from: number, to: number): fc.Arbitrary<Weight> {
  return fc.record({
    thousandths: fc.integer({ min: from, max: to }),
    unit:
      from < 1_000
        ? fc.constantFrom('g' as const, 'oz' as const)
        : fc.constantFrom('oz' as const, 'lb' as const, 'kg' as const),
  })
}

function ownHours(): fc.Arbitrary<Hours> {
  return fc.record({ open: minute(300, 500), close: minute(600, 1_439), menu: fc.option(fc.constant('Soup')) }).map(
    ({ open, close, menu }): Hours => ({
      ovenReadyMinute: open - 60,
      openMinute: open,
      changeoverFromMinute: menu === null ? null : open + 60,
      changeoverToMinute: menu === null ? null : open + 90,
      closeMinute: close,
      secondMenu: menu,
    }),
  )
}

function entries<Own extends object>(own: fc.Arbitrary<Own>) {
  const head = fc.record({
    id: fc.stringMatching(/^[a-z0-9][a-z0-9.-]{0,5}$/),
    order: fc.integer({ min: 0, max: 20 }),
    retired: fc.boolean(),
  })
  return fc.uniqueArray(
    fc.tuple(head, own).map(([one, rest]) => ({ ...one, ...rest })),
    { minLength: 1, maxLength: 5, selector: ({ id }) => id },
  )
}

/** In whole milliseconds of any size: what a person enters need not come out even in its unit. */
function someWindows(): fc.Arbitrary<Windows> {
  const window = fc
    .tuple(
      fc.array(fc.integer({ min: 0, max: 14 * 24 * 3_600_000 }), { minLength: 3, maxLength: 3 }),
      fc.constantFrom('s' as const, 'min' as const, 'h' as const),
    )
    .map(([sides, unit]): DwellWindow => {
      const [earliestMs = 0, targetMs = 0, latestMs = 0] = sides.sort((a, b) => a - b)
      return {
        earliestMs: durationMs(earliestMs),
        targetMs: durationMs(targetMs),
        latestMs: durationMs(latestMs),
        unit,
      }
    })
  const stages = WINDOW_STAGES.filter((stage) => stage !== 'firstSide' && stage !== 'bake')
  return fc
    .tuple(fc.subarray(stages), fc.array(window, { minLength: 6, maxLength: 6 }))
    .map(([some, windows]) =>
      Object.fromEntries(some.flatMap((stage, at) => (windows[at] ? [[stage, windows[at]]] : []))),
    )
}

function byId<Id, Entity extends { readonly id: Id }>(list: readonly Entity[]): Map<Id, Entity> {
  return new Map(list.map((entity) => [entity.id, entity]))
}

function min(earliest: number, target: number, latest: number): DwellWindow {
  return {
    earliestMs: spanMs(earliest, 'min'),
    targetMs: spanMs(target, 'min'),
    latestMs: spanMs(latest, 'min'),
    unit: 'min',
  }
}

function minute(from: number, to: number) {
  return fc.integer({ min: from, max: to })
}

function ms(from: number, to: number) {
  return fc.integer({ min: from, max: to }).map(durationMs)
}
