import type { State } from '../../../shared-core/day/state.ts'
import type { Misfit } from '../../../shared-core/shop/misfit.ts'
import type { SetUpChange } from '../../../shared-core/shop/set-up-change.ts'
import type { Shop } from '../../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { LiveState, ShopStore } from '../../live/shop-store.ts'
import type { DeskWords } from '../../words/desk.ts'
import type { SetUpPart, SetUpSentences } from '../../words/set-up.ts'

/** What every page of the set-up is made with. */
export interface SetUpProps {
  readonly store: ShopStore
  readonly live: LiveState
  readonly state: State
  /** The shop as it runs. */
  readonly running: Shop
  /** The shop as it will be once the draft is saved. Forms show this one. */
  readonly draft: Shop
  /** What a save would send. */
  readonly changes: readonly SetUpChange[]
  /** What does not fit in the draft. */
  readonly misfits: readonly Misfit[]
  readonly words: DeskWords
  readonly say: SetUpSentences
  readonly change: (changes: readonly SetUpChange[]) => void
  /** Throws the draft away. */
  readonly clear: () => void
  readonly saving: Saving
}

export interface Saving {
  readonly status: 'idle' | 'waiting' | 'saved' | 'planned'
  /** @param fromMs null: from now */
  readonly save: (fromMs: EpochMs | null) => void
}

/** One thing changed whole. */
export function changeTo<E extends SetUpChange['entity']>(
  { change }: Pick<SetUpProps, 'change'>,
  entity: E,
): (value: Extract<SetUpChange, { entity: E }>['value']) => void {
  // An entity with its own value is a change; the compiler cannot see that through the name that stands for any of them.
  return (value) => change([{ entity, value } as Extract<SetUpChange, { entity: E }>])
}

export const GROUPS = {
  shop: ['shop', 'hours', 'people', 'counter'],
  equipment: ['oven', 'kettle', 'boards', 'room'],
  made: ['varieties', 'doughs', 'toppings', 'windows'],
  mixed: ['formulas', 'preparations', 'ingredients', 'doughRoom'],
  howMany: ['worth', 'usual', 'specialDays'],
  ordered: ['orders', 'runs', 'kitchen', 'menu'],
  work: ['baking', 'stations', 'steps', 'screens'],
  changes: ['versions', 'file'],
} as const satisfies { readonly [group in keyof SetUpSentences['groups']]: readonly SetUpPart[] }

const PART_OF: { readonly [entity in SetUpChange['entity']]: SetUpPart } = {
  profile: 'shop',
  hours: 'hours',
  weekday: 'hours',
  person: 'people',
  counter: 'counter',
  demand: 'worth',
  specialDay: 'specialDays',
  baking: 'baking',
  oven: 'oven',
  shelf: 'oven',
  kettle: 'kettle',
  boards: 'boards',
  mixer: 'room',
  cooler: 'room',
  doughRoom: 'doughRoom',
  ingredient: 'ingredients',
  preparation: 'preparations',
  formula: 'formulas',
  dough: 'doughs',
  topping: 'toppings',
  variety: 'varieties',
  orders: 'orders',
  run: 'runs',
  kitchenStation: 'kitchen',
  portion: 'kitchen',
  menuItem: 'menu',
  windows: 'windows',
  station: 'stations',
  step: 'steps',
}

/** Where an entity is set up. */
export function partOf(entity: SetUpChange['entity']): SetUpPart {
  return PART_OF[entity]
}
