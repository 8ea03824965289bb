import fc from 'fast-check'
import { doughId, shelfId, stationId, varietyId } from '../../../shared-core/ids.ts'
import { DEFAULT_COUNTER, NO_KETTLE_CARE } from '../../../shared-core/shop/default-rules.ts'
import { inOrder } from '../../../shared-core/shop/in-order.ts'
import type { DwellWindow, Oven, Shelf, Shop, Station, Variety, Windows } from '../../../shared-core/shop/shop.ts'
import { LINE_ACTS, WINDOW_STAGES } from '../../../shared-core/shop/stages.ts'
import { durationMs, spanMs } from '../../../shared-core/units.ts'

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
    kettle: fc.record({ pieces: fc.integer({ min: 1, max: 500 }), cycleMs: ms(5_000, 1_800_000) }),
    boards: fc.record({
      count: fc.integer({ min: 1, max: 300 }),
      pieces: fc.integer({ min: 1, max: 8 }),
      rewetMs: ms(0, 3_600_000),
    }),
    handlingMs: ms(0, 1_800_000),
    windows: someWindows(),
    shelves: entries(fc.record({ pieces: fc.integer({ min: 1, max: 1_000 }), floor: fc.boolean() })),
    doughs: entries(
      fc.record({ trayPieces: fc.integer({ min: 1, max: 200 }), windows: someWindows(), rack: fc.boolean() }),
    ),
    varieties: entries(
      fc.record({
        size: fc.constantFrom<Variety['size']>('mini', 'regular', 'large', 'stick'),
        decidedAt: fc.constantFrom<Variety['decidedAt']>('mixer', 'line'),
        topping: fc.constantFrom<Variety['topping']>('none', 'before-flip', 'after-flip'),
        windows: someWindows(),
        priceCents: fc.integer({ min: 0, max: 100_000 }),
        costCents: fc.integer({ min: 0, max: 100_000 }),
      }),
    ),
    stations: entries(fc.record({ acts: fc.subarray([...LINE_ACTS]) })),
  })
  .map((drawn): Shop => {
    const { kind, profile, changeover, kettle, boards, handlingMs, windows } = drawn
    const shelf = drawn.shelves.map(({ id, order, retired, pieces, floor }, at): Shelf => {
      const isFloor = kind === 'hearth' ? at === 0 || floor : retired && at > 0 && floor
      return {
        id: shelfId(id),
        name: id,
        order,
        pieces,
        floorBoards: isFloor ? 10 : null,
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
      kettle: { ...kettle, ...NO_KETTLE_CARE },
      boards,
      oven: { kind, handlingMs, bakeAt: null, secondAt: null },
      mixer: null,
      cooler: null,
      counter: DEFAULT_COUNTER,
      toppings: new Map(),
      people: new Map(),
      steps: new Map(),
      weekdays: new Map(),
      windows: { firstSide: min(3, 3.5, 4), bake: min(15, 18, 25), ...windows },
      shelves: byId(shelf),
      doughs: byId(
        drawn.doughs.map(({ rack, ...one }, at) => ({
          ...one,
          id: doughId(one.id),
          name: `Dough ${one.id}`,
          contains: [],
          route: ['proof', ...(rack ? ['rack' as const] : []), 'kettle', 'boards', 'oven'],
          retired: one.retired && at > 0,
        })),
      ),
      varieties: byId(
        drawn.varieties.map((one, at) => ({
          ...one,
          id: varietyId(one.id),
          name: `Variety ${one.id}`,
          doughId: doughId(drawn.doughs[0]?.id ?? ''),
          toppingId: null,
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

/** The same with `order` counted from 0 in each list, as a file read gives it. */
export function renumbered(shop: Shop): Shop {
  const list = <Id, Entity extends { id: string; order: number; retired: boolean }>(map: ReadonlyMap<Id, Entity>) =>
    new Map(inOrder(map as ReadonlyMap<string, Entity>).map((one, order) => [one.id as Id, { ...one, order }]))
  return {
    ...shop,
    shelves: list(shop.shelves),
    doughs: list(shop.doughs),
    varieties: list(shop.varieties),
    stations: list(shop.stations),
  }
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
