import type { Line } from '../day/state.ts'
import type { MenuItemId, OrderId, PortionId, RunId, ShelfId, StandingId, VarietyId } from '../ids.ts'
import type { Allergen } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { OrderWay } from './order.ts'
import type { Recurrence } from './recurrence.ts'

/** Pieces as they are asked for: `dozens` of the shop's dozen and `pieces` besides. */
export interface AskedLine {
  /** Null: mixed, of any variety that is not in `without`. */
  readonly varietyId: VarietyId | null
  readonly without: readonly VarietyId[]
  readonly dozens: number
  readonly pieces: number
  readonly sliced: boolean
  readonly bagged: boolean
}

export interface AskedItem {
  readonly itemId: MenuItemId
  readonly varietyId: VarietyId | null
  readonly toasted: boolean
  readonly without: readonly PortionId[]
  readonly more: readonly PortionId[]
  readonly allergies: readonly Allergen[]
  /** So many of the same. */
  readonly times: number
}

/**
 * Who ordered, and what was said. `decide` looks only at whether it is there; the server puts it into its own table by
 * the order's id: it never reaches journal, state or told acts.
 */
export interface OrderDetails {
  readonly name: string
  readonly phone: string
  readonly note: string
}

export interface AskedOrder {
  /** Null: the next slip's number. */
  readonly mark: string | null
  /** Null: somebody waits for it, and it is due as the shop promises (`OrderRules.madeInMs`). */
  readonly dueAtMs: EpochMs | null
  readonly way: OrderWay
  readonly runId: RunId | null
  readonly stop: number
  readonly lines: readonly AskedLine[]
  readonly items: readonly AskedItem[]
  readonly isPaid: boolean
  /** Left out: nothing is said of who it is for, or it stays as it was. */
  readonly details?: OrderDetails
}

/** A part of an item of an order. */
export interface ItemPart {
  readonly orderId: OrderId
  readonly no: number
  /** Index of the part among the item's steps. */
  readonly step: number
}

export type OrderCommand =
  /** `isRisk`: the board could not promise it, and somebody said yes all the same. `ref`: what a till calls it. */
  | ({ readonly type: 'takeOrder'; readonly isRisk?: boolean; readonly ref?: string } & AskedOrder)
  /** Says it anew as a whole. Items of which something is begun stay as they are; `keepsItems`: all of them do. */
  | ({ readonly type: 'changeOrder'; readonly orderId: OrderId; readonly keepsItems?: boolean } & AskedOrder)
  | { readonly type: 'cancelOrder'; readonly orderId: OrderId }
  /** Nobody came: what was kept goes back for sale. */
  | { readonly type: 'missOrder'; readonly orderId: OrderId }
  /** `lines` null: as ordered, kept pieces first, the rest off the rods. Else what really went into the bag. */
  | { readonly type: 'handOverOrder'; readonly orderId: OrderId; readonly lines: readonly Line[] | null }
  /** `standingId` null: a new one. Items made to order do not stand. */
  | {
      readonly type: 'setStanding'
      readonly standingId: StandingId | null
      readonly mark: string
      readonly way: OrderWay
      readonly runId: RunId | null
      readonly stop: number
      readonly dueMinute: number
      readonly lines: readonly AskedLine[]
      readonly isPaid: boolean
      readonly recurrence: Recurrence
      readonly onHolidays: boolean
      readonly details?: OrderDetails
    }
  | { readonly type: 'endStanding'; readonly standingId: StandingId }
  /** Parts of items on: begun (`shelfId`: into that shelf), made, or waiting again; `turned`: once more turned or moved. */
  | {
      readonly type: 'moveItems'
      readonly parts: readonly ItemPart[]
      readonly to: 'begun' | 'turned' | 'made' | 'waiting'
      readonly shelfId: ShelfId | null
    }
  | { readonly type: 'countPortions'; readonly portionId: PortionId; readonly portions: number }
  /** The server's own: orders of the open day out of standing ones, and the end of those that nobody fetched. */
  | { readonly type: 'takeUpOrders' }
