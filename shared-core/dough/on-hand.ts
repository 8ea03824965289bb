import type { State } from '../day/state.ts'
import type { IngredientId } from '../ids.ts'
import { inOrder } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'

/** What should be there of an ingredient now. */
export interface OnHandNow {
  readonly ingredientId: IngredientId
  /** Negative: more was taken than was counted and delivered. */
  readonly milligrams: number
  /** When it was counted last; null: only deliveries are known. */
  readonly countedAtMs: EpochMs | null
}

/**
 * What is on hand of each ingredient that was counted or delivered: as of the last count or close, less what mixes and
 * builds that stand in the state took. In the set-up's order. What nobody counted is not in it.
 */
export function onHandNow(state: State): OnHandNow[] {
  const taken = takenSinceClose(state)
  const known = [...state.onHand.values()].map(({ ingredientId, milligrams, countedAtMs }) => ({
    ingredientId,
    milligrams: milligrams - (taken.get(ingredientId) ?? 0),
    countedAtMs,
  }))
  const places = new Map(
    (state.shop === null ? [] : inOrder(state.shop.ingredients)).map(({ id }, place) => [id, place]),
  )
  const placeOf = ({ ingredientId }: OnHandNow) => places.get(ingredientId) ?? Number.MAX_SAFE_INTEGER
  return known.sort((one, other) => placeOf(one) - placeOf(other) || (one.ingredientId < other.ingredientId ? -1 : 1))
}

/** What begun mixes and builds in the state took of each ingredient, in milligrams: a count adds it to what it finds. */
export function takenSinceClose({ mixes, builds }: Pick<State, 'mixes' | 'builds'>): Map<IngredientId, number> {
  const taken = new Map<IngredientId, number>()
  const add = (ingredientId: IngredientId, milligrams: number) =>
    taken.set(ingredientId, (taken.get(ingredientId) ?? 0) + milligrams)
  for (const { mixedAtMs, lines } of mixes.values()) {
    if (mixedAtMs === null) continue
    for (const { ingredientId, milligrams } of lines) if (ingredientId !== null) add(ingredientId, milligrams)
  }
  for (const { lines } of builds.values()) for (const one of lines) add(one.ingredientId, one.milligrams)
  return taken
}

/** An ingredient that will run out over the days ahead. */
export interface Shortage {
  readonly ingredientId: IngredientId
  readonly onHandMilligrams: number
  /** Over all days looked at. */
  readonly neededMilligrams: number
  /** needed − on hand */
  readonly shortMilligrams: number
  /** The first day of mixing (or of making a preparation) on which there is not enough, YYYY-MM-DD. */
  readonly fromDate: string
  /** Whole bags that would do; null: it is bought loose. */
  readonly bags: number | null
}

/** Ingredients counted or delivered once that will not do for the days ahead, the soonest first. */
export function shortages(_state: State, _shop: Shop, _fromDate: string, _days: number, _noonOf: NoonOf): Shortage[] {
  return []
}
