import { dateAfter } from '../day/label.ts'
import type { State } from '../day/state.ts'
import type { IngredientId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import type { NoonOf } from './dates.ts'
import { neededAhead } from './need-ingredients.ts'
import { onHandNow } from './on-hand.ts'
import { stepOf } from './scale.ts'

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
