import type { State } from '../day/state.ts'
import { CONTACT_PLACES, contacts } from '../line/contacts.ts'
import type { ContactPlace } from '../live/plan.ts'
import type { Allergen } from '../shop/shop.ts'
import { ALLERGENS } from '../shop/stages.ts'

/** What is known to have touched each place since it was washed last. */
export function contactsNow(
  state: State,
): readonly { readonly place: ContactPlace; readonly allergens: readonly Allergen[] }[] {
  const now = contacts(state)
  return CONTACT_PLACES.map((place) => {
    const known = new Set(now[place].flatMap(({ contains }) => contains))
    return { place, allergens: ALLERGENS.filter((allergen) => known.has(allergen)) }
  })
}
