import type { Allergen, Language } from '../../shared-core/shop/shop.ts'

/** What allergens are called, in a sentence. */
export const ALLERGEN_NAMES: { readonly [language in Language]: { readonly [allergen in Allergen]: string } } = {
  en: {
    milk: 'milk',
    egg: 'egg',
    fish: 'fish',
    shellfish: 'shellfish',
    treeNuts: 'tree nuts',
    peanuts: 'peanuts',
    wheat: 'wheat',
    soy: 'soy',
    sesame: 'sesame',
  },
  es: {
    milk: 'leche',
    egg: 'huevo',
    fish: 'pescado',
    shellfish: 'mariscos',
    treeNuts: 'nueces',
    peanuts: 'cacahuate',
    wheat: 'trigo',
    soy: 'soya',
    sesame: 'sésamo',
  },
}
