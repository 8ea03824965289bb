import type { KitchenStationId, MenuItemId, PortionId, RunId } from '../ids.ts'
import type { DurationMs } from '../units.ts'
import type { Allergen, Temperature } from './shop.ts'

/** What is made to order and out of what. Entities have stable ids and are retired, never deleted. */

/** Where a part of an item is made: sandwiches, the oven, drinks. */
export interface KitchenStation {
  readonly id: KitchenStationId
  readonly name: string
  readonly order: number
  /** How many can be made there at once by hand. */
  readonly hands: number
  readonly retired: boolean
}

/** Something prepared ahead and counted down: a ball of dough, a portion of a filling, a tub. */
export interface Portion {
  readonly id: PortionId
  readonly name: string
  readonly order: number
  readonly contains: readonly Allergen[]
  /** It is taken out of the cooler so long before the changeover; null: it needs no pull. */
  readonly pullMs: DurationMs | null
  /** Portions of a tray, by which it is pulled. */
  readonly trayPortions: number
  readonly retired: boolean
}

/** What the oven does to an item: so many places of a shelf for so long. */
export interface OvenStep {
  readonly slots: number
  /** What it bakes at; null: as the second menu does (`Oven.secondAt`). */
  readonly at: Temperature | null
  /** What is to be done meanwhile, by its time since it went in. */
  readonly turns: readonly { readonly afterMs: DurationMs; readonly what: 'turn' | 'move' }[]
}

/** One part of making an item; the parts follow each other. */
export interface MenuStep {
  readonly stationId: KitchenStationId
  /** How long it takes: by hand, or in the oven. */
  readonly takesMs: DurationMs
  /** Null: made by hand. */
  readonly oven: OvenStep | null
}

/** Something on the menu. Without steps it is handed over as it is: a tub, a bottle. */
export interface MenuItem {
  readonly id: MenuItemId
  readonly name: string
  readonly order: number
  readonly priceCents: number
  /** Made with a bagel, which it uses up. */
  readonly onBagel: boolean
  readonly canToast: boolean
  readonly portions: readonly { readonly portionId: PortionId; readonly portions: number }[]
  /** At most three. */
  readonly steps: readonly MenuStep[]
  readonly retired: boolean
}

/** The van's round: it leaves at a minute and goes from stop to stop. */
export interface Run {
  readonly id: RunId
  readonly name: string
  readonly order: number
  readonly leavesMinute: number
  /** To the first stop, and from each to the next. */
  readonly stopMs: DurationMs
  /** From the last box packed to leaving. */
  readonly loadMs: DurationMs
  readonly retired: boolean
}
