import { doughId, personId, shelfId, stationId, stepId, varietyId } from '../../../shared-core/ids.ts'
import {
  DEFAULT_BAKING,
  DEFAULT_COUNTER,
  DEFAULT_DEMAND,
  DEFAULT_ORDERS,
  NO_FORMULA,
  NO_KETTLE_CARE,
} from '../../../shared-core/shop/default-rules.ts'
import type {
  Dough,
  DwellWindow,
  Hours,
  LineAct,
  Person,
  Shelf,
  Shop,
  Station,
  Step,
  Variety,
  Windows,
} from '../../../shared-core/shop/shop.ts'
import type { TimeUnit } from '../../../shared-core/units.ts'
import { spanMs } from '../../../shared-core/units.ts'

/**
 * An invented shop for tests: three shelves of 48, a kettle of 36 every 90 s, 24 boards of 6 that take 5 min to re-wet.
 * Plain dough stands on the rack before the kettle; rye is boiled cold. Windows are common practice, no source.
 */
export function shopWith(parts: Partial<Shop> = {}): Shop {
  return {
    profile: { name: 'Test Bagels', zone: 'America/Chicago', language: 'en', temperature: 'F', weight: 'g', clock: 12 },
    hours: hours(),
    kettle: { pieces: 36, cycleMs: spanMs(90, 's'), ...NO_KETTLE_CARE },
    boards: { count: 24, pieces: 6, rewetMs: spanMs(5, 'min') },
    oven: { kind: 'shelves', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
    mixer: null,
    cooler: null,
    doughRoom: null,
    counter: DEFAULT_COUNTER,
    demand: DEFAULT_DEMAND,
    baking: DEFAULT_BAKING,
    orders: DEFAULT_ORDERS,
    windows: TRADE_WINDOWS,
    shelves: table([shelf({ id: 's1', order: 1 }), shelf({ id: 's2', order: 2 }), shelf({ id: 's3', order: 3 })]),
    doughs: table([
      dough({ id: 'plain', order: 1 }),
      dough({ id: 'rye', order: 2, route: ['proof', 'chill', 'kettle', 'boards', 'oven'] }),
    ]),
    varieties: table([
      variety({ id: 'sesame', order: 1 }),
      variety({ id: 'poppy', order: 2 }),
      variety({ id: 'plain', order: 3, topping: 'none' }),
      variety({ id: 'focaccia', order: 4, bakedOn: 'pan', flip: false }),
      variety({ id: 'cheddar', order: 5, topping: 'after-flip' }),
      variety({ id: 'rye', order: 6, doughId: doughId('rye'), decidedAt: 'mixer', topping: 'none' }),
    ]),
    stations: table([station('line', ['load', 'flip', 'out'])]),
    ingredients: new Map(),
    preparations: new Map(),
    formulas: new Map(),
    toppings: new Map(),
    people: new Map(),
    steps: new Map(),
    weekdays: new Map(),
    specialDays: new Map(),
    kitchenStations: new Map(),
    portions: new Map(),
    menu: new Map(),
    runs: new Map(),
    ...parts,
  }
}

/** Earliest, target and latest in one unit. @example dwell(3, 3.5, 5, 'min') */
export function dwell(earliest: number, target: number, latest: number, unit: TimeUnit): DwellWindow {
  return { earliestMs: spanMs(earliest, unit), targetMs: spanMs(target, unit), latestMs: spanMs(latest, unit), unit }
}

/** `bake` counts from the load to the out, first side included. */
export const TRADE_WINDOWS: Windows = {
  proof: dwell(45, 60, 90, 'min'),
  chill: dwell(8, 14, 48, 'h'),
  rack: dwell(20, 40, 90, 'min'),
  kettle: dwell(45, 60, 90, 's'),
  boards: dwell(0, 2, 8, 'min'),
  firstSide: dwell(3, 3.5, 5, 'min'),
  bake: dwell(14, 16, 18, 'min'),
  cool: dwell(10, 15, 20, 'min'),
}

/** Oven ready at 4:30, open 6:00, changeover 11:00–12:00 to pizza, close 15:00. */
export function hours(parts: Partial<Hours> = {}): Hours {
  return {
    ovenReadyMinute: 270,
    openMinute: 360,
    changeoverFromMinute: 660,
    changeoverToMinute: 720,
    closeMinute: 900,
    secondMenu: 'Pizza',
    ...parts,
  }
}

type Named<Thing> = Partial<Omit<Thing, 'id'>> & { readonly id: string }

export function shelf(parts: Named<Shelf>): Shelf {
  return {
    name: parts.id.replace(/^s/, ''),
    order: 1,
    pieces: 48,
    emptyByMinute: null,
    floorBoards: null,
    slots: 0,
    retired: false,
    ...parts,
    id: shelfId(parts.id),
  }
}

export function dough(parts: Named<Dough>): Dough {
  return {
    name: titled(parts.id),
    order: 1,
    route: ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven'],
    trayPieces: 15,
    contains: [],
    ...NO_FORMULA,
    windows: {},
    retired: false,
    ...parts,
    id: doughId(parts.id),
  }
}

/** On a board, topped before the flip, of plain dough, unless said otherwise. */
export function variety(parts: Named<Variety>): Variety {
  return {
    name: titled(parts.id),
    order: 1,
    doughId: doughId('plain'),
    size: 'regular',
    decidedAt: 'line',
    topping: 'before-flip',
    toppingId: null,
    bakedOn: 'board',
    flip: true,
    windows: {},
    priceCents: 160,
    costCents: 45,
    kitchenCents: null,
    showLeast: 0,
    avoids: [],
    usual: null,
    retired: false,
    ...parts,
    id: varietyId(parts.id),
  }
}

export function station(id: string, acts: readonly LineAct[], parts: Partial<Station> = {}): Station {
  return { id: stationId(id), name: titled(id), order: 1, acts, retired: false, ...parts }
}

/** Stations that between them tap every act of the line. */
export const ALL_STATIONS = [
  station('cooler', ['pull']),
  station('kettle', ['dip', 'lift']),
  station('topping', ['board']),
  station('oven', ['load', 'flip', 'out']),
]

export function step(parts: Named<Step>): Step {
  return {
    name: titled(parts.id),
    order: 1,
    list: 'opening',
    offsetMs: -30 * 60_000,
    kind: 'plain',
    retired: false,
    ...parts,
    id: stepId(parts.id),
  }
}

export function person(id: string): Person {
  return { id: personId(id), name: titled(id), order: 1, retired: false }
}

/** An opening list from an hour before the first load on, and a changeover with the oven empty at its zero. */
export const STEPS = [
  step({ id: 'oven-on', order: 1, offsetMs: -60 * 60_000 }),
  step({ id: 'kettle-lit', order: 2, offsetMs: -45 * 60_000 }),
  step({ id: 'float', order: 3, offsetMs: -20 * 60_000, kind: 'float-test' }),
  step({ id: 'drain', order: 4, list: 'changeover', offsetMs: -10 * 60_000 }),
  step({ id: 'stones', order: 5, list: 'changeover', offsetMs: 5 * 60_000 }),
]
export const PEOPLE = [person('ana'), person('ben')]

/** Entities as the shop holds them. @example table([shelf({ id: 's1' })]) */
export function table<Thing extends { readonly id: string }>(
  things: readonly Thing[],
): ReadonlyMap<Thing['id'], Thing> {
  return new Map(things.map((thing) => [thing.id, thing]))
}

function titled(id: string): string {
  return id.charAt(0).toUpperCase() + id.slice(1)
}
