import { kitchenStationId } from '../ids.ts'
import type { KitchenStation } from './kitchen.ts'
import type { Language } from './shop.ts'

/** Where small shops make things to order, to begin with, in either language. Common practice, no source. */
export function pickableKitchenStations(language: Language): KitchenStation[] {
  return STATIONS.map(({ id, name }, order) => ({
    id: kitchenStationId(id),
    name: name[language],
    order,
    hands: 1,
    retired: false,
  }))
}

const STATIONS: readonly { readonly id: string; readonly name: Readonly<Record<Language, string>> }[] = [
  { id: 'sandwiches', name: { en: 'Sandwiches', es: 'Sándwiches' } },
  { id: 'oven', name: { en: 'Oven', es: 'Horno' } },
  { id: 'drinks', name: { en: 'Drinks', es: 'Bebidas' } },
]
