import type { Boards, Dough, Hours, Kettle, Oven, Profile, Shelf, Station, Variety, Windows } from './shop.ts'

/** One entity of the set-up, whole, as it is from now on. Lists never lose an entity: it is retired. */
export type SetUpChange =
  | { readonly entity: 'profile'; readonly value: Profile }
  | { readonly entity: 'hours'; readonly value: Hours }
  | { readonly entity: 'kettle'; readonly value: Kettle }
  | { readonly entity: 'boards'; readonly value: Boards }
  | { readonly entity: 'oven'; readonly value: Oven }
  | { readonly entity: 'windows'; readonly value: Windows }
  | { readonly entity: 'shelf'; readonly value: Shelf }
  | { readonly entity: 'dough'; readonly value: Dough }
  | { readonly entity: 'variety'; readonly value: Variety }
  | { readonly entity: 'station'; readonly value: Station }
