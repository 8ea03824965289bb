import type { DoughId, IngredientId, PreparationId, ToppingId, VarietyId } from '../ids.ts'
import type { Formula } from '../shop/formula.ts'
import type { Allergen, Shop } from '../shop/shop.ts'
import { ALLERGENS } from '../shop/stages.ts'

/**
 * Allergens from the ingredients up. What was entered at a dough or topping counts besides what its ingredients say, and
 * nothing takes an allergen away again. It says what is known to be in it, never what is not.
 */
export interface AllergenFound {
  readonly allergen: Allergen
  /** At least one. */
  readonly from: readonly AllergenSource[]
}

export type AllergenSource =
  /** An ingredient of a formula or topping, by its label; `preparationId` where it comes in by a pre-ferment or soaker. */
  | {
      readonly kind: 'ingredient'
      readonly ingredientId: IngredientId
      readonly preparationId: PreparationId | null
    }
  /** Entered at the dough or topping itself. */
  | { readonly kind: 'dough'; readonly doughId: DoughId }
  | { readonly kind: 'topping'; readonly toppingId: ToppingId }

type Said = readonly [AllergenSource, readonly Allergen[]]

/** Of a formula, as it was or is, its preparations included. @returns in the order of `ALLERGENS` */
export function allergensOfFormula(shop: Shop, formula: Formula): AllergenFound[] {
  return foundIn(formulaSays(shop, formula))
}

/** Of a dough: its formula, and what was entered. A dough that the set-up does not know has none to tell. */
export function allergensOfDough(shop: Shop, doughId: DoughId): AllergenFound[] {
  return foundIn(doughSays(shop, doughId))
}

/** Of a topping: what it is made of, and what was entered. */
export function allergensOfTopping(shop: Shop, toppingId: ToppingId): AllergenFound[] {
  return foundIn(toppingSays(shop, toppingId))
}

/** Of a variety: its dough and its topping, whenever that goes on. */
export function allergensOfVariety(shop: Shop, varietyId: VarietyId): AllergenFound[] {
  const variety = shop.varieties.get(varietyId)
  if (variety === undefined) return []
  const { doughId, toppingId } = variety
  return foundIn([...doughSays(shop, doughId), ...(toppingId === null ? [] : toppingSays(shop, toppingId))])
}

/** The allergens alone. @example namesOf(allergensOfDough(shop, doughId('egg'))) // ['egg', 'wheat'] */
export function namesOf(found: readonly AllergenFound[]): Allergen[] {
  return found.map(({ allergen }) => allergen)
}

function formulaSays(shop: Shop, { lines, preparations }: Formula): Said[] {
  const own = lines.map(({ ingredientId }) => ingredientSays(shop, ingredientId, null))
  const held = preparations.flatMap(({ preparationId }) =>
    (shop.preparations.get(preparationId)?.lines ?? []).map(({ ingredientId }) =>
      ingredientSays(shop, ingredientId, preparationId),
    ),
  )
  return [...own, ...held]
}

function doughSays(shop: Shop, doughId: DoughId): Said[] {
  const dough = shop.doughs.get(doughId)
  if (dough === undefined) return []
  const formula = dough.formulaId === null ? undefined : shop.formulas.get(dough.formulaId)
  const entered: Said = [{ kind: 'dough', doughId }, dough.contains]
  return [entered, ...(formula === undefined ? [] : formulaSays(shop, formula))]
}

function toppingSays(shop: Shop, toppingId: ToppingId): Said[] {
  const topping = shop.toppings.get(toppingId)
  if (topping === undefined) return []
  const entered: Said = [{ kind: 'topping', toppingId }, topping.contains]
  return [entered, ...topping.madeOf.map(({ ingredientId }) => ingredientSays(shop, ingredientId, null))]
}

function ingredientSays(shop: Shop, ingredientId: IngredientId, preparationId: PreparationId | null): Said {
  return [{ kind: 'ingredient', ingredientId, preparationId }, shop.ingredients.get(ingredientId)?.contains ?? []]
}

function foundIn(said: readonly Said[]): AllergenFound[] {
  return ALLERGENS.flatMap((allergen) => {
    const from = said.filter(([, contains]) => contains.includes(allergen)).map(([source]) => source)
    return from.length === 0 ? [] : [{ allergen, from }]
  })
}
