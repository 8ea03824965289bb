import type { State } from '../day/state.ts'
import { itemIsBegun, stepNow } from '../orders/item-steps.ts'
import type { Order, OrderItem } from '../orders/order.ts'
import type { Shelf, Shop } from '../shop/shop.ts'
import { milliCelsius } from '../shop/temperature.ts'
import type { EpochMs } from '../units.ts'
import type { KitchenHours } from './kitchen-hours.ts'
import { kitchenHours } from './kitchen-hours.ts'
import { ordersInKitchen, partKey, shelvesWithSlots } from './parts.ts'
import type { SimGiven, SimStep } from './simulate.ts'
import { OVEN } from './simulate.ts'

/** The kitchen as it stands: what is to be made, and by what. */
export interface Kitchen {
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly hours: KitchenHours
  readonly orders: readonly Order[]
  /** Items that are not made, in the order in which they come to hands and oven. */
  readonly items: readonly KitchenItem[]
  /** Index of each station. */
  readonly stations: ReadonlyMap<string, number>
  /** Shelves of the second menu, each with the bagels' load that is still in it. */
  readonly shelves: readonly { readonly shelf: Shelf; readonly fromMs: number }[]
}

export interface KitchenItem {
  readonly order: Order
  readonly item: OrderItem
  /** Index of the part that is begun, or that it waits with. */
  readonly step: number
  readonly isBegun: boolean
  /** Nobody waits for it yet: it is not begun before. */
  readonly holdMs: number
}

/** What somebody fetches is begun so long before it would have to be: the kitchen may be busy then. No source. */
const BEGIN_EARLY_MS = 10 * 60_000
/** A shelf's load without a bake window may come out at any time; until then it counts as in for so long. No source. */
const UNKNOWN_LOAD_MS = 10 * 60_000
/** Two temperatures are the same for an item where they lie so close: 15 °C. Common practice, no source. */
const SAME_MILLI_CELSIUS = 15_000

/** @returns null without a set-up */
export function kitchenOf(state: State, nowMs: EpochMs): Kitchen | null {
  const { shop } = state
  if (shop === null) return null
  const hours = kitchenHours(state)
  const orders = ordersInKitchen(state, nowMs)
  return {
    shop,
    nowMs,
    hours,
    orders,
    items: orders.flatMap((order) => itemsOf(order)),
    stations: new Map([...shop.kitchenStations.keys()].map((id, index) => [id, index])),
    shelves: shelvesWithSlots(shop).map((shelf) => ({ shelf, fromMs: emptyFrom(state, shelf, nowMs) })),
  }
}

/** Of one order the longest first: they end together. */
export function itemsOf(order: Order): readonly KitchenItem[] {
  return order.items
    .flatMap((item) => {
      const step = stepNow(item)
      if (step === null) return []
      const isBegun = item.steps[step]?.begunAtMs != null
      const restMs = restFrom(item, step)
      const holdMs =
        order.way === 'here' || itemIsBegun(item) ? Number.NEGATIVE_INFINITY : order.dueAtMs - restMs - BEGIN_EARLY_MS
      return [{ order, item, step, isBegun, holdMs, restMs }]
    })
    .sort((one, other) => other.restMs - one.restMs || one.item.no - other.item.no)
}

/** The first part that is not begun. */
export function firstStep({ step, isBegun }: KitchenItem): number {
  return isBegun ? step + 1 : step
}

export function keyOf({ order, item }: KitchenItem, step: number): string {
  return partKey({ orderId: order.id, no: item.no, step })
}

/** What an item's parts from one on take, as set up. */
export function restFrom({ steps }: Pick<OrderItem, 'steps'>, step: number): number {
  return steps.slice(step).reduce((sum, { takesMs }) => sum + takesMs, 0)
}

function emptyFrom(state: State, shelf: Shelf, nowMs: EpochMs): number {
  const loads = [...state.loads.values()].filter(({ shelfId }) => shelfId === shelf.id)
  return loads.reduce<number>((at, { out }) => Math.max(at, out?.targetAtMs ?? nowMs + UNKNOWN_LOAD_MS), nowMs)
}

/**
 * When the oven bakes it at the earliest: the second menu from the changeover on; what bakes like bagels before it, or
 * after it where the second menu bakes alike.
 */
export function ovenFromMs({ shop, hours }: Pick<Kitchen, 'shop' | 'hours'>, at: Shop['oven']['bakeAt']): number {
  const { secondFromMs } = hours
  if (secondFromMs === null) return Number.NEGATIVE_INFINITY
  const { bakeAt } = shop.oven
  const isLikeBagels = at !== null && bakeAt !== null && isSame(at, bakeAt)
  return isLikeBagels ? Number.NEGATIVE_INFINITY : secondFromMs
}

function isSame(one: NonNullable<Shop['oven']['bakeAt']>, other: NonNullable<Shop['oven']['bakeAt']>): boolean {
  return Math.abs(milliCelsius(one) - milliCelsius(other)) <= SAME_MILLI_CELSIUS
}

/** How long parts take: as set up for a look ahead, drawn for a quote. */
export interface Taking {
  readonly stepMs: (item: KitchenItem, step: number) => number
  /** Of the part that is begun: what is left of it. */
  readonly leftMs: (item: KitchenItem) => number
}

/** As set up; what is begun and overdue is about to be done. */
export function takingAsSetUp(nowMs: EpochMs): Taking {
  return {
    stepMs: ({ item }, step) => item.steps[step]?.takesMs ?? 0,
    leftMs: ({ item, step }) => {
      const { begunAtMs, takesMs } = item.steps[step] ?? {}
      return Math.max(0, (begunAtMs ?? nowMs) + (takesMs ?? 0) - nowMs)
    },
  }
}

/** The kitchen in plain values: begun parts hold their hand or their places, jobs are `kitchen.items` in order. */
export function simGivenOf(kitchen: Kitchen, taking: Taking): SimGiven {
  const { shop, nowMs, items } = kitchen
  const hands = [...shop.kitchenStations.values()].map((station) => Array<number>(station.hands).fill(nowMs))
  const shelves = kitchen.shelves.map(({ shelf, fromMs }) => Array<number>(shelf.slots).fill(fromMs))
  const handlingMs = shop.oven.handlingMs
  const jobs = items.map((one) => {
    const { item, step, isBegun, holdMs } = one
    const endMs = nowMs + (isBegun ? taking.leftMs(one) : 0)
    if (isBegun) hold(one, { kitchen, endMs, hands, shelves })
    const from = isBegun ? step + 1 : step
    const steps = item.steps.slice(from).map((_, at) => simStepOf(kitchen, one, from + at, taking))
    return { readyMs: Math.max(endMs, holdMs), steps }
  })
  return { hands, shelves, handlingMs, jobs }
}

function simStepOf(kitchen: Kitchen, one: KitchenItem, step: number, taking: Taking): SimStep {
  const { oven = null, stationId } = one.item.steps[step] ?? {}
  return {
    station: oven === null ? (kitchen.stations.get(stationId ?? '') ?? 0) : OVEN,
    takesMs: taking.stepMs(one, step),
    slots: oven?.slots ?? 0,
    fromMs: oven === null ? Number.NEGATIVE_INFINITY : ovenFromMs(kitchen, oven.at),
  }
}

interface Holding {
  readonly kitchen: Kitchen
  readonly endMs: number
  readonly hands: number[][]
  readonly shelves: number[][]
}

/** More may be begun than there are hands and places: what is there is not made longer by it. */
function hold({ item, step }: KitchenItem, { kitchen, endMs, hands, shelves }: Holding): void {
  const { oven = null, stationId, shelfId } = item.steps[step] ?? {}
  if (oven === null) {
    const some = hands[kitchen.stations.get(stationId ?? '') ?? -1] ?? []
    takeFirst(some, 1, kitchen.nowMs, endMs)
    return
  }
  const shelf = kitchen.shelves.findIndex((one) => one.shelf.id === shelfId)
  const fromMs = kitchen.shelves[shelf]?.fromMs ?? kitchen.nowMs
  takeFirst(shelves[shelf] ?? [], oven.slots, fromMs, endMs + kitchen.shop.oven.handlingMs)
}

/** The first so many that are free by then are taken until `endMs`. */
function takeFirst(freeMs: number[], count: number, byMs: number, endMs: number): void {
  let left = count
  for (let at = 0; at < freeMs.length && left > 0; at += 1) {
    if ((freeMs[at] ?? 0) > byMs || (freeMs[at] ?? 0) >= endMs) continue
    freeMs[at] = endMs
    left -= 1
  }
}
