import type {
  DoughId,
  FormulaId,
  IngredientId,
  KitchenStationId,
  MenuItemId,
  PersonId,
  PortionId,
  PreparationId,
  RunId,
  ShelfId,
  SpecialDayId,
  StationId,
  StepId,
  ToppingId,
  VarietyId,
  WeekdayId,
} from '../ids.ts'
import type { DurationMs, TimeUnit } from '../units.ts'
import type { DoughRoom, Formula, Ingredient, MadeOf, Preparation } from './formula.ts'
import type { KitchenStation, MenuItem, Portion, Run } from './kitchen.ts'
import type { BakingRules, CounterRules, DemandRules, OrderRules } from './rules.ts'

/**
 * What a shop is, as the line's rules use it: the running form of its set-up. The published file that people write is
 * `set-up-file.ts`. Entities have stable ids and are retired, never deleted: old events name them for ever.
 */
export interface Shop {
  readonly profile: Profile
  readonly hours: Hours
  readonly kettle: Kettle
  readonly boards: Boards
  readonly oven: Oven
  /** Null while nobody has said what the shop has. */
  readonly mixer: Mixer | null
  readonly cooler: Cooler | null
  readonly doughRoom: DoughRoom | null
  readonly counter: CounterRules
  readonly demand: DemandRules
  readonly baking: BakingRules
  readonly orders: OrderRules
  /** The shop's own windows, where neither variety nor dough says otherwise. */
  readonly windows: Windows
  readonly shelves: ReadonlyMap<ShelfId, Shelf>
  readonly doughs: ReadonlyMap<DoughId, Dough>
  readonly varieties: ReadonlyMap<VarietyId, Variety>
  readonly stations: ReadonlyMap<StationId, Station>
  readonly toppings: ReadonlyMap<ToppingId, Topping>
  readonly people: ReadonlyMap<PersonId, Person>
  readonly steps: ReadonlyMap<StepId, Step>
  readonly ingredients: ReadonlyMap<IngredientId, Ingredient>
  readonly preparations: ReadonlyMap<PreparationId, Preparation>
  readonly formulas: ReadonlyMap<FormulaId, Formula>
  /** Weekdays whose hours are not the usual ones. */
  readonly weekdays: ReadonlyMap<WeekdayId, Weekday>
  /** Days that sell otherwise than their weekday. */
  readonly specialDays: ReadonlyMap<SpecialDayId, SpecialDay>
  /** What is made to order, where, and of what (`kitchen.ts`). */
  readonly kitchenStations: ReadonlyMap<KitchenStationId, KitchenStation>
  readonly portions: ReadonlyMap<PortionId, Portion>
  readonly menu: ReadonlyMap<MenuItemId, MenuItem>
  /** The van's rounds. */
  readonly runs: ReadonlyMap<RunId, Run>
}

export type Language = 'en' | 'es'

export interface Profile {
  readonly name: string
  /** IANA zone, e.g. America/Chicago. */
  readonly zone: string
  readonly language: Language
  readonly temperature: 'C' | 'F'
  readonly weight: 'g' | 'lb-oz'
  /** Hours shown 1–12 or 0–23. */
  readonly clock: 12 | 24
}

/** Minutes after local midnight. */
export interface Hours {
  readonly ovenReadyMinute: number
  readonly openMinute: number
  readonly changeoverFromMinute: number | null
  readonly changeoverToMinute: number | null
  readonly closeMinute: number
  readonly secondMenu: string | null
}

/** One weekday's own hours. The id is its ISO number, "1" (Monday) to "7". */
export interface Weekday {
  readonly id: WeekdayId
  /** Null: the shop is closed that day. */
  readonly hours: Hours | null
  /** The usual hours again. */
  readonly retired: boolean
}

export interface Kettle {
  /** Pieces of one dip, a kettle-full. */
  readonly pieces: number
  /** From one dip to the next: boil, lift and recovery. */
  readonly cycleMs: DurationMs
  /** How long the water takes to boil again after cold water went in. */
  readonly recoverMs: DurationMs
  /** Pieces boiled from one care to the next; null: not reminded of. */
  readonly care: { readonly [care in KettleCare]: number | null }
}

/** What keeps the kettle's water good. `change`: all of it, with a wash of the kettle. */
export type KettleCare = 'topUp' | 'malt' | 'skim' | 'change'

export interface Boards {
  readonly count: number
  readonly pieces: number
  readonly rewetMs: DurationMs
}

/**
 * `shelves`: loaded one by one, a load each. `rotating`: the same, but they come to the door in turn, in the order of
 * the list. `hearth`: one floor without shelves, sized in boards, several loads on it at once, drawn in several outs.
 */
export type OvenKind = 'shelves' | 'rotating' | 'hearth'

export interface Oven {
  readonly kind: OvenKind
  readonly handlingMs: DurationMs
  /** What bagels bake at, and what the second menu does; null: nobody has said. */
  readonly bakeAt: Temperature | null
  readonly secondAt: Temperature | null
}

/** As entered; what is derived from it is in thousandths of a °C (`temperature.ts`). */
export interface Temperature {
  readonly degrees: number
  readonly unit: 'C' | 'F'
}

/** As entered, in thousandths of the unit: 0.5 lb is 500. */
export interface Weight {
  readonly thousandths: number
  readonly unit: 'g' | 'kg' | 'oz' | 'lb'
}

/** What one mix can be, by its flour. */
export interface Mixer {
  /** What friction is learnt for: another mixer is another name. */
  readonly name: string
  readonly washMs: DurationMs
  readonly leastFlour: Weight
  readonly mostFlour: Weight
}

export interface Cooler {
  /** Trays that it holds. */
  readonly trays: number
  readonly keepsAt: Temperature | null
}

export type SpecialKind = 'holiday' | 'school' | 'event' | 'closure' | 'weather'

/**
 * Days of one name that sell alike: a holiday, school breaks, a street fair, snow. What they do to sales is learnt by the
 * id, over the years. On a `closure` the shop does not open.
 */
export interface SpecialDay {
  readonly id: SpecialDayId
  readonly name: string
  readonly order: number
  readonly kind: SpecialKind
  /** First and last date, YYYY-MM-DD, past and to come, in order, without overlap. */
  readonly spans: readonly { readonly from: string; readonly to: string }[]
  readonly retired: boolean
}

/** The major food allergens of the US Food Allergen Labeling acts of 2004 and 2021. */
export type Allergen = 'milk' | 'egg' | 'fish' | 'shellfish' | 'treeNuts' | 'peanuts' | 'wheat' | 'soy' | 'sesame'

export interface Shelf {
  readonly id: ShelfId
  readonly name: string
  readonly order: number
  readonly pieces: number
  /** Empty of bagels by then, where it changes over before the oven does; null: with the oven. */
  readonly emptyByMinute: number | null
  /** A hearth's floor in boards; null for a shelf that is counted in pieces. */
  readonly floorBoards: number | null
  /** Places of the second menu on it, each for one flatbread; 0: the second menu does not use it. */
  readonly slots: number
  readonly retired: boolean
}

/** Where pieces can stand before the oven. */
export type BatchStage = 'proof' | 'chill' | 'rack' | 'kettle' | 'boards' | 'oven'
/** The part of the route that a dough takes, in order; `oven` is on every route. */
export type Route = readonly BatchStage[]

export type WindowStage = 'proof' | 'chill' | 'rack' | 'kettle' | 'boards' | 'firstSide' | 'bake' | 'cool'

/** How long a stage should take. The unit entered is kept beside the milliseconds derived. */
export interface DwellWindow {
  readonly earliestMs: DurationMs
  readonly targetMs: DurationMs
  readonly latestMs: DurationMs
  readonly unit: TimeUnit
}
export type Windows = { readonly [stage in WindowStage]?: DwellWindow }

export interface Dough {
  readonly id: DoughId
  readonly name: string
  readonly order: number
  readonly route: Route
  readonly trayPieces: number
  /** What is entered beside the ingredients (`dough/allergens.ts`); the product warns by it, never says "free from". */
  readonly contains: readonly Allergen[]
  /** What it is mixed by; null: nobody has said. Doughs of one formula are one mix, shaped in several weights. */
  readonly formulaId: FormulaId | null
  /** Of one piece as it is shaped; null: nobody has said. */
  readonly pieceWeight: Weight | null
  readonly shapedBy: 'divider' | 'hand'
  /** What is on the label of a baked piece, where the shop sells by weight; else null. */
  readonly labelWeight: Weight | null
  readonly windows: Windows
  readonly retired: boolean
}

/** What goes on the outside: seeds, salt, a mix. */
export interface Topping {
  readonly id: ToppingId
  readonly name: string
  readonly order: number
  readonly contains: readonly Allergen[]
  /** What goes onto one piece. */
  readonly madeOf: readonly MadeOf[]
  readonly retired: boolean
}

/** Somebody who works here, as they are called in the shop. */
export interface Person {
  readonly id: PersonId
  readonly name: string
  readonly order: number
  readonly retired: boolean
}

/**
 * A line of a back-timed list. `opening` counts from the first load in, `changeover` from the oven being empty.
 * `float-test`: one line for each dough that proofs.
 */
export interface Step {
  readonly id: StepId
  readonly name: string
  readonly order: number
  readonly list: 'opening' | 'changeover'
  /** When it should be done, from the list's zero; before it is negative. */
  readonly offsetMs: number
  readonly kind: 'plain' | 'float-test'
  readonly retired: boolean
}

export interface Variety {
  readonly id: VarietyId
  readonly name: string
  readonly order: number
  readonly doughId: DoughId
  readonly size: 'mini' | 'regular' | 'large' | 'stick'
  /** Made at the mixer (raisins in the dough) or on the line (seeds on the boards). */
  readonly decidedAt: 'mixer' | 'line'
  /** When the topping goes on. */
  readonly topping: 'none' | 'before-flip' | 'after-flip'
  /** Which one; null where the set-up does not say. */
  readonly toppingId: ToppingId | null
  readonly bakedOn: 'board' | 'pan'
  readonly flip: boolean
  readonly windows: Windows
  readonly priceCents: number
  readonly costCents: number
  /** What a piece brings when the kitchen uses it (in a sandwich), less what else goes into that; null: it is not used so. */
  readonly kitchenCents: number | null
  /** Pieces wanted on show at the opening and until `BakingRules.showUntilMinute`; 0: no such wish. */
  readonly showLeast: number
  /** Allergens that it should not meet in water, on boards, trays, peel or stone: it is planned before them where it can be. */
  readonly avoids: readonly Allergen[]
  /** Pieces on a usual day, as somebody guesses before there are sales; null: nobody has said. */
  readonly usual: number | null
  readonly retired: boolean
}

/** Acts of the line that a station may tap; what no station taps is presumed from the next act that one does. */
export type LineAct = 'pull' | 'dip' | 'lift' | 'board' | 'load' | 'flip' | 'out'

export interface Station {
  readonly id: StationId
  readonly name: string
  readonly order: number
  readonly acts: readonly LineAct[]
  readonly retired: boolean
}
