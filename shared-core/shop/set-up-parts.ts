import type { Shop } from './shop.ts'

/** The parts of a set-up as the rules see them; null for one that could not be read. */
export type SetUpParts = {
  readonly [Part in 'hours' | 'boards' | 'baking' | 'orders' | 'oven' | 'mixer' | 'doughRoom' | 'windows']:
    | Shop[Part]
    | null
} & {
  readonly [List in
    | 'ingredients'
    | 'preparations'
    | 'formulas'
    | 'shelves'
    | 'doughs'
    | 'toppings'
    | 'varieties'
    | 'stations'
    | 'people'
    | 'steps'
    | 'specialDays'
    | 'weekdays'
    | 'kitchenStations'
    | 'portions'
    | 'menu'
    | 'runs']: readonly EntityOf<Shop[List]>[]
} & {
  /** Ids of doughs, also of those that could not be read: a variety of one is not at fault. */
  readonly doughIds: ReadonlySet<string>
  /** The same of toppings, ingredients, preparations, formulas, kitchen stations and portions. */
  readonly toppingIds: ReadonlySet<string>
  readonly ingredientIds: ReadonlySet<string>
  readonly preparationIds: ReadonlySet<string>
  readonly formulaIds: ReadonlySet<string>
  readonly kitchenStationIds: ReadonlySet<string>
  readonly portionIds: ReadonlySet<string>
  /** Lists that could not be read, or not all of them: nothing is said of what they lack. */
  readonly unread: ReadonlySet<ListName>
}

/** Lists of a set-up whose entities have a name and an order. */
export const LIST_NAMES = [
  'ingredient',
  'preparation',
  'formula',
  'shelf',
  'dough',
  'topping',
  'variety',
  'station',
  'person',
  'step',
  'specialDay',
  'kitchenStation',
  'portion',
  'menuItem',
  'run',
] as const
export type ListName = (typeof LIST_NAMES)[number]
type EntityOf<List> = List extends ReadonlyMap<string, infer Entity> ? Entity : never

export function partsOf(shop: Shop): SetUpParts {
  return {
    ...shop,
    ingredients: [...shop.ingredients.values()],
    preparations: [...shop.preparations.values()],
    formulas: [...shop.formulas.values()],
    shelves: [...shop.shelves.values()],
    doughs: [...shop.doughs.values()],
    toppings: [...shop.toppings.values()],
    varieties: [...shop.varieties.values()],
    stations: [...shop.stations.values()],
    people: [...shop.people.values()],
    steps: [...shop.steps.values()],
    specialDays: [...shop.specialDays.values()],
    weekdays: [...shop.weekdays.values()],
    kitchenStations: [...shop.kitchenStations.values()],
    portions: [...shop.portions.values()],
    menu: [...shop.menu.values()],
    runs: [...shop.runs.values()],
    doughIds: new Set(shop.doughs.keys()),
    toppingIds: new Set(shop.toppings.keys()),
    ingredientIds: new Set(shop.ingredients.keys()),
    preparationIds: new Set(shop.preparations.keys()),
    formulaIds: new Set(shop.formulas.keys()),
    kitchenStationIds: new Set(shop.kitchenStations.keys()),
    portionIds: new Set(shop.portions.keys()),
    unread: new Set(),
  }
}
