import type {
  Build,
  DividerChecks,
  Friction,
  Mix,
  MixStage,
  MixTemps,
  OnHand,
  Place,
  Teaching,
  Wanted,
  WaterPlan,
} from '../dough/mix.ts'
import type { BatchId, BuildId, MixId } from '../ids.ts'
import type { Degrees } from '../shop/formula.ts'
import type { EpochMs } from '../units.ts'
import type { OverLimit } from './answers.ts'
import type { Until } from './state.ts'

/** Facts of the dough room. They carry results, the reckoned ones rounded to integers by the server. */
export type DoughFact =
  | { readonly type: 'wantedSet'; readonly wanted: Wanted }
  /** Those of the same day that nobody had begun go; these come. */
  | { readonly type: 'mixesPlanned'; readonly date: string; readonly mixes: readonly Mix[] }
  | {
      readonly type: 'mixesOrdered'
      readonly mixes: readonly { readonly mixId: MixId; readonly order: number; readonly startAtMs: EpochMs | null }[]
    }
  | { readonly type: 'mixDropped'; readonly mixId: MixId }
  | { readonly type: 'lineWeighed'; readonly mixId: MixId; readonly line: string; readonly weighedAtMs: EpochMs | null }
  /** `friction`: what it teaches; null: nothing. */
  | {
      readonly type: 'mixRead'
      readonly mixId: MixId
      readonly temps: MixTemps
      readonly water: WaterPlan | null
      readonly friction: Friction | null
    }
  /** `begun`: mixing began with it; null: it had begun before. */
  | {
      readonly type: 'mixMoved'
      readonly mixId: MixId
      readonly stage: MixStage
      readonly until: Until | null
      readonly begun: { readonly mixer: string; readonly builds: Mix['builds'] } | null
      readonly over: readonly OverLimit[]
    }
  | { readonly type: 'mixFolded'; readonly mixId: MixId; readonly folds: number }
  | {
      readonly type: 'mixEnded'
      readonly mixId: MixId
      readonly lostMilligrams: number
      readonly spoiltMilligrams: number
    }
  | { readonly type: 'batchPlaced'; readonly batchId: BatchId; readonly place: string | null }
  /** By itself: a sensor posts one each minute, and all that are kept of a place would fill the journal. */
  | { readonly type: 'placeRead'; readonly place: Place; readonly read: Degrees }
  | { readonly type: 'paceTaught'; readonly teaching: Teaching }
  | { readonly type: 'onHandSet'; readonly onHand: readonly OnHand[] }
  | { readonly type: 'preparationMade'; readonly build: Build }
  | { readonly type: 'buildDropped'; readonly buildId: BuildId }
  | { readonly type: 'piecesWeighed'; readonly checks: DividerChecks }
