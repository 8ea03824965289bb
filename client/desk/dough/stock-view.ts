import type { State } from '../../../shared-core/day/state.ts'
import type { OnHandNow } from '../../../shared-core/dough/on-hand.ts'
import { onHandNow } from '../../../shared-core/dough/on-hand.ts'
import type { Shortage } from '../../../shared-core/dough/shortages.ts'
import type { IngredientId } from '../../../shared-core/ids.ts'
import type { Ingredient } from '../../../shared-core/shop/formula.ts'
import { inOrder } from '../../../shared-core/shop/in-order.ts'
import type { Shop, Weight } from '../../../shared-core/shop/shop.ts'
import { milligrams } from '../../../shared-core/shop/weight.ts'
import { typedWeight } from './typed-weight.ts'

/** An ingredient with what should be there of it. */
export interface StockRow {
  readonly ingredient: Ingredient
  /** Null: never counted or delivered. */
  readonly onHand: OnHandNow | null
  readonly short: Shortage | null
}

/** In the set-up's order. Water comes from the tap and is not counted. */
export function stockRows(state: State, shop: Shop, short: readonly Shortage[]): readonly StockRow[] {
  const known = new Map(onHandNow(state).map((one) => [one.ingredientId, one]))
  const missing = new Map(short.map((one) => [one.ingredientId, one]))
  return inOrder(shop.ingredients)
    .filter(({ id, kind, retired }) => kind !== 'water' && (!retired || known.has(id)))
    .map((ingredient) => ({
      ingredient,
      onHand: known.get(ingredient.id) ?? null,
      short: missing.get(ingredient.id) ?? null,
    }))
}

/** What is there as whole bags and the rest; null: it is bought loose. @example 87 lb in bags of 50 lb // { bags: 1, restMilligrams: 37 lb } */
export function inBags(
  weightMilligrams: number,
  bag: Weight | null,
): { readonly bags: number; readonly restMilligrams: number } | null {
  if (bag === null) return null
  const perBag = milligrams(bag)
  if (perBag <= 0) return null
  // Three bags of 10 lb are a milligram less than 30 lb: no bag is opened for that.
  const slack = perBag / 1_000
  const bags = Math.floor((weightMilligrams + slack) / perBag)
  if (bags < 1) return null
  const rest = weightMilligrams - bags * perBag
  return { bags, restMilligrams: rest <= slack ? 0 : rest }
}

export interface CountRead {
  readonly counts: readonly { readonly ingredientId: IngredientId; readonly weight: Weight }[]
  /** Rows whose text is no weight. */
  readonly wrong: ReadonlySet<IngredientId>
}

/** The count as it was typed; empty rows were not counted. */
export function readCount(
  rows: readonly StockRow[],
  typed: ReadonlyMap<IngredientId, string>,
  unit: Weight['unit'],
): CountRead {
  const read = rows.map(({ ingredient: { id, bag } }) => ({
    ingredientId: id,
    weight: typedWeight(typed.get(id) ?? '', { bag, unit }),
  }))
  return {
    counts: read.flatMap(({ ingredientId, weight }) =>
      weight === null || weight === 'none' ? [] : [{ ingredientId, weight }],
    ),
    wrong: new Set(read.filter(({ weight }) => weight === null).map(({ ingredientId }) => ingredientId)),
  }
}
