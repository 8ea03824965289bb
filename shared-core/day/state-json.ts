import type { Shop } from '../shop/shop.ts'
import { assert } from '../support.ts'
import type { State } from './state.ts'

/** A state as JSON: maps as lists of pairs in id order, so that equal states give equal text. */
export interface StateJson extends Omit<State, MapField | 'shop'> {
  readonly shop: unknown
  readonly tables: { readonly [table in MapField]: readonly (readonly [string, unknown])[] }
}
type MapField = (typeof TABLES)[number]

const TABLES = [
  'batches',
  'loads',
  'shelves',
  'stock',
  'keeps',
  'orders',
  'standing',
  'portions',
  'makeTimes',
  'planned',
  'unsure',
  'marks',
  'notes',
  'cares',
  'setUps',
  'habits',
  'wanted',
  'mixes',
  'builds',
  'readings',
  'frictions',
  'teachings',
  'onHand',
  'checks',
  'touches',
  'account',
] as const
const SHOP_TABLES = [
  'shelves',
  'doughs',
  'toppings',
  'varieties',
  'stations',
  'people',
  'steps',
  'weekdays',
  'ingredients',
  'preparations',
  'formulas',
  'specialDays',
  'kitchenStations',
  'portions',
  'menu',
  'runs',
] as const

export function toJson(state: State): StateJson {
  const { batches, loads, shelves, stock, keeps, planned, unsure, account, shop, ...others } = state
  const { marks, notes, cares, setUps, habits, touches, ...withDough } = others
  const {
    orders,
    standing,
    portions,
    makeTimes,
    wanted,
    mixes,
    builds,
    readings,
    frictions,
    teachings,
    onHand,
    checks,
    ...rest
  } = withDough
  const dough = { wanted, mixes, builds, readings, frictions, teachings, onHand, checks }
  const said = { marks, notes, cares, setUps, habits, touches }
  const ordered = { orders, standing, portions, makeTimes }
  const tables = { batches, loads, shelves, stock, keeps, ...ordered, planned, unsure, ...said, ...dough, account }
  return {
    ...rest,
    shop: shop === null ? null : pairsIn(shop, SHOP_TABLES),
    tables: pairsIn(tables, TABLES) as StateJson['tables'],
  }
}

/** The state of a `toJson`. What comes in is our own, from the journal or the server; its fold version says so. */
export function fromJson(json: StateJson): State {
  const { tables, shop, ...rest } = json
  const maps = mapsIn(tables, TABLES) as unknown as Pick<State, MapField>
  return { ...rest, ...maps, shop: shop === null ? null : (mapsIn(shop as object, SHOP_TABLES) as unknown as Shop) }
}

/**
 * A copy that can be changed without touching the first: what is pending is decided on top of it. Only the maps are
 * copied, as entities are never changed.
 */
export function forkState(state: State): State {
  return {
    ...state,
    batches: new Map(state.batches),
    loads: new Map(state.loads),
    shelves: new Map(state.shelves),
    stock: new Map(state.stock),
    keeps: new Map(state.keeps),
    orders: new Map(state.orders),
    standing: new Map(state.standing),
    portions: new Map(state.portions),
    makeTimes: new Map(state.makeTimes),
    planned: new Map(state.planned),
    unsure: new Map(state.unsure),
    marks: new Map(state.marks),
    notes: new Map(state.notes),
    cares: new Map(state.cares),
    setUps: new Map(state.setUps),
    habits: new Map(state.habits),
    wanted: new Map(state.wanted),
    mixes: new Map(state.mixes),
    builds: new Map(state.builds),
    readings: new Map(state.readings),
    frictions: new Map(state.frictions),
    teachings: new Map(state.teachings),
    onHand: new Map(state.onHand),
    checks: new Map(state.checks),
    touches: new Map(state.touches),
    account: new Map(state.account),
  }
}

function pairsIn(value: object, fields: readonly string[]): object {
  const copy: Record<string, unknown> = { ...value }
  for (const field of fields) {
    const map = copy[field]
    assert(map instanceof Map, `${field} is no map`)
    copy[field] = [...map].sort(([one], [other]) => (one < other ? -1 : 1))
  }
  return copy
}

function mapsIn(value: object, fields: readonly string[]): object {
  const copy: Record<string, unknown> = { ...value }
  for (const field of fields) {
    const pairs = copy[field]
    assert(Array.isArray(pairs), `${field} is no list of pairs`)
    copy[field] = new Map(pairs)
  }
  return copy
}
