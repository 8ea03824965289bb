import type { MixStage, MixTemp, Place, WantedLine } from '../dough/mix.ts'
import type { BatchId, BuildId, DoughId, FormulaId, IngredientId, MixId, PreparationId } from '../ids.ts'
import type { Degrees } from '../shop/formula.ts'
import type { Weight } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

/** The dough room's acts; `shape` and `testFloat` are the line's. */
export type DoughCommand =
  /** Replaces what was wanted for that day; no lines: nothing is. */
  | { readonly type: 'setWanted'; readonly date: string; readonly lines: readonly WantedLine[] }
  /** Replaces the mixes for that day of boiling that nobody has begun. */
  | { readonly type: 'planMixes'; readonly date: string; readonly mixes: readonly MixAsked[] }
  /** The order of all planned mixes, with when each should begin. */
  | {
      readonly type: 'orderMixes'
      readonly mixes: readonly { readonly mixId: MixId; readonly startAtMs: EpochMs | null }[]
    }
  | { readonly type: 'dropMix'; readonly mixId: MixId }
  /** A line of the mix sheet, weighed out or not after all. */
  | { readonly type: 'weighLine'; readonly mixId: MixId; readonly line: string; readonly done: boolean }
  /** One temperature of a mix. The dough's teaches friction. */
  | { readonly type: 'readMix'; readonly mixId: MixId; readonly temp: MixTemp; readonly read: Degrees }
  | {
      readonly type: 'moveMix'
      readonly mixId: MixId
      readonly from: MixStage
      readonly to: Exclude<MixStage, 'planned' | 'ended'>
    }
  /** The n-th fold, from 1. */
  | { readonly type: 'foldMix'; readonly mixId: MixId; readonly fold: number }
  /** Nothing more comes of it: what is left was lost in bowl and divider, or is spoilt. */
  | { readonly type: 'endMix'; readonly mixId: MixId; readonly left: 'lost' | 'spoilt' }
  /** Where its trays stand: rack and level, as the shop calls it. */
  | { readonly type: 'placeBatch'; readonly batchId: BatchId; readonly place: string | null }
  | { readonly type: 'readPlace'; readonly place: Place; readonly read: Degrees }
  | {
      readonly type: 'countIngredients'
      readonly counts: readonly { readonly ingredientId: IngredientId; readonly weight: Weight | null }[]
    }
  | { readonly type: 'receiveIngredient'; readonly ingredientId: IngredientId; readonly weight: Weight }
  /** A pre-ferment or soaker begun, or a culture fed (`forDate` null). */
  | {
      readonly type: 'makePreparation'
      readonly preparationId: PreparationId
      readonly milligrams: number
      readonly forDate: string | null
    }
  | { readonly type: 'dropBuild'; readonly buildId: BuildId }
  | {
      readonly type: 'weighPieces'
      readonly doughId: DoughId
      readonly mixId: MixId | null
      readonly weights: readonly Weight[]
    }

export interface MixAsked {
  readonly formulaId: FormulaId
  /** All flour of the formula, pre-ferments' included. */
  readonly flourMilligrams: number
  readonly startAtMs: EpochMs | null
  readonly gives: readonly { readonly doughId: DoughId; readonly pieces: number }[]
}
