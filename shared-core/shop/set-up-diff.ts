import canonicalize from 'canonicalize'
import { inOrder } from './in-order.ts'
import type { SetUpChange } from './set-up-change.ts'
import type { Shop, Weekday } from './shop.ts'

/**
 * What must change so that a shop becomes as another set-up says; nothing when they are the same.
 *
 * Entities that `to` lacks are retired, never deleted: old records name them for ever. They are listed after all of
 * `to`, in the order that they had.
 * @param from null for a shop that has no set-up yet: everything is a change
 * @example applySetUp(from, setUpChanges(from, to)) // as `to`, with what it lacks retired
 */
export function setUpChanges(from: Shop | null, to: Shop): SetUpChange[] {
  const changes: SetUpChange[] = [
    { entity: 'profile', value: to.profile },
    { entity: 'hours', value: to.hours },
    { entity: 'kettle', value: to.kettle },
    { entity: 'boards', value: to.boards },
    { entity: 'oven', value: to.oven },
    { entity: 'mixer', value: to.mixer },
    { entity: 'cooler', value: to.cooler },
    { entity: 'doughRoom', value: to.doughRoom },
    { entity: 'counter', value: to.counter },
    { entity: 'demand', value: to.demand },
    { entity: 'baking', value: to.baking },
    { entity: 'orders', value: to.orders },
    { entity: 'windows', value: to.windows },
    ...withRetired(from?.ingredients, to.ingredients).map((value) => ({ entity: 'ingredient', value }) as const),
    ...withRetired(from?.preparations, to.preparations).map((value) => ({ entity: 'preparation', value }) as const),
    ...withRetired(from?.formulas, to.formulas).map((value) => ({ entity: 'formula', value }) as const),
    ...withRetired(from?.shelves, to.shelves).map((value) => ({ entity: 'shelf', value }) as const),
    ...withRetired(from?.doughs, to.doughs).map((value) => ({ entity: 'dough', value }) as const),
    ...withRetired(from?.toppings, to.toppings).map((value) => ({ entity: 'topping', value }) as const),
    ...withRetired(from?.varieties, to.varieties).map((value) => ({ entity: 'variety', value }) as const),
    ...withRetired(from?.stations, to.stations).map((value) => ({ entity: 'station', value }) as const),
    ...withRetired(from?.people, to.people).map((value) => ({ entity: 'person', value }) as const),
    ...withRetired(from?.steps, to.steps).map((value) => ({ entity: 'step', value }) as const),
    ...withRetired(from?.specialDays, to.specialDays).map((value) => ({ entity: 'specialDay', value }) as const),
    ...withRetired(from?.kitchenStations, to.kitchenStations).map(
      (value) => ({ entity: 'kitchenStation', value }) as const,
    ),
    ...withRetired(from?.portions, to.portions).map((value) => ({ entity: 'portion', value }) as const),
    ...withRetired(from?.menu, to.menu).map((value) => ({ entity: 'menuItem', value }) as const),
    ...withRetired(from?.runs, to.runs).map((value) => ({ entity: 'run', value }) as const),
    ...weekdaysWithRetired(from?.weekdays, to.weekdays).map((value) => ({ entity: 'weekday', value }) as const),
  ]
  return from === null ? changes : changes.filter((change) => !isSame(standing(from, change), change.value))
}

interface Entity {
  readonly id: string
  readonly order: number
  readonly retired: boolean
}

function withRetired<One extends Entity>(
  from: ReadonlyMap<string, One> | undefined,
  to: ReadonlyMap<string, One>,
): One[] {
  const kept = inOrder(to)
  const after = kept.reduce((most, { order }) => Math.max(most, order + 1), 0)
  const lacking = inOrder(from ?? new Map<string, One>()).filter(({ id }) => !to.has(id))
  return [...kept, ...lacking.map((one, index) => ({ ...one, order: after + index, retired: true }))]
}

/** Weekdays have an order of their own; one that `to` lacks has the usual hours again. */
function weekdaysWithRetired(from: Shop['weekdays'] | undefined, to: Shop['weekdays']): Weekday[] {
  const lacking = [...(from?.values() ?? [])].filter(({ id }) => !to.has(id))
  const all = [...to.values(), ...lacking.map((one) => ({ ...one, retired: true }))]
  return all.sort((one, other) => (one.id < other.id ? -1 : 1))
}

/** What the shop has where a change would put its value. */
export function standing(shop: Shop, change: SetUpChange): unknown {
  switch (change.entity) {
    case 'shelf':
      return shop.shelves.get(change.value.id)
    case 'dough':
      return shop.doughs.get(change.value.id)
    case 'variety':
      return shop.varieties.get(change.value.id)
    case 'station':
      return shop.stations.get(change.value.id)
    case 'topping':
      return shop.toppings.get(change.value.id)
    case 'person':
      return shop.people.get(change.value.id)
    case 'step':
      return shop.steps.get(change.value.id)
    case 'specialDay':
      return shop.specialDays.get(change.value.id)
    case 'weekday':
      return shop.weekdays.get(change.value.id)
    case 'ingredient':
      return shop.ingredients.get(change.value.id)
    case 'preparation':
      return shop.preparations.get(change.value.id)
    case 'formula':
      return shop.formulas.get(change.value.id)
    case 'kitchenStation':
      return shop.kitchenStations.get(change.value.id)
    case 'portion':
      return shop.portions.get(change.value.id)
    case 'menuItem':
      return shop.menu.get(change.value.id)
    case 'run':
      return shop.runs.get(change.value.id)
    default:
      return shop[change.entity]
  }
}

/** Whether two values say the same, whatever the order of their fields. Nothing is like `undefined`. */
export function isSame(a: unknown, b: unknown): boolean {
  return a !== undefined && canonicalize(a) === canonicalize(b)
}
