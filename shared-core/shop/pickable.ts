import { doughId, toppingId, varietyId } from '../ids.ts'
import { NO_FORMULA } from './default-rules.ts'
import { dwell } from './default-windows.ts'
import type { Allergen, BatchStage, Dough, Language, Topping, Variety, Windows } from './shop.ts'

/**
 * What shops of this trade usually make, to pick from when a set-up is made: doughs, toppings, varieties, in either
 * language. Ids are the same in both, and a variety names the dough and topping of this list that it needs. Times and
 * what is in them are common practice, no source: the shop's own bags and recipes decide.
 */

type Name = Readonly<Record<Language, string>>

export function pickableDoughs(language: Language): Dough[] {
  return DOUGHS.map(({ id, name, contains, route, windows }, order) => ({
    id: doughId(id),
    name: name[language],
    order,
    route: route ?? ROUTE,
    trayPieces: 24,
    contains,
    ...NO_FORMULA,
    windows: windows ?? {},
    retired: false,
  }))
}

export function pickableToppings(language: Language): Topping[] {
  return TOPPINGS.map(({ id, name, contains }, order) => ({
    id: toppingId(id),
    name: name[language],
    order,
    contains: contains ?? [],
    madeOf: [],
    retired: false,
  }))
}

/** Prices and costs are the shop's to say: they are 0. */
export function pickableVarieties(language: Language): Variety[] {
  return VARIETIES.map(({ id, name, dough, topping, size, decidedAt, isLate }, order) => ({
    id: varietyId(id),
    name: name[language],
    order,
    doughId: doughId(dough),
    size: size ?? 'regular',
    decidedAt: decidedAt ?? 'line',
    topping: topping === undefined ? 'none' : isLate ? 'after-flip' : 'before-flip',
    toppingId: topping === undefined ? null : toppingId(topping),
    bakedOn: 'board',
    flip: true,
    windows: sizeWindows(size ?? 'regular'),
    priceCents: 0,
    costCents: 0,
    kitchenCents: null,
    showLeast: 0,
    avoids: [],
    usual: null,
    retired: false,
  }))
}

/**
 * What a size takes in the oven where it is not the usual time: small pieces are through sooner, large ones later.
 * @example sizeWindows('regular') // {}: the dough's or the shop's times
 */
export function sizeWindows(size: Variety['size']): Windows {
  return SIZE_WINDOWS[size]
}

const SIZE_WINDOWS: Readonly<Record<Variety['size'], Windows>> = {
  mini: { firstSide: dwell('min', 2.5, 3, 3.5), bake: dwell('min', 11, 13, 16) },
  regular: {},
  large: { firstSide: dwell('min', 3.5, 4, 5), bake: dwell('min', 18, 21, 27) },
  stick: { bake: dwell('min', 13, 16, 20) },
}

const ROUTE: readonly BatchStage[] = ['proof', 'chill', 'rack', 'kettle', 'boards', 'oven']
/** Rich doughs go cold into the kettle: warm they slump. */
const COLD: readonly BatchStage[] = ['proof', 'chill', 'kettle', 'boards', 'oven']

interface PickDough {
  readonly id: string
  readonly name: Name
  readonly contains: readonly Allergen[]
  readonly route?: readonly BatchStage[]
  readonly windows?: Windows
}

const DOUGHS: readonly PickDough[] = [
  { id: 'plain', name: { en: 'Plain', es: 'Natural' }, contains: ['wheat'] },
  {
    id: 'wheat',
    name: { en: 'Whole wheat', es: 'Integral' },
    contains: ['wheat'],
    // Bran makes it ripe sooner.
    windows: { proof: dwell('min', 90, 150, 210) },
  },
  {
    id: 'rye',
    name: { en: 'Rye', es: 'Centeno' },
    // Bagels of rye are mostly wheat.
    contains: ['wheat'],
    windows: { proof: dwell('min', 90, 150, 210), bake: dwell('min', 17, 20, 25) },
  },
  {
    id: 'cinnamon',
    name: { en: 'Cinnamon raisin', es: 'Canela y pasas' },
    contains: ['wheat'],
    // Cinnamon slows the yeast, sugar browns early.
    windows: { proof: dwell('min', 140, 200, 260), bake: dwell('min', 15, 17, 22) },
  },
  {
    id: 'egg',
    name: { en: 'Egg', es: 'Huevo' },
    contains: ['wheat', 'egg'],
    route: COLD,
    windows: { bake: dwell('min', 15, 17, 22) },
  },
  {
    id: 'blueberry',
    name: { en: 'Blueberry', es: 'Arándano' },
    contains: ['wheat'],
    route: COLD,
    windows: { bake: dwell('min', 15, 17, 22) },
  },
]

interface PickTopping {
  readonly id: string
  readonly name: Name
  readonly contains?: readonly Allergen[]
}

const TOPPINGS: readonly PickTopping[] = [
  { id: 'sesame', name: { en: 'Sesame', es: 'Sésamo' }, contains: ['sesame'] },
  { id: 'poppy', name: { en: 'Poppy', es: 'Amapola' } },
  { id: 'everything', name: { en: 'Everything', es: 'De todo' }, contains: ['sesame'] },
  { id: 'onion', name: { en: 'Onion', es: 'Cebolla' } },
  { id: 'garlic', name: { en: 'Garlic', es: 'Ajo' } },
  { id: 'salt', name: { en: 'Salt', es: 'Sal' } },
  { id: 'caraway', name: { en: 'Caraway', es: 'Alcaravea' } },
  { id: 'seeds', name: { en: 'Mixed seeds', es: 'Semillas variadas' }, contains: ['sesame'] },
  { id: 'cheddar', name: { en: 'Cheddar', es: 'Cheddar' }, contains: ['milk'] },
  { id: 'cinnamon-sugar', name: { en: 'Cinnamon sugar', es: 'Azúcar y canela' } },
]

interface PickVariety {
  readonly id: string
  readonly name: Name
  readonly dough: string
  readonly topping?: string
  readonly size?: Variety['size']
  readonly decidedAt?: Variety['decidedAt']
  /** On after the flip: it would burn or run on the board. */
  readonly isLate?: boolean
}

const VARIETIES: readonly PickVariety[] = [
  { id: 'plain', name: { en: 'Plain', es: 'Natural' }, dough: 'plain' },
  { id: 'sesame', name: { en: 'Sesame', es: 'Sésamo' }, dough: 'plain', topping: 'sesame' },
  { id: 'poppy', name: { en: 'Poppy', es: 'Amapola' }, dough: 'plain', topping: 'poppy' },
  { id: 'everything', name: { en: 'Everything', es: 'De todo' }, dough: 'plain', topping: 'everything' },
  { id: 'onion', name: { en: 'Onion', es: 'Cebolla' }, dough: 'plain', topping: 'onion' },
  { id: 'garlic', name: { en: 'Garlic', es: 'Ajo' }, dough: 'plain', topping: 'garlic' },
  { id: 'salt', name: { en: 'Salt', es: 'Sal' }, dough: 'plain', topping: 'salt' },
  { id: 'cheddar', name: { en: 'Cheddar', es: 'Cheddar' }, dough: 'plain', topping: 'cheddar', isLate: true },
  { id: 'wheat', name: { en: 'Whole wheat', es: 'Integral' }, dough: 'wheat' },
  { id: 'wheat-seeds', name: { en: 'Wheat and seeds', es: 'Integral con semillas' }, dough: 'wheat', topping: 'seeds' },
  { id: 'rye', name: { en: 'Rye', es: 'Centeno' }, dough: 'rye', topping: 'caraway' },
  { id: 'raisin', name: { en: 'Cinnamon raisin', es: 'Canela y pasas' }, dough: 'cinnamon', decidedAt: 'mixer' },
  { id: 'blueberry', name: { en: 'Blueberry', es: 'Arándano' }, dough: 'blueberry', decidedAt: 'mixer' },
  { id: 'egg', name: { en: 'Egg', es: 'Huevo' }, dough: 'egg' },
  { id: 'egg-everything', name: { en: 'Egg everything', es: 'Huevo de todo' }, dough: 'egg', topping: 'everything' },
  { id: 'mini-plain', name: { en: 'Mini plain', es: 'Mini natural' }, dough: 'plain', size: 'mini' },
  {
    id: 'mini-sesame',
    name: { en: 'Mini sesame', es: 'Mini sésamo' },
    dough: 'plain',
    topping: 'sesame',
    size: 'mini',
  },
  { id: 'large-plain', name: { en: 'Large plain', es: 'Grande natural' }, dough: 'plain', size: 'large' },
  { id: 'salt-stick', name: { en: 'Salt stick', es: 'Palito de sal' }, dough: 'plain', topping: 'salt', size: 'stick' },
]
