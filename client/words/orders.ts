import type { MenuItemId, PortionId, VarietyId } from '../../shared-core/ids.ts'
import type { OrderLine, OrderWay } from '../../shared-core/orders/order.ts'
import type { Allergen, Language } from '../../shared-core/shop/shop.ts'
import { enOrders } from './en-orders.ts'
import { esOrders } from './es-orders.ts'
import type { Words } from './words.ts'

/** How an order is told, alike at counter, bench and desk. Comes with the first part that shows one. */
export interface OrderWords {
  readonly way: { readonly [way in OrderWay]: string }
  /** Pieces of no variety said. */
  readonly mixed: string
  readonly mixedNo: (names: readonly string[]) => string
  /** Dozens and pieces as they were asked for. @example "2 dozen", "1 dozen and 3", "6" */
  amount(dozens: number, loose: number): string
  /** @example "2 dozen Sesame, sliced", "1 dozen mixed, no Raisin" */
  line(line: SaidLine, dozenPieces: number): string
  /** All its lines in one. */
  lines(lines: readonly SaidLine[], dozenPieces: number): string
  /** Something made to order. Allergies stand first, in capitals. @example "2 × Egg and cheese on Sesame, toasted, no onion" */
  item(item: SaidItem, times: number): string
  readonly allergen: { readonly [allergen in Allergen]: string }
  /** @example "ALLERGY: egg, milk" */
  allergy(allergens: readonly Allergen[]): string
  readonly paid: string
  readonly notPaid: string
  readonly sliced: string
  readonly bagged: string
  readonly toasted: string
}

export type SaidLine = Pick<OrderLine, 'varietyId' | 'without' | 'dozens' | 'pieces' | 'sliced' | 'bagged'>

/** An item of an order or one that is asked for. */
export interface SaidItem {
  readonly itemId: MenuItemId
  readonly varietyId: VarietyId | null
  readonly toasted: boolean
  readonly without: readonly PortionId[]
  readonly more: readonly PortionId[]
  readonly allergies: readonly Allergen[]
}

export function orderWords(words: Words): OrderWords {
  return OF_LANGUAGE[words.language](words)
}

const OF_LANGUAGE: { readonly [language in Language]: (words: Words) => OrderWords } = { en: enOrders, es: esOrders }
