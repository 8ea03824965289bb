import type { AmountsPurpose } from '../words/counter.ts'

/** What covers the rack. */
export type Sheet =
  | { readonly kind: 'amounts'; readonly purpose: AmountsPurpose }
  | { readonly kind: 'sweep' | 'afternoon' | 'kept' | 'day-old' | 'notes' | 'close' | 'more' | 'device' }
