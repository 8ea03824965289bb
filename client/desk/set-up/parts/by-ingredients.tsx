import type { AllergenFound } from '../../../../shared-core/dough/allergens.ts'
import { pieceCost } from '../../../../shared-core/dough/cost.ts'
import type { VarietyId } from '../../../../shared-core/ids.ts'
import type { Shop } from '../../../../shared-core/shop/shop.ts'
import { moneySaid } from '../say-value.ts'
import type { SetUpProps } from '../set-up-parts.ts'

/** What follows from the ingredients of something, beside what was entered for it. */

export interface FromIngredientsProps {
  readonly parts: SetUpProps
  readonly found: readonly AllergenFound[]
}

/** Allergens that ingredients bring in, each with those that do; nothing where none does. */
export function AllergensFromIngredients({ parts, found }: FromIngredientsProps) {
  const { draft, say } = parts
  const told = allergensTold(draft, found, say)
  if (told.length === 0) return null
  return <p class="setup-hint">{`${say.dough.figures.allergens}: ${told.join(', ')}`}</p>
}

/** @example ["wheat (High-gluten flour)", "sesame (Seeds)"] */
export function allergensTold(shop: Shop, found: readonly AllergenFound[], say: SetUpProps['say']): readonly string[] {
  return found.flatMap(({ allergen, from }) => {
    const names = from.flatMap((source) =>
      source.kind === 'ingredient' ? [shop.ingredients.get(source.ingredientId)?.name ?? '?'] : [],
    )
    return names.length === 0 ? [] : [`${say.options.allergen[allergen]} (${[...new Set(names)].join(', ')})`]
  })
}

/** What the ingredients of one piece cost; nothing before its dough has a formula and a weight. */
export function CostFromIngredients({ parts, id }: { readonly parts: SetUpProps; readonly id: VarietyId }) {
  const { draft, say } = parts
  const cost = pieceCost(draft, id)
  if (cost === null || cost.missing.length > 0) return null
  const unpriced = cost.unpriced.map((one) => draft.ingredients.get(one)?.name ?? '?')
  const { costs, unpriced: noPrice } = say.dough.figures
  const rest = unpriced.length === 0 ? '' : `; ${noPrice} ${unpriced.join(', ')}`
  return <p class="setup-hint">{`${costs}: ${moneySaid(cost.cents)}${rest}`}</p>
}
