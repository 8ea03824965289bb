import {
  doughId,
  formulaId,
  ingredientId,
  kitchenStationId,
  menuItemId,
  personId,
  portionId,
  preparationId,
  runId,
  shelfId,
  specialDayId,
  stationId,
  stepId,
  toppingId,
  varietyId,
} from '../../../shared-core/ids.ts'
import type { Formula, Ingredient, Preparation } from '../../../shared-core/shop/formula.ts'
import { inUse } from '../../../shared-core/shop/in-order.ts'
import type { KitchenStation, MenuItem, Portion, Run } from '../../../shared-core/shop/kitchen.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import { IN_USE_MAX, KEPT_MAX, NAME_MAX } from '../../../shared-core/shop/set-up-limits.ts'
import type {
  Dough,
  Person,
  Shelf,
  Shop,
  SpecialDay,
  Station,
  Step,
  Topping,
  Variety,
} from '../../../shared-core/shop/shop.ts'

export interface Listed {
  readonly id: string
  readonly name: string
  readonly order: number
  readonly retired: boolean
}

/** One of the set-up's lists, and how an entity of it becomes a change. */
export interface ListKind<Entity extends Listed> {
  readonly entity: Extract<SetUpChange['entity'], keyof typeof IN_USE_MAX>
  readonly of: (shop: Shop) => ReadonlyMap<string, Entity>
  readonly change: (value: Entity) => SetUpChange
  /** The same entity under an id of its own. */
  readonly withId: (value: Entity, id: string) => Entity
}

export const SHELVES: ListKind<Shelf> = {
  entity: 'shelf',
  of: (shop) => shop.shelves,
  change: (value) => ({ entity: 'shelf', value }),
  withId: (value, id) => ({ ...value, id: shelfId(id) }),
}
export const DOUGHS: ListKind<Dough> = {
  entity: 'dough',
  of: (shop) => shop.doughs,
  change: (value) => ({ entity: 'dough', value }),
  withId: (value, id) => ({ ...value, id: doughId(id) }),
}
export const INGREDIENTS: ListKind<Ingredient> = {
  entity: 'ingredient',
  of: (shop) => shop.ingredients,
  change: (value) => ({ entity: 'ingredient', value }),
  withId: (value, id) => ({ ...value, id: ingredientId(id) }),
}
export const PREPARATIONS: ListKind<Preparation> = {
  entity: 'preparation',
  of: (shop) => shop.preparations,
  change: (value) => ({ entity: 'preparation', value }),
  withId: (value, id) => ({ ...value, id: preparationId(id) }),
}
export const FORMULAS: ListKind<Formula> = {
  entity: 'formula',
  of: (shop) => shop.formulas,
  change: (value) => ({ entity: 'formula', value }),
  withId: (value, id) => ({ ...value, id: formulaId(id) }),
}
export const TOPPINGS: ListKind<Topping> = {
  entity: 'topping',
  of: (shop) => shop.toppings,
  change: (value) => ({ entity: 'topping', value }),
  withId: (value, id) => ({ ...value, id: toppingId(id) }),
}
export const VARIETIES: ListKind<Variety> = {
  entity: 'variety',
  of: (shop) => shop.varieties,
  change: (value) => ({ entity: 'variety', value }),
  withId: (value, id) => ({ ...value, id: varietyId(id) }),
}
export const STATIONS: ListKind<Station> = {
  entity: 'station',
  of: (shop) => shop.stations,
  change: (value) => ({ entity: 'station', value }),
  withId: (value, id) => ({ ...value, id: stationId(id) }),
}
export const PEOPLE: ListKind<Person> = {
  entity: 'person',
  of: (shop) => shop.people,
  change: (value) => ({ entity: 'person', value }),
  withId: (value, id) => ({ ...value, id: personId(id) }),
}
export const STEPS: ListKind<Step> = {
  entity: 'step',
  of: (shop) => shop.steps,
  change: (value) => ({ entity: 'step', value }),
  withId: (value, id) => ({ ...value, id: stepId(id) }),
}
export const SPECIAL_DAYS: ListKind<SpecialDay> = {
  entity: 'specialDay',
  of: (shop) => shop.specialDays,
  change: (value) => ({ entity: 'specialDay', value }),
  withId: (value, id) => ({ ...value, id: specialDayId(id) }),
}
export const KITCHEN_STATIONS: ListKind<KitchenStation> = {
  entity: 'kitchenStation',
  of: (shop) => shop.kitchenStations,
  change: (value) => ({ entity: 'kitchenStation', value }),
  withId: (value, id) => ({ ...value, id: kitchenStationId(id) }),
}
export const PORTIONS: ListKind<Portion> = {
  entity: 'portion',
  of: (shop) => shop.portions,
  change: (value) => ({ entity: 'portion', value }),
  withId: (value, id) => ({ ...value, id: portionId(id) }),
}
export const MENU: ListKind<MenuItem> = {
  entity: 'menuItem',
  of: (shop) => shop.menu,
  change: (value) => ({ entity: 'menuItem', value }),
  withId: (value, id) => ({ ...value, id: menuItemId(id) }),
}
export const RUNS: ListKind<Run> = {
  entity: 'run',
  of: (shop) => shop.runs,
  change: (value) => ({ entity: 'run', value }),
  withId: (value, id) => ({ ...value, id: runId(id) }),
}

export function nameMost<Entity extends Listed>({ entity }: ListKind<Entity>): number {
  return NAME_MAX[entity]
}

/** Whether one more may be put in use. */
export function hasRoom<Entity extends Listed>(kind: ListKind<Entity>, shop: Shop): boolean {
  return inUse(kind.of(shop)).length < IN_USE_MAX[kind.entity] && kind.of(shop).size < KEPT_MAX
}

/** A new entity at the end of its list. @param like all but its id, name and order */
export function added<Entity extends Listed>(kind: ListKind<Entity>, shop: Shop, like: Entity, name: string): Entity {
  const order = [...kind.of(shop).values()].reduce((most, one) => Math.max(most, one.order + 1), 0)
  return kind.withId({ ...like, name, order, retired: false }, freeId(kind, shop, name))
}

/**
 * What changes when one that is in use goes a place up (−1) or down (+1) its list: the orders of all are counted anew
 * from 0. Nothing when it stands at that end.
 * @param among those that the list on show holds; left out: all in use
 */
export function moved<Entity extends Listed>(
  kind: ListKind<Entity>,
  shop: Shop,
  move: { readonly id: string; readonly by: -1 | 1; readonly among?: (one: Entity) => boolean },
): SetUpChange[] {
  const { id, by, among = () => true } = move
  const used = inUse(kind.of(shop))
  const shown = used.filter(among)
  const at = shown.findIndex((one) => one.id === id)
  const [one, other] = [shown[at], shown[at + by]]
  if (one === undefined || other === undefined) return []
  const swapped = used.map((entity) => (entity === one ? other : entity === other ? one : entity))
  return swapped.flatMap((entity, order) => (entity.order === order ? [] : [kind.change({ ...entity, order })]))
}

/** An id out of a name: letters without accents, digits and dashes, and a number where it is taken. */
function freeId<Entity extends Listed>(kind: ListKind<Entity>, shop: Shop, name: string): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 48)
  const base = plain === '' ? kind.entity : plain
  const taken = kind.of(shop)
  for (let n = 1; ; n++) {
    const id = n === 1 ? base : `${base}-${n}`
    if (!taken.has(id)) return id
  }
}
