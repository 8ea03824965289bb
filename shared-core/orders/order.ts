import type { KitchenStationId, MenuItemId, OrderId, PortionId, RunId, ShelfId, StandingId, VarietyId } from '../ids.ts'
import type { OvenStep } from '../shop/kitchen.ts'
import type { Allergen } from '../shop/shop.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import type { Recurrence } from './recurrence.ts'

/** `here`: somebody at the counter waits for it. */
export type OrderWay = 'here' | 'pickUp' | 'delivery'

/** Pieces that are ordered, all of one line sliced and bagged alike. */
export interface OrderLine {
  /** Null: mixed, of any variety that is not in `without`. */
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  /** All of them, a baker's dozen counted as the shop does. */
  readonly pieces: number
  /** How many dozens were said; 0: pieces only. */
  readonly dozens: number
  readonly sliced: boolean
  readonly bagged: boolean
}

/** One part of an item on its way: waiting, begun (by hand or in the oven), made. */
export interface ItemStep {
  readonly stationId: KitchenStationId
  readonly takesMs: DurationMs
  readonly oven: OvenStep | null
  readonly begunAtMs: EpochMs | null
  /** The shelf that it bakes on. */
  readonly shelfId: ShelfId | null
  /** Turns that are done, of `oven.turns`. */
  readonly turned: number
  readonly madeAtMs: EpochMs | null
}

/** One thing made to order: two of the same are two of them. */
export interface OrderItem {
  /** Counts the order's items up from 1; it stays when the order is changed. */
  readonly no: number
  readonly itemId: MenuItemId
  /** The bagel that it is made on; null: it is on none. */
  readonly varietyId: VarietyId | null
  readonly toasted: boolean
  readonly without: readonly PortionId[]
  readonly more: readonly PortionId[]
  /** What the guest must not get. It cannot be missed on any screen that shows the item. */
  readonly allergies: readonly Allergen[]
  readonly steps: readonly ItemStep[]
}

/**
 * An order that is still to be handed over. Names, phone numbers and notes are no part of it: they lie in a table by
 * the order's id (`details`), and can be deleted for good.
 */
export interface Order {
  readonly id: OrderId
  /** What it is called across the room: a slip's number, initials. Never a name. */
  readonly mark: string
  readonly takenAtMs: EpochMs
  /** When it must be ready: fetched, or out of the door. */
  readonly dueAtMs: EpochMs
  readonly way: OrderWay
  readonly runId: RunId | null
  /** Its place on the run, from 1; 0: not on a run. */
  readonly stop: number
  readonly lines: readonly OrderLine[]
  readonly items: readonly OrderItem[]
  readonly isPaid: boolean
  /** How often its details were written: 0 has none, another number is fetched anew. */
  readonly details: number
  /** The standing order that it is of, and the date of that. */
  readonly standing: { readonly standingId: StandingId; readonly date: string } | null
  /** What a till or a file calls it, so that it is not taken twice; null: taken by hand. */
  readonly ref: string | null
  /** Somebody took it knowing that the board could not promise it. */
  readonly isRisk: boolean
}

/** An order that comes again and again. The order of a day is made of it when that day opens. */
export interface StandingOrder {
  readonly id: StandingId
  readonly mark: string
  readonly way: OrderWay
  readonly runId: RunId | null
  readonly stop: number
  /** In minutes after local midnight. */
  readonly dueMinute: number
  readonly lines: readonly OrderLine[]
  readonly isPaid: boolean
  readonly details: number
  readonly recurrence: Recurrence
  /** On a day that the shop's calendar calls a holiday it comes too. */
  readonly onHolidays: boolean
  /** The last date of which an order was made of it, or that was over when it was said, YYYY-MM-DD; null: none yet. */
  readonly takenUp: string | null
}

/** Portions left, as counted and taken since. */
export interface PortionsLeft {
  readonly portionId: PortionId
  readonly portions: number
  readonly countedAtMs: EpochMs
}

/** How long a step of an item really took: the newest `MAKE_TIMES_MAX`, oldest first. */
export interface MakeTimes {
  /** `makeKey`: item and step. */
  readonly key: string
  readonly tookMs: readonly DurationMs[]
}
export const MAKE_TIMES_MAX = 24

/** @example makeKey('flatbread', 1) // 'flatbread 1' */
export function makeKey(itemId: string, step: number): string {
  return `${itemId} ${step}`
}
