import type { z } from 'zod'
import * as baking from './baking-schema.ts'
import * as day from './day-schema.ts'
import * as demand from './demand-schema.ts'
import * as equipment from './equipment-schema.ts'
import * as formulaFrom from './formula-from-file.ts'
import * as formula from './formula-schema.ts'
import * as kitchenFrom from './kitchen-from-file.ts'
import * as kitchen from './kitchen-schema.ts'
import type { Misfit } from './misfit.ts'
import * as orders from './order-schema.ts'
import type { Problem } from './problem.ts'
import type { CounterRules, DemandRules } from './rules.ts'
import * as from from './set-up-from-file.ts'
import { KEPT_MAX } from './set-up-limits.ts'
import type { ListName, SetUpParts } from './set-up-parts.ts'
import { LIST_NAMES } from './set-up-parts.ts'
import * as schema from './set-up-schema.ts'
import type { Cooler, Kettle, Profile } from './shop.ts'

/**
 * What can be read of a set-up file, part by part: a mistake in one part must not hide those between the others, so
 * that people see all mistakes of a file at once. Parts that cannot be read are null or left out.
 */
export interface Draft {
  readonly profile: Profile | null
  readonly kettle: Kettle | null
  /** Null also where the file says nothing of one. */
  readonly cooler: Cooler | null
  readonly counter: CounterRules | null
  readonly demand: DemandRules | null
  readonly parts: SetUpParts
  /** Ids that stand in their list a second time. */
  readonly doubled: readonly Problem[]
  /** Where in the file something is that does not fit. */
  readonly placeOf: (misfit: Misfit) => string
}

export function draftOf(raw: unknown): Draft {
  const boards = readAs(equipment.boardsFile, at(raw, 'boards'), from.boardsFrom)
  const lists = listsOf(raw, boards?.pieces ?? 1)
  return {
    profile: readAs(schema.profileFile, at(raw, 'shop'), from.profileFrom),
    kettle: readAs(equipment.kettleFile, at(raw, 'kettle'), from.kettleFrom),
    cooler: readAs(equipment.coolerFile, at(raw, 'cooler'), from.coolerFrom),
    counter: readAs(day.counterFile, at(raw, 'counter'), from.counterFrom),
    demand: readAs(demand.demandFile, at(raw, 'demand'), from.demandFrom),
    parts: {
      hours: readAs(day.hoursFile, at(raw, 'hours'), from.hoursFrom),
      boards,
      baking: readAs(baking.bakingFile, at(raw, 'baking'), (file) => from.bakingFrom(file, boards?.pieces ?? 1)),
      orders: readAs(orders.ordersFile, at(raw, 'orders'), kitchenFrom.ordersFrom),
      oven: readAs(equipment.ovenFile, at(raw, 'oven'), from.ovenFrom),
      mixer: readAs(equipment.mixerFile, at(raw, 'mixer'), from.mixerFrom),
      doughRoom: readAs(formula.doughRoomFile, at(raw, 'doughRoom'), formulaFrom.doughRoomFrom),
      windows: readAs(schema.windowsFile, at(raw, 'windows'), from.windowsFrom),
      ingredients: readable(lists.ingredient),
      preparations: readable(lists.preparation),
      formulas: readable(lists.formula),
      shelves: readable(lists.shelf),
      doughs: readable(lists.dough),
      toppings: readable(lists.topping),
      varieties: readable(lists.variety),
      stations: readable(lists.station),
      people: readable(lists.person),
      steps: readable(lists.step),
      specialDays: readable(lists.specialDay),
      kitchenStations: readable(lists.kitchenStation),
      portions: readable(lists.portion),
      menu: readable(lists.menuItem),
      runs: readable(lists.run),
      weekdays: readAs(day.weekdaysFile, at(raw, 'weekdays'), from.weekdaysFrom) ?? [],
      doughIds: idsOf(lists.dough),
      toppingIds: idsOf(lists.topping),
      ingredientIds: idsOf(lists.ingredient),
      preparationIds: idsOf(lists.preparation),
      formulaIds: idsOf(lists.formula),
      kitchenStationIds: idsOf(lists.kitchenStation),
      portionIds: idsOf(lists.portion),
      unread: new Set(
        LIST_NAMES.filter((name) => lists[name].length === 0 || lists[name].some(({ entity }) => entity === null)),
      ),
    },
    doubled: LIST_NAMES.flatMap((name) => doubledIn(lists[name])),
    placeOf: (misfit) => placeOf(misfit, lists),
  }
}

/** @param boardPieces pieces of a board: what a hearth's floor holds follows from it */
function listsOf(raw: unknown, boardPieces: number) {
  const floor = at(at(raw, 'oven'), 'floor')
  const shelfOf = (file: from.ShelfOrFloor, order: number) => from.shelfFrom(file, order, boardPieces)
  const entries = (key: string) => entriesAt(`/${key}`, at(raw, key))
  return {
    shelf: [
      ...(floor === undefined ? [] : readEach(equipment.floorFile, [{ path: '/oven/floor', raw: floor }], shelfOf)),
      ...readEach(equipment.shelfFile, entriesAt('/oven/shelves', at(at(raw, 'oven'), 'shelves')), shelfOf),
    ],
    ingredient: readEach(formula.ingredientFile, entries('ingredients'), formulaFrom.ingredientFrom),
    preparation: readEach(formula.preparationFile, entries('preparations'), formulaFrom.preparationFrom),
    formula: readEach(formula.formulaFile, entries('formulas'), formulaFrom.formulaFrom),
    dough: readEach(schema.doughFile, entries('doughs'), from.doughFrom),
    topping: readEach(schema.toppingFile, entries('toppings'), from.toppingFrom),
    variety: readEach(schema.varietyFile, entries('varieties'), from.varietyFrom),
    station: readEach(schema.stationFile, entries('stations'), from.stationFrom),
    person: readEach(day.personFile, entries('people'), from.personFrom),
    step: readEach(day.stepFile, entries('steps'), from.stepFrom),
    specialDay: readEach(demand.specialDayFile, entries('specialDays'), from.specialDayFrom),
    kitchenStation: readEach(kitchen.kitchenStationFile, entries('kitchenStations'), kitchenFrom.kitchenStationFrom),
    portion: readEach(kitchen.portionFile, entries('portions'), kitchenFrom.portionFrom),
    menuItem: readEach(kitchen.menuItemFile, entries('menu'), kitchenFrom.menuItemFrom),
    run: readEach(orders.runFile, entries('runs'), kitchenFrom.runFrom),
  } as const
}

function idsOf(entries: readonly Entry<unknown>[]): ReadonlySet<string> {
  return new Set(entries.flatMap(({ id }) => id ?? []))
}

interface Place {
  readonly path: string
  readonly raw: unknown
}
/** One entry of a list: the id it claims to have, and what it says if it can be read. */
interface Entry<Entity> {
  readonly path: string
  readonly id: string | null
  readonly entity: Entity | null
}

function readAs<Schema extends z.ZodType, Part>(
  part: Schema,
  raw: unknown,
  as: (file: z.output<Schema>) => Part,
): Part | null {
  const read = part.safeParse(raw)
  return read.success ? as(read.data) : null
}

function readEach<Schema extends z.ZodType, Entity>(
  entry: Schema,
  places: readonly Place[],
  as: (file: z.output<Schema>, order: number) => Entity,
): Entry<Entity>[] {
  return places.map(({ path, raw }, order) => {
    const id = at(raw, 'id')
    return { path, id: typeof id === 'string' ? id : null, entity: readAs(entry, raw, (file) => as(file, order)) }
  })
}

function readable<Entity>(entries: readonly Entry<Entity>[]): Entity[] {
  return entries.flatMap(({ entity }) => (entity === null ? [] : [entity]))
}

function doubledIn(entries: readonly Entry<unknown>[]): Problem[] {
  return entries.flatMap(({ id, path }, index) => {
    const first = entries.findIndex((entry) => entry.id === id)
    if (id === null || first === index) return []
    const wrong = `The id "${id}" stands at ${entries[first]?.path} already.`
    return [{ path: `${path}/id`, wrong, right: 'An id of its own.' }]
  })
}

/** Fields that the file calls otherwise than the running shop. */
const FILE_FIELD: Readonly<Record<string, string>> = {
  doughId: 'dough',
  toppingId: 'toppedWith',
  formulaId: 'formula',
  ingredientId: 'ingredient',
  preparationId: 'preparation',
  mixMs: 'mix',
  mixInMs: 'mixInsAfter',
  restMs: 'rest',
  foldsMs: 'folds',
  fromMinute: 'from',
  coolerByMinute: 'coolerBy',
  decideByMinute: 'decideBy',
  ovenReadyMinute: 'ovenReady',
  openMinute: 'open',
  closeMinute: 'close',
  changeoverFromMinute: 'changeover/from',
  changeoverToMinute: 'changeover/to',
  spans: 'dates',
  emptyByMinute: 'emptyBy',
  showUntilMinute: 'showUntil',
  cutOffMinute: 'cutOff',
  leavesMinute: 'leaves',
  stationId: 'station',
  portionId: 'portion',
  afterMs: 'after',
}

/** A field of the running shop as a path of the file. @example fileField('lines/2/ingredientId') // '/lines/2/ingredient' */
export function fileField(field: string): string {
  return field
    .split('/')
    .map((key) => (key === '' ? '' : `/${FILE_FIELD[key] ?? key}`))
    .join('')
}

const LIST_PATH: Readonly<Record<ListName, string>> = {
  ingredient: '/ingredients',
  preparation: '/preparations',
  formula: '/formulas',
  shelf: '/oven',
  dough: '/doughs',
  topping: '/toppings',
  variety: '/varieties',
  station: '/stations',
  person: '/people',
  step: '/steps',
  specialDay: '/specialDays',
  kitchenStation: '/kitchenStations',
  portion: '/portions',
  menuItem: '/menu',
  run: '/runs',
}

function placeOf({ entity, id, field }: Misfit, lists: Record<ListName, readonly Entry<unknown>[]>): string {
  const inside = fileField(field)
  if (entity === 'weekday') return `/weekdays/${day.WEEKDAY_NAMES[Number(id) - 1]}${inside}`
  if (!isList(entity)) return `/${entity}${inside}`
  const entry = id === null ? undefined : lists[entity].find((one) => one.id === id)
  return (entry?.path ?? LIST_PATH[entity]) + inside
}

function isList(entity: Misfit['entity']): entity is ListName {
  return entity in LIST_PATH
}

function entriesAt(path: string, raw: unknown): Place[] {
  if (!Array.isArray(raw)) return []
  // A longer list is refused as a whole; comparing all its ids would be slow.
  return Array.from(raw.slice(0, KEPT_MAX), (entry, index) => ({ path: `${path}/${index}`, raw: entry }))
}

function at(raw: unknown, key: string): unknown {
  return typeof raw === 'object' && raw !== null && key in raw ? Reflect.get(raw, key) : undefined
}
