import type { Until } from '../day/state.ts'
import type { BuildId, DoughId, FormulaId, IngredientId, MixId, PreparationId, VarietyId } from '../ids.ts'
import type { Degrees, Formula } from '../shop/formula.ts'
import type { EpochMs } from '../units.ts'

/** What the running shop holds of its dough room. Integers only: milligrams, thousandths of a °C, milliseconds. */

/** Pieces wanted for one day of boiling, as somebody typed them. */
export interface Wanted {
  /** YYYY-MM-DD, the day on which they are boiled; also its key. */
  readonly date: string
  readonly lines: readonly WantedLine[]
}

export interface WantedLine {
  readonly doughId: DoughId
  /** Null: of the dough, whatever it becomes. */
  readonly varietyId: VarietyId | null
  /** For the counter. */
  readonly pieces: number
  /** For orders, besides. */
  readonly ordered: number
  /** What the board advised when this was typed, to be compared later; left out: it had no advice. */
  readonly advised?: number
}

/**
 * `bulk` and `bulkChill` where the formula says so; `bench`: it is divided and shaped. An ended mix stays until the day's
 * close, for its account.
 */
export type MixStage = 'planned' | 'mixing' | 'rest' | 'bulk' | 'bulkChill' | 'bench' | 'ended'

/**
 * One mixer-full. doughMilligrams = shaped + lost + spoilt + unexplained + left (of one that was begun), and what is left
 * is never negative: when more was shaped than was there, `unexplained` is negative.
 */
export interface Mix {
  readonly id: MixId
  /** As it was when the mix was planned, whatever changes later. */
  readonly formula: Formula
  /** The day on which its pieces are boiled, YYYY-MM-DD. */
  readonly bakeDate: string
  /** In the order of mixing among all that are planned. */
  readonly order: number
  /** When mixing should begin; null: nobody has said. */
  readonly startAtMs: EpochMs | null
  readonly stage: MixStage
  readonly sinceMs: EpochMs
  /** When the stage may, should and must end; null where there is no window. */
  readonly until: Until | null
  /** When mixing began; null before. */
  readonly mixedAtMs: EpochMs | null
  /** The mixer's name then. */
  readonly mixer: string
  /** The final dough, weights rounded to the scale's step. */
  readonly lines: readonly SheetLine[]
  /** What it should give. */
  readonly gives: readonly MixPieces[]
  readonly temps: MixTemps
  /** Null until the temperatures that it needs are known or assumed. */
  readonly water: WaterPlan | null
  readonly folds: number
  /** Ripe pre-ferments and soakers that went into it. */
  readonly builds: readonly { readonly buildId: BuildId; readonly milligrams: number }[]
  readonly shapedMilligrams: number
  /** In bowl and divider. */
  readonly lostMilligrams: number
  readonly spoiltMilligrams: number
  readonly unexplainedMilligrams: number
}

export interface MixPieces {
  readonly doughId: DoughId
  readonly pieces: number
  /** Of one piece as shaped; 0 where the set-up does not say. */
  readonly pieceMilligrams: number
}

/** One line of the mix sheet: an ingredient, or a preparation made before. */
export interface SheetLine {
  /** The id of the ingredient or preparation; an ingredient that is added at both times ends in `+` at the later. */
  readonly key: string
  readonly ingredientId: IngredientId | null
  readonly preparationId: PreparationId | null
  readonly at: 'start' | 'mixIn'
  readonly milligrams: number
  readonly weighedAtMs: EpochMs | null
}

/** As read with the mix before one; null: assumed from the room's readings or the set-up. */
export interface MixTemps {
  readonly room: Degrees | null
  readonly flour: Degrees | null
  readonly preferment: Degrees | null
  readonly tap: Degrees | null
  /** Of the water that went in. */
  readonly water: Degrees | null
  /** Of the mixed dough. */
  readonly dough: Degrees | null
}
export type MixTemp = keyof MixTemps

export interface WaterPlan {
  readonly milliCelsius: number
  readonly iceMilligrams: number
  /** From the tap or warmed, besides the ice. */
  readonly waterMilligrams: number
  /** `tooCold`: not even all ice would do; `tooWarm`: hotter water than yeast or tap bear would be needed. */
  readonly reach: 'reached' | 'needsWarm' | 'tooCold' | 'tooWarm'
  /** What the dough comes to when no water can reach what is wished; else what is wished. */
  readonly doughMilliCelsius: number
}

/** A pre-ferment or soaker that was made. */
export interface Build {
  readonly id: BuildId
  readonly preparationId: PreparationId
  readonly madeAtMs: EpochMs
  readonly milligrams: number
  /** The day of boiling that it is for; null: the culture is fed. */
  readonly forDate: string | null
  readonly ready: Until
  /** What went into it, for what is on hand. */
  readonly lines: readonly { readonly ingredientId: IngredientId; readonly milligrams: number }[]
  readonly dropped: boolean
}

export type Place = 'room' | 'cooler' | 'flour' | 'tap'

/** Readings of a place, oldest first, `POINT_MS_MIN` apart at least but for the newest; at most `POINTS_MAX`. */
export interface PlaceReadings {
  readonly place: Place
  readonly points: readonly { readonly atMs: EpochMs; readonly milliCelsius: number }[]
  /** The newest as it was read. */
  readonly read: Degrees
}

/** What a mixer warms doughs of a formula by. Its key: `frictionKey`. */
export interface Friction {
  readonly id: string
  readonly formulaId: FormulaId
  readonly mixer: string
  /** Three temperatures made it up, or four with a pre-ferment: each needs readings of its own. */
  readonly factors: 3 | 4
  /** The last ones, oldest first: differences in thousandths of a °C. */
  readonly readings: readonly { readonly atMs: EpochMs; readonly mixId: MixId; readonly milliCelsius: number }[]
  /** What is reckoned with. */
  readonly milliCelsius: number
}

/** What float and poke tests have taught about a dough's pace. */
export interface Teaching {
  readonly doughId: DoughId
  /** The last ones, oldest first; `share`: fermented by then, in thousandths of what the set-up's window asks for. */
  readonly tests: readonly { readonly atMs: EpochMs; readonly share: number; readonly passed: boolean }[]
  /** Thousandths of the window that this dough needs: 900 is ready sooner. */
  readonly pace: number
}

/**
 * What is on hand as of the last count or close, before what mixes and builds that still stand in the state took: a view
 * takes these off (`dough/on-hand.ts`), so that each can be taken back by itself.
 */
export interface OnHand {
  readonly ingredientId: IngredientId
  readonly milligrams: number
  readonly countedAtMs: EpochMs | null
}

/** Pieces weighed at the divider, the last samples, oldest first. */
export interface DividerChecks {
  readonly doughId: DoughId
  readonly samples: readonly WeighedSample[]
}

export interface WeighedSample {
  readonly atMs: EpochMs
  readonly mixId: MixId | null
  /** What a piece should weigh. */
  readonly scaledMilligrams: number
  readonly milligrams: readonly number[]
}
