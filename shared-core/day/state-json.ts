import type { Shop } from '../shop/shop.ts'
import type { State } from './state.ts'

/** A state as JSON: maps as lists of pairs in id order, so that equal states give equal text. */
export interface StateJson {
  readonly seq: number
  readonly [field: string]: unknown
}

const TABLES = ['batches', 'loads', 'shelves', 'stock', 'keeps', 'planned', 'unsure', 'account'] as const
const SHOP_TABLES = ['shelves', 'doughs', 'varieties', 'stations'] as const
