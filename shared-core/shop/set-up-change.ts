import type { DoughRoom, Formula, Ingredient, Preparation } from './formula.ts'
import type { KitchenStation, MenuItem, Portion, Run } from './kitchen.ts'
import type { BakingRules, CounterRules, DemandRules, OrderRules } from './rules.ts'
import type {
  Boards,
  Cooler,
  Dough,
  Hours,
  Kettle,
  Mixer,
  Oven,
  Person,
  Profile,
  Shelf,
  SpecialDay,
  Station,
  Step,
  Topping,
  Variety,
  Weekday,
  Windows,
} from './shop.ts'

/** One entity of the set-up, whole, as it is from now on. Lists never lose an entity: it is retired. */
export type SetUpChange =
  | { readonly entity: 'profile'; readonly value: Profile }
  | { readonly entity: 'hours'; readonly value: Hours }
  | { readonly entity: 'kettle'; readonly value: Kettle }
  | { readonly entity: 'boards'; readonly value: Boards }
  | { readonly entity: 'oven'; readonly value: Oven }
  | { readonly entity: 'mixer'; readonly value: Mixer | null }
  | { readonly entity: 'cooler'; readonly value: Cooler | null }
  | { readonly entity: 'doughRoom'; readonly value: DoughRoom | null }
  | { readonly entity: 'counter'; readonly value: CounterRules }
  | { readonly entity: 'demand'; readonly value: DemandRules }
  | { readonly entity: 'baking'; readonly value: BakingRules }
  | { readonly entity: 'orders'; readonly value: OrderRules }
  | { readonly entity: 'windows'; readonly value: Windows }
  | { readonly entity: 'shelf'; readonly value: Shelf }
  | { readonly entity: 'dough'; readonly value: Dough }
  | { readonly entity: 'topping'; readonly value: Topping }
  | { readonly entity: 'variety'; readonly value: Variety }
  | { readonly entity: 'station'; readonly value: Station }
  | { readonly entity: 'person'; readonly value: Person }
  | { readonly entity: 'step'; readonly value: Step }
  | { readonly entity: 'specialDay'; readonly value: SpecialDay }
  | { readonly entity: 'weekday'; readonly value: Weekday }
  | { readonly entity: 'ingredient'; readonly value: Ingredient }
  | { readonly entity: 'preparation'; readonly value: Preparation }
  | { readonly entity: 'formula'; readonly value: Formula }
  | { readonly entity: 'kitchenStation'; readonly value: KitchenStation }
  | { readonly entity: 'portion'; readonly value: Portion }
  | { readonly entity: 'menuItem'; readonly value: MenuItem }
  | { readonly entity: 'run'; readonly value: Run }
