import type { Shop } from './shop.ts'

/** The parts of a set-up as the rules see them; null for one that could not be read. */
export type SetUpParts = { readonly [Part in 'hours' | 'boards' | 'oven' | 'windows']: Shop[Part] | null } & {
  readonly [List in 'shelves' | 'doughs' | 'varieties' | 'stations']: readonly EntityOf<Shop[List]>[]
} & {
  /** Ids of doughs, also of those that could not be read: a variety of one is not at fault. */
  readonly doughIds: ReadonlySet<string>
  /** Lists that could not be read, or not all of them: nothing is said of what they lack. */
  readonly unread: ReadonlySet<ListName>
}

export type ListName = 'shelf' | 'dough' | 'variety' | 'station'
type EntityOf<List> = List extends ReadonlyMap<string, infer Entity> ? Entity : never

export function partsOf(shop: Shop): SetUpParts {
  return {
    ...shop,
    shelves: [...shop.shelves.values()],
    doughs: [...shop.doughs.values()],
    varieties: [...shop.varieties.values()],
    stations: [...shop.stations.values()],
    doughIds: new Set(shop.doughs.keys()),
    unread: new Set(),
  }
}
