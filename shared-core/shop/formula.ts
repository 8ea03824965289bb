import type { FormulaId, IngredientId, PreparationId } from '../ids.ts'
import type { DurationMs } from '../units.ts'
import type { Allergen, DwellWindow, Weight } from './shop.ts'

/**
 * What doughs are made of. Percentages are baker's: of all flour of the formula, pre-ferments included; they are held in
 * thousandths of a percent (57 % is 57_000). Entities have stable ids and are retired, never deleted.
 */

/** As read or wished, in thousandths of the unit: 76.5 °F is 76_500. What is derived is in thousandths of a °C. */
export interface Degrees {
  readonly thousandths: number
  readonly unit: 'C' | 'F'
}

export type IngredientKind = 'flour' | 'water' | 'salt' | 'yeast' | 'malt' | 'sweetener' | 'fat' | 'mixIn' | 'other'

export interface Ingredient {
  readonly id: IngredientId
  readonly name: string
  readonly order: number
  readonly kind: IngredientKind
  /** As its label says. */
  readonly contains: readonly Allergen[]
  /** What so much of it costs; null: nobody has said. */
  readonly price: { readonly cents: number; readonly per: Weight } | null
  /** How it is bought: a bag, a case; null: loose. */
  readonly bag: Weight | null
  readonly retired: boolean
}

/** So much of an ingredient on or in one piece. */
export interface MadeOf {
  readonly ingredientId: IngredientId
  readonly weight: Weight
}

export interface Share {
  readonly ingredientId: IngredientId
  /** Thousandths of a percent of the base. */
  readonly percent: number
}

/**
 * Made ahead of the mix and counted in its formula. The base of `lines` (100 %) is a pre-ferment's flour, and of a
 * soaker all of it but its water.
 */
export interface Preparation {
  readonly id: PreparationId
  readonly name: string
  readonly order: number
  readonly kind: 'preferment' | 'soaker'
  readonly lines: readonly Share[]
  /**
   * Ripe pre-ferment that it is built from, in percent of its flour; 0 for one that is begun with yeast. As much is kept
   * back when it is ripe, so that seed in and seed out cancel in the formula.
   */
  readonly seedPercent: number
  /** A culture that is fed every day, closed days too, with so much flour when no dough asks for it; else null. */
  readonly fedWith: Weight | null
  /** From its beginning until it may, should and must be used. */
  readonly ready: DwellWindow
  readonly retired: boolean
}

export interface FormulaLine extends Share {
  /** `mixIn`: not before the mix-in minute. */
  readonly at: 'start' | 'mixIn'
}

/** The overall formula: `lines` include what the preparations hold, which the mix sheet takes off again. */
export interface Formula {
  readonly id: FormulaId
  readonly name: string
  readonly order: number
  /** Flours sum to 100 %. */
  readonly lines: readonly FormulaLine[]
  /** `percent`: the base of the preparation in percent of all flour. */
  readonly preparations: readonly { readonly preparationId: PreparationId; readonly percent: number }[]
  /** Dough left in bowl and divider, in thousandths of a percent of the dough. */
  readonly lossPercent: number
  /** What a piece loses in kettle and oven, in thousandths of a percent of its dough. */
  readonly bakeLossPercent: number
  /** The temperature wished for the mixed dough. */
  readonly doughAt: Degrees
  /** The friction factor to begin with, a difference: 24 °F is 13.3 °C. */
  readonly friction: Degrees
  readonly mixMs: DurationMs
  /** From the beginning of mixing to the mix-ins; null: there are none. */
  readonly mixInMs: DurationMs | null
  readonly restMs: DurationMs
  /** Bulk ferment before shaping; null: shaped after the rest. `foldsMs` count from its beginning. */
  readonly bulk: {
    readonly window: DwellWindow
    readonly foldsMs: readonly DurationMs[]
    /** Chilled in bulk before shaping. */
    readonly chill: DwellWindow | null
  } | null
  /** How strong its flavour is, 0 to 9: garlic and onion are mixed last. */
  readonly strength: number
  /** Days from mixing to boiling, 1 to 3; a pre-ferment's beginning is earlier by its own time. */
  readonly daysAhead: number
  /** By when it must be decided on its day, in minutes after local midnight. */
  readonly decideByMinute: number
  readonly retired: boolean
}

/** How the dough room works. Temperatures here are what is assumed where nobody has read any. */
export interface DoughRoom {
  /** When work can begin there, and by when the last tray should be in the cooler: minutes after local midnight. */
  readonly fromMinute: number
  readonly coolerByMinute: number
  /** What the scale shows at the finest. */
  readonly scaleStep: Weight
  /** Flour of a day in whole or half bags, what is over going to `surplusTo`; `none`: to the scale's step. */
  readonly flourIn: 'none' | 'halfBags' | 'bags'
  readonly surplusTo: FormulaId | null
  /** Null: shaped by hand only. */
  readonly dividerPiecesPerHour: number | null
  /** By one roller. */
  readonly handPiecesPerHour: number
  readonly rollers: number
  /** Trays that may proof at once; null: no limit. */
  readonly proofTrays: number | null
  readonly roomAt: Degrees
  readonly flourAt: Degrees
  readonly tapAt: Degrees
  readonly hotTapAt: Degrees
  readonly hasIce: boolean
  /** The room at which the doughs' proof windows hold. */
  readonly provesAt: Degrees
  /** Time constant of a tray of pieces cooling in the cooler. */
  readonly coolsIn: DurationMs
}
