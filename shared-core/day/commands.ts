import type { BatchId, CommandId, DoughId, KeepId, LoadId, PlannedId, ShelfId, UnsureId, VarietyId } from '../ids.ts'
import type { SetUpChange } from '../shop/set-up-change.ts'
import type { BatchStage } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { AskCode } from './answers.ts'
import type { Line, LoadPhase } from './state.ts'

/** What people ask for. Each names what its screen was showing, so that two taps of the same act are one. */
export type Command = CommandHead & Act

export interface CommandHead {
  readonly id: CommandId
  /** Counts a device's commands up from 1: the order in which they were tapped. */
  readonly deviceSeq: number
  /** The tap in server time as the device knows it; null when it has never heard the server's clock. */
  readonly tappedAtMs: EpochMs | null
  readonly confirmed?: readonly AskCode[]
  /**
   * The last entry that the screen had folded when it was tapped: what it was showing. The same act done by another
   * device since then is not done twice. Scripts leave it out.
   */
  readonly seenSeq?: number
}

export type Act = LineCommand | StockCommand | DayCommand
export type ActType = Act['type']

export type LineCommand =
  /** Pieces shaped now, put to proof or straight into the cooler. */
  | {
      readonly type: 'shape'
      readonly doughId: DoughId
      readonly varietyId: VarietyId | null
      readonly pieces: number
      readonly stage: 'proof' | 'chill' | 'rack'
    }
  /** Pieces that were there before the board was: trays found in the cooler on the first morning. */
  | {
      readonly type: 'carryIn'
      readonly doughId: DoughId
      readonly varietyId: VarietyId | null
      readonly pieces: number
      readonly stage: 'proof' | 'chill' | 'rack'
      readonly sinceMs: EpochMs | null
    }
  | { readonly type: 'pull'; readonly doughId: DoughId; readonly varietyId: VarietyId | null; readonly pieces: number }
  | { readonly type: 'dip'; readonly doughId: DoughId; readonly varietyId: VarietyId | null; readonly pieces: number }
  | { readonly type: 'lift'; readonly batchId: BatchId }
  | { readonly type: 'board'; readonly lines: readonly Line[] }
  /** One stage to another by hand: on, back, or past one; part of a batch splits it. */
  | {
      readonly type: 'moveBatch'
      readonly batchId: BatchId
      readonly from: BatchStage
      readonly to: Exclude<BatchStage, 'oven'>
      readonly pieces: number
    }
  | {
      readonly type: 'load'
      readonly shelfId: ShelfId
      readonly plannedId: PlannedId | null
      readonly lines: readonly Line[]
    }
  | { readonly type: 'changeLoad'; readonly loadId: LoadId; readonly lines: readonly Line[] }
  | { readonly type: 'flip'; readonly loadId: LoadId }
  /** `lines` null: all of it. */
  | { readonly type: 'out'; readonly loadId: LoadId; readonly from: LoadPhase; readonly lines: readonly Line[] | null }
  /** A load back to its first side, on to its second without a flip, to another shelf, or back to the boards. */
  | {
      readonly type: 'moveLoad'
      readonly loadId: LoadId
      readonly from: LoadPhase
      readonly to: LoadPhase | 'boards'
      readonly shelfId: ShelfId
    }
  /** Dropped or spoiled before sale, at any stage, in the oven too. */
  | { readonly type: 'wasteBatch'; readonly batchId: BatchId; readonly from: BatchStage; readonly pieces: number }
  | { readonly type: 'confirmPresumed'; readonly unsureIds: readonly UnsureId[] }

export type StockCommand =
  | { readonly type: 'sell'; readonly lines: readonly Line[] }
  | {
      readonly type: 'remove'
      readonly varietyId: VarietyId
      readonly pieces: number
      readonly fate: 'kitchen' | 'wasted' | 'given'
    }
  | { readonly type: 'count'; readonly varietyId: VarietyId; readonly pieces: number }
  | { readonly type: 'keep'; readonly lines: readonly Line[] }
  | { readonly type: 'release'; readonly keepId: KeepId }
  | { readonly type: 'handOver'; readonly keepId: KeepId }

export type DayCommand =
  | { readonly type: 'openDay' }
  /** `label`: the day that the screen was showing; a late tap must not close the next one. */
  | { readonly type: 'closeDay'; readonly label?: string }
  /** Replaces the loads that are still to come. */
  | {
      readonly type: 'setLoadList'
      readonly loads: readonly {
        readonly shelfId: ShelfId | null
        readonly inAtMs: EpochMs | null
        readonly lines: readonly Line[]
      }[]
    }
  | { readonly type: 'skipPlanned'; readonly plannedId: PlannedId }
  | { readonly type: 'changeSetUp'; readonly changes: readonly SetUpChange[] }
  | { readonly type: 'takeBack'; readonly commandId: CommandId }
