import type { State } from '../day/state.ts'
import type { KitchenStationId, MenuItemId, OrderId, PortionId, ShelfId, VarietyId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import type { OrderWay } from '../orders/order.ts'
import type { ItemPart } from '../orders/order-commands.ts'
import { inOrder } from '../shop/in-order.ts'
import type { OvenStep } from '../shop/kitchen.ts'
import type { Allergen } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { lookAheadOf } from './ahead.ts'
import { ordersWaiting, readyOrders } from './order-progress.ts'
import { tasksOf } from './tasks.ts'
import { togetherOf } from './together.ts'

/** What is made to order now, by station, by thing and by order. */
export interface KitchenQueue {
  /** In the set-up's order: those in use, and retired ones with something still to be made there. */
  readonly stations: readonly StationQueue[]
  /** The same thing across orders, the soonest due first. */
  readonly together: readonly Together[]
  /** Orders of which something is still to be made, by due time. */
  readonly orders: readonly WaitingOrder[]
  /** Orders of which everything is made, the one first that has been ready longest. */
  readonly ready: readonly ReadyOrder[]
}

export interface StationQueue {
  readonly stationId: KitchenStationId
  readonly name: string
  readonly hands: number
  /** What is begun first, by when it is made; then in the order in which to begin. */
  readonly tasks: readonly KitchenTask[]
}

/** What was asked for, of one item. */
export interface Asked {
  readonly itemId: MenuItemId
  readonly varietyId: VarietyId | null
  readonly toasted: boolean
  readonly without: readonly PortionId[]
  readonly more: readonly PortionId[]
  readonly allergies: readonly Allergen[]
}

/** One part of one item that is to be made at a station. */
export interface KitchenTask extends Asked {
  /** Names it for sounds and keys; the same as long as it is the same part. */
  readonly key: string
  readonly part: ItemPart
  readonly mark: string
  readonly way: OrderWay
  readonly stationId: KitchenStationId
  /** Null: made by hand. */
  readonly oven: OvenStep | null
  /** `waiting`: the part before it is not made yet. */
  readonly stage: 'waiting' | 'next' | 'begun'
  /** When to begin, so that the order is complete together as soon as it can be; of what is begun, when it was. */
  readonly beginAtMs: EpochMs
  /** When it is made, as things stand. */
  readonly endAtMs: EpochMs
  /** Where it bakes, or where it should go. */
  readonly shelfId: ShelfId | null
  /** When its order is due. */
  readonly dueAtMs: EpochMs
  /** `coming`: not to be begun yet; `due`: to be begun, or in work; `late`: its order is past due. */
  readonly status: DueStatus
  /** Nothing of the item is to be made after it. */
  readonly isLast: boolean
  /** The order has details: a note may be among them. */
  readonly hasDetails: boolean
}

/** One kind of thing across orders. An item with an allergy stands alone. */
export interface Together extends Asked {
  readonly key: string
  readonly begun: number
  /** Not begun yet. */
  readonly waiting: number
  /** By due time. */
  readonly parts: readonly TogetherPart[]
}

/** An item on its rod, with the part that it is at. */
export interface TogetherPart {
  readonly part: ItemPart
  readonly mark: string
  readonly stationId: KitchenStationId
  readonly stage: KitchenTask['stage']
  readonly dueAtMs: EpochMs
  readonly status: DueStatus
}

export interface WaitingOrder {
  readonly orderId: OrderId
  readonly mark: string
  readonly way: OrderWay
  readonly takenAtMs: EpochMs
  readonly dueAtMs: EpochMs
  /** When it is complete, as things stand; null: as they stand never (no hands, no places, the oven closes). */
  readonly readyAtMs: EpochMs | null
  readonly items: number
  readonly made: number
  readonly hasAllergy: boolean
  /** `coming`: it will be there in time; `due`: it will not; `late`: it is past due. */
  readonly status: DueStatus
}

export interface ReadyOrder {
  readonly orderId: OrderId
  readonly mark: string
  readonly way: OrderWay
  readonly takenAtMs: EpochMs
  readonly dueAtMs: EpochMs
  /** When the last of it was made; when it was taken where nothing of it is made here. */
  readonly madeAtMs: EpochMs
  /** Pieces of its lines that are not kept yet: they come off the rods. */
  readonly piecesMissing: number
  readonly hasAllergy: boolean
}

const EMPTY: KitchenQueue = { stations: [], together: [], orders: [], ready: [] }

/** @returns empty lists without a set-up */
export function kitchenQueue(state: State, nowMs: EpochMs): KitchenQueue {
  const ahead = lookAheadOf(state, nowMs)
  if (ahead === null) return EMPTY
  const tasks = tasksOf(ahead)
  const stations = inOrder(ahead.kitchen.shop.kitchenStations)
    .map(({ id, name, hands, retired }) => ({
      stationId: id,
      name,
      hands,
      retired,
      tasks: tasks.filter(({ stationId }) => stationId === id),
    }))
    .filter((station) => !station.retired || station.tasks.length > 0)
    .map(({ retired: _, ...station }) => station)
  return {
    stations,
    together: togetherOf(tasks),
    orders: ordersWaiting(ahead),
    ready: readyOrders(state, nowMs),
  }
}
