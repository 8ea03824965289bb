import { ingredientId } from '../ids.ts'
import type { Ingredient, IngredientKind } from './formula.ts'
import type { Allergen, Language } from './shop.ts'

/**
 * What nearly every bagel dough is made of, to begin with, in either language. Prices and bags are the shop's to say.
 * Common practice, no source; allergens as the label on the bag says them, which decides.
 */
export function pickableIngredients(language: Language): Ingredient[] {
  return INGREDIENTS.map(({ id, name, kind, contains }, order) => ({
    id: ingredientId(id),
    name: name[language],
    order,
    kind,
    contains: contains ?? [],
    price: null,
    bag: null,
    retired: false,
  }))
}

interface PickIngredient {
  readonly id: string
  readonly name: Readonly<Record<Language, string>>
  readonly kind: IngredientKind
  readonly contains?: readonly Allergen[]
}

const INGREDIENTS: readonly PickIngredient[] = [
  { id: 'high-gluten', name: { en: 'High-gluten flour', es: 'Harina de fuerza' }, kind: 'flour', contains: ['wheat'] },
  { id: 'whole-wheat', name: { en: 'Whole-wheat flour', es: 'Harina integral' }, kind: 'flour', contains: ['wheat'] },
  { id: 'rye-flour', name: { en: 'Rye flour', es: 'Harina de centeno' }, kind: 'flour' },
  { id: 'water', name: { en: 'Water', es: 'Agua' }, kind: 'water' },
  { id: 'salt', name: { en: 'Salt', es: 'Sal' }, kind: 'salt' },
  { id: 'instant-yeast', name: { en: 'Instant yeast', es: 'Levadura instantánea' }, kind: 'yeast' },
  // Of barley, which is none of the nine.
  { id: 'malt', name: { en: 'Malt', es: 'Malta' }, kind: 'malt' },
  { id: 'sugar', name: { en: 'Sugar', es: 'Azúcar' }, kind: 'sweetener' },
  { id: 'oil', name: { en: 'Oil', es: 'Aceite' }, kind: 'fat' },
  { id: 'raisins', name: { en: 'Raisins', es: 'Pasas' }, kind: 'mixIn' },
]
