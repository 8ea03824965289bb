import type { State } from '../day/state.ts'
import type { MenuItemId, ShelfId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import { dueStatus } from '../line/act-due.ts'
import { stepNow } from '../orders/item-steps.ts'
import type { Order, OrderItem } from '../orders/order.ts'
import type { ItemPart } from '../orders/order-commands.ts'
import type { Allergen } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { epochMs, later } from '../units.ts'
import { partKey } from './parts.ts'

/** One thing of the second menu that bakes. */
export interface SlotUse {
  readonly key: string
  readonly part: ItemPart
  readonly mark: string
  readonly itemId: MenuItemId
  readonly allergies: readonly Allergen[]
  /** Null: nobody said where. */
  readonly shelfId: ShelfId | null
  readonly slots: number
  readonly inAtMs: EpochMs
  readonly outAtMs: EpochMs
  /** What is to be done with it next before it comes out; null: nothing. */
  readonly turn: { readonly what: 'turn' | 'move'; readonly atMs: EpochMs; readonly status: DueStatus } | null
  /** Of taking it out. */
  readonly status: DueStatus
}

/** After this, something that is to come out is late: second-menu bakes are short and hot. Common practice, no source. */
const OUT_LATE_MS = 30_000

/** What bakes now, of all shelves; what comes out first stands first. */
export function slotsNow(state: State, nowMs: EpochMs): readonly SlotUse[] {
  return [...state.orders.values()]
    .flatMap((order) => order.items.flatMap((item) => useOf(order, item, nowMs) ?? []))
    .sort((one, other) => one.outAtMs - other.outAtMs || (one.key < other.key ? -1 : 1))
}

function useOf(order: Order, item: OrderItem, nowMs: EpochMs): SlotUse | null {
  const at = stepNow(item)
  const step = at === null ? undefined : item.steps[at]
  if (at === null || step === undefined || step.oven === null || step.begunAtMs === null) return null
  const { oven, begunAtMs, takesMs, shelfId, turned } = step
  const outAtMs = later(begunAtMs, takesMs)
  const next = oven.turns[turned]
  const turnMs = next === undefined ? null : later(begunAtMs, next.afterMs)
  const part = { orderId: order.id, no: item.no, step: at }
  return {
    key: partKey(part),
    part,
    mark: order.mark,
    itemId: item.itemId,
    allergies: item.allergies,
    shelfId,
    slots: oven.slots,
    inAtMs: begunAtMs,
    outAtMs,
    turn:
      next === undefined || turnMs === null
        ? null
        : { what: next.what, atMs: turnMs, status: lateAfter(turnMs, nowMs) },
    status: lateAfter(outAtMs, nowMs),
  }
}

export function lateAfter(atMs: EpochMs, nowMs: EpochMs): DueStatus {
  return dueStatus(atMs, epochMs(atMs + OUT_LATE_MS), nowMs)
}
