import type { PlannedId } from '../ids.ts'
import { varietyId } from '../ids.ts'
import { broughtTo, CONTACT_PLACES } from '../line/contacts.ts'
import type { ContactPlace, PlanContact } from '../live/plan.ts'
import type { Allergen, Shop, Variety } from '../shop/shop.ts'
import { ALLERGENS } from '../shop/stages.ts'
import type { PlanAsked } from './plan-asked.ts'
import type { Named } from './told-plan.ts'

/**
 * What each load's varieties meet that they should not: by what has touched each place so far today, and by the loads
 * before it in the plan. Washes that nobody has done yet are not counted on.
 * @param named in the order of their kettle starts
 */
export function contactsAlong(
  { shop, line }: PlanAsked,
  named: readonly Named[],
): ReadonlyMap<PlannedId, readonly PlanContact[]> {
  const touched = new Map(CONTACT_PLACES.map((place) => [place, new Set<Allergen>()] as const))
  for (const { place, allergens } of line.contacts) for (const one of allergens) touched.get(place)?.add(one)
  const found = new Map<PlannedId, PlanContact[]>()
  for (const { id, load } of named) {
    const varieties = load.lines.flatMap(([name]) => shop.varieties.get(varietyId(name)) ?? [])
    const ofLoad: PlanContact[] = []
    for (const variety of varieties) {
      ofLoad.push(...metBy(shop, variety, touched))
      // Lines of one load share the water, dip by dip; boards, trays and peel are theirs alone.
      bring(shop, variety, 'kettle', touched)
    }
    for (const variety of varieties) for (const place of CONTACT_PLACES) bring(shop, variety, place, touched)
    if (ofLoad.length > 0) found.set(id, ofLoad)
  }
  return found
}

type Touched = ReadonlyMap<ContactPlace, Set<Allergen>>

/** What is in it already it cannot meet. */
function metBy(shop: Shop, variety: Variety, touched: Touched): PlanContact[] {
  const places = CONTACT_PLACES.flatMap((place) => {
    const brings = broughtTo(shop, variety, place)
    const there = touched.get(place)
    if (brings === null || there === undefined) return []
    return [{ place, met: variety.avoids.filter((one) => there.has(one)) }]
  }).filter(({ met }) => met.length > 0)
  if (places.length === 0) return []
  const met = new Set(places.flatMap((one) => one.met))
  const where = places.map(({ place }) => place)
  return [{ varietyId: variety.id, allergens: ALLERGENS.filter((one) => met.has(one)), where }]
}

function bring(shop: Shop, variety: Variety, place: ContactPlace, touched: Touched): void {
  for (const one of broughtTo(shop, variety, place) ?? []) touched.get(place)?.add(one)
}
