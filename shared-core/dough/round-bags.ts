import type { FormulaId } from '../ids.ts'
import type { DoughRoom, Formula, Ingredient } from '../shop/formula.ts'
import type { Shop } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import { WHOLE } from './percents.ts'
import { stepOf } from './scale.ts'

/** A formula with all its flour of the day, milligrams. */
export interface FlourOf {
  readonly formula: Formula
  readonly flourMilligrams: number
}

/**
 * Flour to add to each formula so that what is taken of the flour that comes in bags is whole bags, or half ones.
 *
 *   added = (⌈taken / unit⌉ · unit − taken) / share of that flour in the formula
 *
 * All formulas of the day that take of the same flour are one sum, and what fills up the bag goes into the formula that the
 * shop names for it. It is left as it is where that formula is not mixed that day, as nobody asked for such a mix, and where
 * less than a step of the scale is missing. Without a named one each formula fills up its own bag.
 * @returns added flour (all flour of the formula) in milligrams, fractions kept; formulas that get none are left out
 * @example 30 lb of plain and 12 lb of rye flour mixed with 8 lb of the plain's, bags of 50 lb // plain + 12 lb
 */
export function flourToFillBags(shop: Shop, flours: readonly FlourOf[]): ReadonlyMap<FormulaId, number> {
  const { doughRoom } = shop
  const added = new Map<FormulaId, number>()
  if (doughRoom === null || doughRoom.flourIn === 'none') return added
  const named = flours.find(({ formula }) => formula.id === doughRoom.surplusTo)
  const filling = doughRoom.surplusTo === null ? flours : named === undefined ? [] : [named]
  for (const one of filling) {
    const bagged = baggedFlour(shop, one.formula)
    if (bagged === null) continue
    const taking = doughRoom.surplusTo === null ? [one] : flours
    const taken = taking.reduce((sum, other) => sum + takenOf(other, bagged.ingredient), 0)
    const missing = toFill(taken, unitOf(doughRoom, bagged.bagMilligrams), stepOf(shop))
    if (missing > 0) added.set(one.formula.id, (missing * WHOLE) / bagged.percent)
  }
  return added
}

/** The flour of a formula of which it takes most among those that come in bags. */
function baggedFlour(
  shop: Shop,
  formula: Formula,
): { readonly ingredient: Ingredient; readonly percent: number; readonly bagMilligrams: number } | null {
  const found = [...shop.ingredients.values()].flatMap((ingredient) => {
    if (ingredient.kind !== 'flour' || ingredient.bag === null) return []
    const percent = percentOf(formula, ingredient)
    const bagMilligrams = milligrams(ingredient.bag)
    return percent > 0 && bagMilligrams > 0 ? [{ ingredient, percent, bagMilligrams }] : []
  })
  const byShare = found.sort(
    (one, other) => other.percent - one.percent || (one.ingredient.id < other.ingredient.id ? -1 : 1),
  )
  return byShare[0] ?? null
}

function percentOf({ lines }: Formula, { id }: Ingredient): number {
  return lines.reduce((sum, { ingredientId, percent }) => (ingredientId === id ? sum + percent : sum), 0)
}

function takenOf({ formula, flourMilligrams }: FlourOf, ingredient: Ingredient): number {
  return (flourMilligrams * percentOf(formula, ingredient)) / WHOLE
}

function unitOf({ flourIn }: DoughRoom, bagMilligrams: number): number {
  return flourIn === 'halfBags' ? bagMilligrams / 2 : bagMilligrams
}

function toFill(taken: number, unit: number, step: number): number {
  if (taken % unit < step) return 0
  const missing = Math.ceil(taken / unit) * unit - taken
  return missing < step ? 0 : missing
}
