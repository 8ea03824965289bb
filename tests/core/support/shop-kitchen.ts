import { kitchenStationId, menuItemId, portionId, runId } from '../../../shared-core/ids.ts'
import type { KitchenStation, MenuItem, MenuStep, OvenStep, Portion, Run } from '../../../shared-core/shop/kitchen.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import { durationMs, spanMs } from '../../../shared-core/units.ts'
import { shelf, table } from './shop.ts'

type Named<Thing> = Partial<Omit<Thing, 'id'>> & { readonly id: string }

export function kitchenStation(parts: Named<KitchenStation>): KitchenStation {
  return { name: titled(parts.id), order: 1, hands: 1, retired: false, ...parts, id: kitchenStationId(parts.id) }
}

export function portion(parts: Named<Portion>): Portion {
  return {
    name: titled(parts.id),
    order: 1,
    contains: [],
    pullMs: null,
    trayPortions: 12,
    retired: false,
    ...parts,
    id: portionId(parts.id),
  }
}

/** On no bagel, of nothing and without steps unless said otherwise. */
export function menuItem(parts: Named<MenuItem>): MenuItem {
  return {
    name: titled(parts.id),
    order: 1,
    priceCents: 900,
    onBagel: false,
    canToast: false,
    portions: [],
    steps: [],
    retired: false,
    ...parts,
    id: menuItemId(parts.id),
  }
}

/** Portions of an item. @example of({ ball: 2, sauce: 1 }) */
export function of(counts: Readonly<Record<string, number>>): MenuItem['portions'] {
  return Object.entries(counts).map(([id, portions]) => ({ portionId: portionId(id), portions }))
}

export function byHand(station: string, seconds: number): MenuStep {
  return { stationId: kitchenStationId(station), takesMs: spanMs(seconds, 's'), oven: null }
}

export function inOven(station: string, seconds: number, parts: Partial<OvenStep> = {}): MenuStep {
  return {
    stationId: kitchenStationId(station),
    takesMs: spanMs(seconds, 's'),
    oven: { slots: 1, at: null, turns: [], ...parts },
  }
}

export function turnAt(seconds: number, what: 'turn' | 'move' = 'turn'): OvenStep['turns'][number] {
  return { afterMs: durationMs(seconds * 1_000), what }
}

export function run(parts: Named<Run>): Run {
  return {
    name: titled(parts.id),
    order: 1,
    leavesMinute: 420,
    stopMs: spanMs(10, 'min'),
    loadMs: spanMs(10, 'min'),
    retired: false,
    ...parts,
    id: runId(parts.id),
  }
}

/**
 * An invented kitchen: sandwiches (two hands), an oven of 4, 4 and 2 places, drinks. A sandwich and a melt are made on
 * bagels; a flatbread is dressed 60 s, bakes 240 s, is turned after 120 s and cut in 15 s; a long one takes two places.
 */
export function kitchenParts(): Pick<Shop, 'kitchenStations' | 'portions' | 'menu' | 'runs' | 'shelves'> {
  const dress = byHand('sandwiches', 60)
  const cut = byHand('sandwiches', 15)
  return {
    shelves: table([
      shelf({ id: 's1', order: 1, slots: 4 }),
      shelf({ id: 's2', order: 2, slots: 4 }),
      shelf({ id: 's3', order: 3, slots: 2 }),
    ]),
    kitchenStations: table([
      kitchenStation({ id: 'sandwiches', order: 1, hands: 2 }),
      kitchenStation({ id: 'oven', order: 2 }),
      kitchenStation({ id: 'drinks', order: 3 }),
    ]),
    portions: table([
      portion({ id: 'ball', order: 1, contains: ['wheat'], pullMs: spanMs(90, 'min') }),
      portion({ id: 'sauce', order: 2 }),
      portion({ id: 'cheese', order: 3, contains: ['milk'] }),
      portion({ id: 'lox', order: 4, contains: ['fish'] }),
    ]),
    menu: table([
      menuItem({
        id: 'lox',
        order: 1,
        onBagel: true,
        canToast: true,
        portions: of({ cheese: 1, lox: 1 }),
        steps: [dress],
      }),
      menuItem({
        id: 'melt',
        order: 2,
        onBagel: true,
        portions: of({ cheese: 2 }),
        steps: [dress, inOven('oven', 150)],
      }),
      menuItem({
        id: 'flatbread',
        order: 3,
        portions: of({ ball: 1, sauce: 1, cheese: 1 }),
        steps: [dress, inOven('oven', 240, { turns: [turnAt(120)] }), cut],
      }),
      menuItem({
        id: 'long',
        order: 4,
        portions: of({ ball: 2, sauce: 2, cheese: 2 }),
        steps: [dress, inOven('oven', 390, { slots: 2 }), cut],
      }),
      menuItem({ id: 'coffee', order: 5, steps: [byHand('drinks', 20)] }),
      menuItem({ id: 'tub', order: 6, portions: of({ cheese: 6 }) }),
    ]),
    runs: table([run({ id: 'van' })]),
  }
}

function titled(id: string): string {
  return id.charAt(0).toUpperCase() + id.slice(1)
}
