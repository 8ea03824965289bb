import { inUse } from '../../../shared-core/shop/in-order.ts'
import { pickableDoughs, pickableToppings, pickableVarieties } from '../../../shared-core/shop/pickable.ts'
import { pickableIngredients } from '../../../shared-core/shop/pickable-ingredients.ts'
import { pickableKitchenStations } from '../../../shared-core/shop/pickable-kitchen.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import type { Language, Shop, Variety } from '../../../shared-core/shop/shop.ts'
import { startingPoint } from '../../../shared-core/shop/starting-points.ts'
import type { Listed, ListKind } from './lists.ts'
import { DOUGHS, TOPPINGS, VARIETIES } from './lists.ts'
import { rebased } from './rebased.ts'

/** A variety to tick: one that the shop has or had, or one to pick from. */
export interface VarietyPick {
  readonly variety: Variety
  readonly isPicked: boolean
}

/** The shop's varieties in its order, then what else can be picked, by the names that the shop's language has for them. */
export function varietyPicks(shop: Shop): readonly VarietyPick[] {
  const own = inUse(shop.varieties)
  const more = pickableVarieties(shop.profile.language).flatMap((variety) => {
    const known = shop.varieties.get(variety.id)
    if (known === undefined) return [variety]
    return known.retired ? [known] : []
  })
  return [
    ...own.map((variety) => ({ variety, isPicked: true })),
    ...more.map((variety) => ({ variety, isPicked: false })),
  ]
}

/**
 * A variety put in use, with the dough and topping that it needs; they come in at the end of their lists. One that the
 * shop had before comes back as it was.
 */
export function pickVariety(shop: Shop, variety: Variety): SetUpChange[] {
  const { language } = shop.profile
  const dough = pickableDoughs(language).find(({ id }) => id === variety.doughId)
  const topping = pickableToppings(language).find(({ id }) => id === variety.toppingId)
  return [
    ...inUseAgain(DOUGHS, shop, variety.doughId, dough),
    ...(variety.toppingId === null ? [] : inUseAgain(TOPPINGS, shop, variety.toppingId, topping)),
    ...inUseAgain(VARIETIES, shop, variety.id, variety),
  ]
}

/** Varieties out of use; a picked dough or topping that nothing needs any more goes with its last variety. */
export function unpickVariety(shop: Shop, variety: Variety): SetUpChange[] {
  const { language } = shop.profile
  const others = inUse(shop.varieties).filter(({ id }) => id !== variety.id)
  const isPickable = <Entity extends Listed>(list: readonly Entity[], id: string) => list.some((one) => one.id === id)
  const dough = shop.doughs.get(variety.doughId)
  const isDoughFree =
    others.every(({ doughId }) => doughId !== variety.doughId) && isPickable(pickableDoughs(language), variety.doughId)
  const topping = variety.toppingId === null ? undefined : shop.toppings.get(variety.toppingId)
  const isToppingFree =
    topping !== undefined &&
    others.every(({ toppingId }) => toppingId !== topping.id) &&
    isPickable(pickableToppings(language), topping.id)
  return [
    VARIETIES.change({ ...variety, retired: true }),
    ...(dough !== undefined && isDoughFree ? [DOUGHS.change({ ...dough, retired: true })] : []),
    ...(isToppingFree ? [TOPPINGS.change({ ...topping, retired: true })] : []),
  ]
}

function inUseAgain<Entity extends Listed>(
  kind: ListKind<Entity>,
  shop: Shop,
  id: string,
  picked: Entity | undefined,
): SetUpChange[] {
  const known = kind.of(shop).get(id)
  if (known !== undefined) return known.retired ? [kind.change({ ...known, retired: false })] : []
  if (picked === undefined) return []
  const order = [...kind.of(shop).values()].reduce((most, one) => Math.max(most, one.order + 1), 0)
  return [kind.change({ ...picked, order, retired: false })]
}

/** The shop in another language: names and units that nobody has typed follow it, the shop's own words stay. */
export function inLanguage(draft: Shop, language: Language): SetUpChange[] {
  const from = withPicks(draft, draft.profile.language)
  return rebased(draft, from, withPicks(draft, language))
}

/** The starting point in a language, with all that can be picked, so that picked names are known as such. */
function withPicks({ profile, oven }: Shop, language: Language): Shop {
  const start = startingPoint(oven.kind, { ...profile, language })
  return {
    ...start,
    ingredients: new Map(pickableIngredients(language).map((one) => [one.id, one])),
    doughs: new Map(pickableDoughs(language).map((one) => [one.id, one])),
    toppings: new Map(pickableToppings(language).map((one) => [one.id, one])),
    kitchenStations: new Map(pickableKitchenStations(language).map((one) => [one.id, one])),
    varieties: new Map(pickableVarieties(language).map((one) => [one.id, one])),
  }
}
