import { assert, unreachable } from '../support.ts'
import { DEFAULT_BAKING, DEFAULT_COUNTER, DEFAULT_DEMAND, DEFAULT_ORDERS, defaultUnitPieces } from './default-rules.ts'
import type { BakingRules } from './rules.ts'
import type { SetUpChange } from './set-up-change.ts'
import type { Boards, Shop } from './shop.ts'

/**
 * The shop after changes to its set-up. Pure: the shop given is not touched, and what did not change is the same object.
 * @param shop null before the first set-up, which must then be whole (see `isWholeSetUp`)
 * @param changes one entity each; a later one of the same entity wins
 * @throws AssertionError when a first set-up lacks a part: `decide` refuses such a command
 */
export function applySetUp(shop: Shop | null, changes: readonly SetUpChange[]): Shop {
  const draft: Draft = shop === null ? { ...NO_LISTS } : { ...shop }
  for (const change of changes) put(draft, change)
  const { profile, hours, kettle, boards, oven, windows, baking, ...rest } = draft
  assert(profile !== undefined && hours !== undefined && kettle !== undefined, 'a first set-up lacks a part')
  assert(boards !== undefined && oven !== undefined && windows !== undefined, 'a first set-up lacks a part')
  return { profile, hours, kettle, boards, oven, windows, baking: baking ?? bakingOf(boards), ...rest }
}

/** Parts of which there is one each: a first set-up names them all. */
const PARTS = ['profile', 'hours', 'kettle', 'boards', 'oven', 'windows'] as const

/** Whether changes can make a shop out of nothing. Whether its parts fit each other is `set-up-rules.ts`. */
export function isWholeSetUp(changes: readonly SetUpChange[]): boolean {
  return PARTS.every((part) => changes.some((change) => change.entity === part))
}

/** What holds while nobody has said how loads are planned. */
function bakingOf({ pieces }: Boards): BakingRules {
  return { ...DEFAULT_BAKING, unitPieces: defaultUnitPieces(pieces) }
}

type Draft = {
  -readonly [Part in keyof Shop]: Shop[Part] | (Part extends (typeof PARTS)[number] | 'baking' ? undefined : never)
}

const NO_LISTS: Draft = {
  profile: undefined,
  hours: undefined,
  kettle: undefined,
  boards: undefined,
  oven: undefined,
  windows: undefined,
  mixer: null,
  cooler: null,
  doughRoom: null,
  counter: DEFAULT_COUNTER,
  demand: DEFAULT_DEMAND,
  baking: undefined,
  orders: DEFAULT_ORDERS,
  shelves: new Map(),
  doughs: new Map(),
  toppings: new Map(),
  varieties: new Map(),
  stations: new Map(),
  people: new Map(),
  steps: new Map(),
  specialDays: new Map(),
  weekdays: new Map(),
  ingredients: new Map(),
  preparations: new Map(),
  formulas: new Map(),
  kitchenStations: new Map(),
  portions: new Map(),
  menu: new Map(),
  runs: new Map(),
}

function put(draft: Draft, change: SetUpChange): void {
  switch (change.entity) {
    case 'ingredient':
      draft.ingredients = withEntity(draft.ingredients, change.value)
      return
    case 'preparation':
      draft.preparations = withEntity(draft.preparations, change.value)
      return
    case 'formula':
      draft.formulas = withEntity(draft.formulas, change.value)
      return
    case 'shelf':
      draft.shelves = withEntity(draft.shelves, change.value)
      return
    case 'dough':
      draft.doughs = withEntity(draft.doughs, change.value)
      return
    case 'variety':
      draft.varieties = withEntity(draft.varieties, change.value)
      return
    case 'station':
      draft.stations = withEntity(draft.stations, change.value)
      return
    case 'topping':
      draft.toppings = withEntity(draft.toppings, change.value)
      return
    case 'person':
      draft.people = withEntity(draft.people, change.value)
      return
    case 'step':
      draft.steps = withEntity(draft.steps, change.value)
      return
    case 'specialDay':
      draft.specialDays = withEntity(draft.specialDays, change.value)
      return
    case 'weekday':
      draft.weekdays = withEntity(draft.weekdays, change.value)
      return
    case 'kitchenStation':
    case 'portion':
    case 'menuItem':
    case 'run':
      putOfKitchen(draft, change)
      return
    default:
      putPart(draft, change)
  }
}

function putOfKitchen(draft: Draft, change: KitchenChange): void {
  switch (change.entity) {
    case 'kitchenStation':
      draft.kitchenStations = withEntity(draft.kitchenStations, change.value)
      return
    case 'portion':
      draft.portions = withEntity(draft.portions, change.value)
      return
    case 'menuItem':
      draft.menu = withEntity(draft.menu, change.value)
      return
    case 'run':
      draft.runs = withEntity(draft.runs, change.value)
      return
    default:
      unreachable(change)
  }
}

type KitchenChange = Extract<SetUpChange, { readonly entity: 'kitchenStation' | 'portion' | 'menuItem' | 'run' }>
type PartChange = Exclude<SetUpChange, { readonly value: { readonly id: string } }>

/** A part of which there is one. */
function putPart(draft: Draft, change: PartChange): void {
  switch (change.entity) {
    case 'profile':
      draft.profile = change.value
      return
    case 'hours':
      draft.hours = change.value
      return
    case 'kettle':
      draft.kettle = change.value
      return
    case 'boards':
      draft.boards = change.value
      return
    case 'oven':
      draft.oven = change.value
      return
    case 'mixer':
      draft.mixer = change.value
      return
    case 'cooler':
      draft.cooler = change.value
      return
    case 'doughRoom':
      draft.doughRoom = change.value
      return
    case 'counter':
      draft.counter = change.value
      return
    case 'demand':
      draft.demand = change.value
      return
    case 'baking':
      draft.baking = change.value
      return
    case 'orders':
      draft.orders = change.value
      return
    case 'windows':
      draft.windows = change.value
      return
    default:
      unreachable(change)
  }
}

function withEntity<Id, Entity extends { readonly id: Id }>(
  map: ReadonlyMap<Id, Entity>,
  entity: Entity,
): Map<Id, Entity> {
  return new Map(map).set(entity.id, entity)
}
