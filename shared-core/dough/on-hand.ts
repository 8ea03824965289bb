import { dateAfter } from '../day/label.ts'
import type { State } from '../day/state.ts'
import type { IngredientId } from '../ids.ts'
import { inOrder } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'
import { neededAhead } from './need-ingredients.ts'
import { stepOf } from './scale.ts'

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
 * builds that stand in the state took. In the set-up's order. What nobody knows is not in it.
 */
export function onHandNow(state: State): OnHandNow[] {
  const taken = takenSinceClose(state)
  const known = [...state.onHand.values()]
    .filter(({ milligrams: some, countedAtMs }) => countedAtMs !== null || some !== 0)
    .map(({ ingredientId, milligrams: some, countedAtMs }) => ({
      ingredientId,
      milligrams: some - (taken.get(ingredientId) ?? 0),
      countedAtMs,
    }))
  const places = new Map(
    (state.shop === null ? [] : inOrder(state.shop.ingredients)).map(({ id }, place) => [id, place]),
  )
  const placeOf = ({ ingredientId }: OnHandNow) => places.get(ingredientId) ?? Number.MAX_SAFE_INTEGER
  return known.sort((one, other) => placeOf(one) - placeOf(other) || (one.ingredientId < other.ingredientId ? -1 : 1))
}

/** What begun mixes and builds took of each ingredient, in milligrams: a count adds it to what it finds. */
export function takenSinceClose({ mixes, builds }: Pick<State, 'mixes' | 'builds'>): Map<IngredientId, number> {
  const taken = new Map<IngredientId, number>()
  const add = (id: IngredientId, some: number) => taken.set(id, (taken.get(id) ?? 0) + some)
  for (const { mixedAtMs, lines } of mixes.values()) {
    if (mixedAtMs === null) continue
    for (const { ingredientId, milligrams: some } of lines) if (ingredientId !== null) add(ingredientId, some)
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

/**
 * Ingredients counted or delivered once that will not do for what is mixed and made on the days ahead, the soonest first.
 * Less than a step of the scale is not short: sheets are rounded. Water is not stocked.
 * @param fromDate the shop's date now @param days from it on
 * @example two bags of 50 lb, 40 lb mixed each day // short from the third day on
 */
export function shortages(state: State, shop: Shop, fromDate: string, days: number, noonOf: NoonOf): Shortage[] {
  const needed = neededAhead({ state, shop, noonOf }, fromDate, days)
  const found = onHandNow(state).flatMap(({ ingredientId, milligrams: onHand }): Shortage[] => {
    const ingredient = shop.ingredients.get(ingredientId)
    const byDate = needed.get(ingredientId)
    if (ingredient === undefined || ingredient.kind === 'water' || byDate === undefined) return []
    let sum = 0
    let firstShort: string | null = null
    for (let n = 0; n < days; n += 1) {
      const date = dateAfter(fromDate, n)
      sum += byDate.get(date) ?? 0
      if (firstShort === null && sum - onHand >= stepOf(shop)) firstShort = date
    }
    if (firstShort === null) return []
    const short = Math.round(sum) - onHand
    const bag = ingredient.bag === null ? 0 : milligrams(ingredient.bag)
    return [
      {
        ingredientId,
        onHandMilligrams: onHand,
        neededMilligrams: Math.round(sum),
        shortMilligrams: short,
        fromDate: firstShort,
        bags: bag > 0 ? Math.ceil(short / bag) : null,
      },
    ]
  })
  return found.sort((one, other) => (one.fromDate < other.fromDate ? -1 : one.fromDate > other.fromDate ? 1 : 0))
}
