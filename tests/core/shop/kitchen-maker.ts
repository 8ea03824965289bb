import fc from 'fast-check'
import { kitchenStationId, menuItemId, portionId, runId } from '../../../shared-core/ids.ts'
import type { KitchenStation, MenuItem, MenuStep, OvenStep, Portion, Run } from '../../../shared-core/shop/kitchen.ts'
import type { OrderRules } from '../../../shared-core/shop/rules.ts'
import type { Shop, Temperature } from '../../../shared-core/shop/shop.ts'
import { ALLERGENS } from '../../../shared-core/shop/stages.ts'
import type { DurationMs } from '../../../shared-core/units.ts'
import { durationMs } from '../../../shared-core/units.ts'

type Kitchen = Pick<Shop, 'orders' | 'kitchenStations' | 'portions' | 'menu' | 'runs'>

const ms = (from: number, to: number) => fc.integer({ min: from, max: to }).map(durationMs)

const orders: fc.Arbitrary<OrderRules> = fc.record({
  dozenPieces: fc.integer({ min: 10, max: 14 }),
  cutOffMinute: fc.option(fc.integer({ min: 0, max: 1_439 })),
  walkInPercent: fc.integer({ min: 0, max: 100 }),
  walkInLeast: fc.integer({ min: 0, max: 500 }),
  keepsAsTheyCome: fc.boolean(),
  noShowMs: fc.option(ms(300_000, 43_200_000)),
  forgetDays: fc.integer({ min: 1, max: 400 }),
  madeInMs: ms(60_000, 7_200_000),
  sliceCoolMs: ms(0, 14_400_000),
  packMs: ms(0, 3_600_000),
  boxPieces: fc.integer({ min: 1, max: 500 }),
})

const temperature: fc.Arbitrary<Temperature> = fc.record({
  degrees: fc.integer({ min: -60, max: 1_200 }),
  unit: fc.constantFrom('C' as const, 'F' as const),
})

const takes = ms(1_000, 3_600_000)

/** Turns in order, all of them before it is out. */
const bake: fc.Arbitrary<{ readonly takesMs: DurationMs; readonly oven: OvenStep }> = fc
  .record({
    times: fc.uniqueArray(fc.integer({ min: 1_000, max: 3_600_000 }), { minLength: 1, maxLength: 4 }),
    at: fc.option(temperature),
    what: fc.constantFrom('turn' as const, 'move' as const),
  })
  .map(({ times, at, what }) => {
    const sorted = [...times].sort((one, other) => one - other)
    const turns = sorted.slice(0, -1).map((afterMs) => ({ afterMs: durationMs(afterMs), what }))
    return { takesMs: durationMs(sorted[sorted.length - 1] ?? 1_000), oven: { slots: 1, at, turns } }
  })

const step = (stations: number): fc.Arbitrary<MenuStep> =>
  fc
    .tuple(fc.nat({ max: stations - 1 }), fc.oneof(bake, fc.record({ takesMs: takes, oven: fc.constant(null) })))
    .map(([at, how]) => ({ stationId: kitchenStationId(`k${at}`), ...how }))

const item: fc.Arbitrary<Pick<MenuItem, 'priceCents' | 'onBagel' | 'canToast' | 'portions' | 'steps'>> = fc
  .record({
    priceCents: fc.integer({ min: 0, max: 100_000 }),
    onBagel: fc.boolean(),
    toasts: fc.boolean(),
    portions: fc.uniqueArray(fc.record({ at: fc.nat({ max: 2 }), portions: fc.integer({ min: 1, max: 20 }) }), {
      selector: ({ at }) => at,
      maxLength: 3,
    }),
    steps: fc.array(step(3), { maxLength: 3 }),
  })
  .map(({ toasts, portions, ...rest }) => ({
    ...rest,
    canToast: rest.onBagel && toasts,
    portions: portions.map((one) => ({ portionId: portionId(`p${one.at}`), portions: one.portions })),
  }))

const head = fc.record({ order: fc.integer({ min: 0, max: 20 }), retired: fc.boolean() })

/** Any kitchen whose parts fit: three stations and portions in use, some retired ones, items and runs of any kind. */
export const anyKitchen: fc.Arbitrary<Kitchen> = fc
  .record({
    orders,
    stations: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 3, maxLength: 4 }),
    portions: fc.array(
      fc.record({
        contains: fc.subarray([...ALLERGENS]),
        pullMs: fc.option(ms(0, 86_400_000)),
        trayPortions: fc.integer({ min: 1, max: 500 }),
      }),
      { minLength: 3, maxLength: 4 },
    ),
    menu: fc.array(fc.tuple(head, item), { maxLength: 4 }),
    runs: fc.array(fc.tuple(head, fc.integer({ min: 271, max: 900 }), ms(0, 14_400_000), ms(0, 7_200_000)), {
      maxLength: 3,
    }),
  })
  .map(
    (drawn): Kitchen => ({
      orders: drawn.orders,
      kitchenStations: byId(
        drawn.stations.map((hands, at): KitchenStation => {
          return { id: kitchenStationId(`k${at}`), name: `Kitchen ${at}`, order: at * 2, hands, retired: at > 2 }
        }),
      ),
      portions: byId(
        drawn.portions.map((one, at): Portion => {
          return { ...one, id: portionId(`p${at}`), name: `Portion ${at}`, order: 9 - at, retired: at > 2 }
        }),
      ),
      menu: byId(
        drawn.menu.map(([ends, one], at): MenuItem => {
          return { ...one, ...ends, id: menuItemId(`m${at}`), name: `Item ${at}` }
        }),
      ),
      runs: byId(
        drawn.runs.map(([ends, leavesMinute, stopMs, loadMs], at): Run => {
          return { ...ends, id: runId(`r${at}`), name: `Run ${at}`, leavesMinute, stopMs, loadMs }
        }),
      ),
    }),
  )

function byId<Id, Entity extends { readonly id: Id }>(list: readonly Entity[]): Map<Id, Entity> {
  return new Map(list.map((entity) => [entity.id, entity]))
}
