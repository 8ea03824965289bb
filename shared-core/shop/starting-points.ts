import { shelfId, stationId } from '../ids.ts'
import { spanMs } from '../units.ts'
import {
  DEFAULT_BAKING,
  DEFAULT_COUNTER,
  DEFAULT_DEMAND,
  DEFAULT_KETTLE_CARE,
  DEFAULT_ORDERS,
} from './default-rules.ts'
import { DEFAULT_WINDOWS } from './default-windows.ts'
import { pickableDoughs, pickableToppings, pickableVarieties } from './pickable.ts'
import type { Language, Oven, OvenKind, Profile, Shelf, Shop, Station, Temperature, Variety } from './shop.ts'
import { startingSteps } from './starting-steps.ts'

/** What a new shop's folder says of itself. */
export interface NewShop {
  readonly name: string
  readonly zone: string
  readonly language: Language
}

/**
 * A small shop to begin with, when no set-up file was given: one dough, seven varieties with their toppings, equipment
 * and lists by the kind of oven; nobody's name. Everything in it is common practice, no source, and is there to be
 * changed, or replaced by the shop's own file.
 * @param kind `shelves`: five decks of 12 dozen, 60 dozen at once; `rotating`: four shelves of 6 dozen; `hearth`: a
 *             floor of 20 boards
 */
export function startingPoint(kind: OvenKind, shop: NewShop): Shop {
  const { language } = shop
  const varieties = firstVarieties(language)
  return {
    profile: profile(shop),
    hours: {
      ovenReadyMinute: 4 * 60 + 30,
      openMinute: 6 * 60,
      changeoverFromMinute: null,
      changeoverToMinute: null,
      closeMinute: 15 * 60,
      secondMenu: null,
    },
    kettle: { pieces: 36, cycleMs: spanMs(90, 's'), ...DEFAULT_KETTLE_CARE },
    boards: { count: BOARDS[kind], pieces: BOARD_PIECES, rewetMs: spanMs(5, 'min') },
    oven: { ...OVENS[kind], bakeAt: bakeAt(profile(shop)) },
    mixer: null,
    cooler: null,
    doughRoom: null,
    counter: DEFAULT_COUNTER,
    demand: DEFAULT_DEMAND,
    baking: DEFAULT_BAKING,
    orders: DEFAULT_ORDERS,
    windows: DEFAULT_WINDOWS,
    ingredients: new Map(),
    preparations: new Map(),
    formulas: new Map(),
    shelves: byId(shelves(kind)),
    doughs: byId(pickableDoughs(language).filter(({ id }) => varieties.some(({ doughId }) => doughId === id))),
    toppings: byId(pickableToppings(language).filter(({ id }) => varieties.some(({ toppingId }) => toppingId === id))),
    varieties: byId(varieties),
    stations: byId(stations(language)),
    people: new Map(),
    steps: byId(startingSteps(kind, language)),
    weekdays: new Map(),
    specialDays: new Map(),
    kitchenStations: new Map(),
    portions: new Map(),
    menu: new Map(),
    runs: new Map(),
  }
}

const BOARD_PIECES = 6
const FLOOR_BOARDS = 20
/** Enough that the boards of what bakes its first side and of what is boiled next are not the same. */
const BOARDS: Readonly<Record<OvenKind, number>> = { shelves: 72, rotating: 36, hearth: 40 }

const OVENS: Readonly<Record<OvenKind, Oven>> = {
  shelves: { kind: 'shelves', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
  rotating: { kind: 'rotating', handlingMs: spanMs(1, 'min'), bakeAt: null, secondAt: null },
  // A floor is filled board by board through its whole depth.
  hearth: { kind: 'hearth', handlingMs: spanMs(3, 'min'), bakeAt: null, secondAt: null },
}

/** Hot, on stone. Common practice, no source. */
function bakeAt({ temperature: unit }: Profile): Temperature {
  return unit === 'C' ? { degrees: 245, unit } : { degrees: 475, unit }
}

function shelves(kind: OvenKind): Shelf[] {
  if (kind === 'hearth') {
    const pieces = FLOOR_BOARDS * BOARD_PIECES
    return [
      {
        id: shelfId('floor'),
        name: '1',
        order: 0,
        pieces,
        emptyByMinute: null,
        floorBoards: FLOOR_BOARDS,
        slots: 0,
        retired: false,
      },
    ]
  }
  const [count, pieces] = kind === 'shelves' ? [5, 12 * 12] : [4, 6 * 12]
  return Array.from({ length: count }, (_, order) => {
    const name = String(order + 1)
    return { id: shelfId(name), name, order, pieces, emptyByMinute: null, floorBoards: null, slots: 0, retired: false }
  })
}

function profile({ name, zone, language }: NewShop): Profile {
  return language === 'es'
    ? { name, zone, language, temperature: 'C', weight: 'g', clock: 24 }
    : { name, zone, language, temperature: 'F', weight: 'lb-oz', clock: 12 }
}

const STATIONS = {
  en: { kettle: 'Kettle', oven: 'Oven' },
  es: { kettle: 'Olla', oven: 'Horno' },
} as const

/** What nearly every shop makes; the rest is a touch away among the pickable ones. */
const FIRST_VARIETIES: readonly string[] = ['plain', 'sesame', 'poppy', 'everything', 'onion', 'garlic', 'salt']

function firstVarieties(language: Language): Variety[] {
  return pickableVarieties(language).filter(({ id }) => FIRST_VARIETIES.includes(id))
}

function stations(language: Language): Station[] {
  const names = STATIONS[language]
  return [
    { id: stationId('kettle'), name: names.kettle, order: 0, acts: ['dip', 'lift'], retired: false },
    { id: stationId('oven'), name: names.oven, order: 1, acts: ['load', 'flip', 'out'], retired: false },
  ]
}

function byId<Id, Entity extends { readonly id: Id }>(list: readonly Entity[]): Map<Id, Entity> {
  return new Map(list.map((entity) => [entity.id, entity]))
}
