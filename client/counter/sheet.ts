import type { OrderId } from '../../shared-core/ids.ts'
import type { AmountsPurpose } from '../words/counter.ts'

/** What covers the rack. */
export type Sheet =
  | { readonly kind: 'amounts'; readonly purpose: AmountsPurpose }
  | OrdersSheet
  | { readonly kind: 'sweep' | 'afternoon' | 'kept' | 'day-old' | 'notes' | 'close' | 'more' | 'device' }

/** Pages of orders; they are fetched once the counter stands. */
export type OrdersSheet =
  | { readonly kind: 'orders' | 'slip' }
  | { readonly kind: 'order'; readonly orderId: OrderId }
  /** `orderId`: changes that order; null: takes a new one. */
  | { readonly kind: 'take'; readonly orderId: OrderId | null }
