import { doughId, shelfId, stationId, varietyId } from '../ids.ts'
import { spanMs } from '../units.ts'
import { DEFAULT_COUNTER, DEFAULT_KETTLE_CARE } from './default-rules.ts'
import { DEFAULT_WINDOWS } from './default-windows.ts'
import type { Dough, Language, Oven, OvenKind, Profile, Shelf, Shop, Station, Variety } from './shop.ts'

/** What a new shop's folder says of itself. */
export interface NewShop {
  readonly name: string
  readonly zone: string
  readonly language: Language
}

/**
 * A small shop to begin with, when no set-up file was given: one dough, five varieties, and equipment by the kind of
 * oven. Everything in it is common practice, no source, and is there to be replaced by the shop's own file.
 * @param kind `shelves`: five decks of 12 dozen, 60 dozen at once; `rotating`: four shelves of 6 dozen; `hearth`: a
 *             floor of 20 boards
 */
export function startingPoint(kind: OvenKind, shop: NewShop): Shop {
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
    oven: OVENS[kind],
    mixer: null,
    cooler: null,
    counter: DEFAULT_COUNTER,
    windows: DEFAULT_WINDOWS,
    shelves: byId(shelves(kind)),
    doughs: byId([plainDough(shop.language)]),
    varieties: byId(varieties(shop.language)),
    stations: byId(stations(shop.language)),
    toppings: new Map(),
    people: new Map(),
    steps: new Map(),
    weekdays: new Map(),
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

function shelves(kind: OvenKind): Shelf[] {
  if (kind === 'hearth') {
    const pieces = FLOOR_BOARDS * BOARD_PIECES
    return [{ id: shelfId('floor'), name: '1', order: 0, pieces, floorBoards: FLOOR_BOARDS, retired: false }]
  }
  const [count, pieces] = kind === 'shelves' ? [5, 12 * 12] : [4, 6 * 12]
  return Array.from({ length: count }, (_, order) => {
    const name = String(order + 1)
    return { id: shelfId(name), name, order, pieces, floorBoards: null, retired: false }
  })
}

function profile({ name, zone, language }: NewShop): Profile {
  return language === 'es'
    ? { name, zone, language, temperature: 'C', weight: 'g', clock: 24 }
    : { name, zone, language, temperature: 'F', weight: 'lb-oz', clock: 12 }
}

const NAMES = {
  en: {
    dough: 'Plain',
    varieties: { plain: 'Plain', sesame: 'Sesame', poppy: 'Poppy', onion: 'Onion', everything: 'Everything' },
    stations: { kettle: 'Kettle', oven: 'Oven' },
  },
  es: {
    dough: 'Natural',
    varieties: { plain: 'Natural', sesame: 'Sésamo', poppy: 'Amapola', onion: 'Cebolla', everything: 'De todo' },
    stations: { kettle: 'Caldera', oven: 'Horno' },
  },
} as const

function plainDough(language: Language): Dough {
  return {
    id: doughId('plain'),
    name: NAMES[language].dough,
    order: 0,
    route: ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven'],
    trayPieces: 24,
    contains: ['wheat'],
    windows: {},
    retired: false,
  }
}

function varieties(language: Language): Variety[] {
  return Object.entries(NAMES[language].varieties).map(([id, name], order) => ({
    id: varietyId(id),
    name,
    order,
    doughId: doughId('plain'),
    size: 'regular',
    decidedAt: 'line',
    topping: id === 'plain' ? 'none' : 'before-flip',
    toppingId: null,
    bakedOn: 'board',
    flip: true,
    windows: {},
    priceCents: 0,
    costCents: 0,
    retired: false,
  }))
}

function stations(language: Language): Station[] {
  const names = NAMES[language].stations
  return [
    { id: stationId('kettle'), name: names.kettle, order: 0, acts: ['dip', 'lift'], retired: false },
    { id: stationId('oven'), name: names.oven, order: 1, acts: ['load', 'flip', 'out'], retired: false },
  ]
}

function byId<Id, Entity extends { readonly id: Id }>(list: readonly Entity[]): Map<Id, Entity> {
  return new Map(list.map((entity) => [entity.id, entity]))
}
