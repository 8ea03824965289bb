import type { Act } from '../../../shared-core/day/commands.ts'
import type { State } from '../../../shared-core/day/state.ts'
import type { KitchenStationId, PortionId } from '../../../shared-core/ids.ts'
import type { KitchenQueue } from '../../../shared-core/kitchen/queue.ts'
import type { Order } from '../../../shared-core/orders/order.ts'
import type { ItemPart } from '../../../shared-core/orders/order-commands.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { KitchenRoomWords } from '../../words/bench-kitchen.ts'
import type { DoneView } from '../done-view.ts'
import type { SheetParts } from '../sheet.tsx'

/** What lies over the kitchen; at most one. */
export type KitchenPageOpen =
  | { readonly kind: 'item'; readonly part: ItemPart }
  /** All that is on one rod, where it has no room for it. */
  | { readonly kind: 'rod'; readonly key: string }
  | { readonly kind: 'ready' | 'portions' }
  | { readonly kind: 'count'; readonly portionId: PortionId }

/** What the kitchen and its pages are made with. */
export interface KitchenParts extends Omit<SheetParts, 'words'> {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly words: KitchenRoomWords
  readonly queue: KitchenQueue
  /** Of this screen; none: all. */
  readonly stations: readonly KitchenStationId[]
  /** What was said with an order; "" when nothing was, or it is not here yet. */
  readonly noteOf: (order: Pick<Order, 'id' | 'details'>) => string
  readonly send: (act: Act) => void
  readonly open: (page: KitchenPageOpen | null) => void
  readonly lastDone: DoneView | null
  readonly takeBack: (done: DoneView) => void
}
