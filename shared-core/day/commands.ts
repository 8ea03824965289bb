import type {
  BatchId,
  CommandId,
  DoughId,
  KeepId,
  LoadId,
  MixId,
  NoteId,
  OrderId,
  PersonId,
  PlannedId,
  SetUpId,
  ShelfId,
  StepId,
  UnsureId,
  VarietyId,
} from '../ids.ts'
import type { OrderCommand } from '../orders/order-commands.ts'
import type { SetUpChange } from '../shop/set-up-change.ts'
import type { BatchStage } from '../shop/shop.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import type { AskCode } from './answers.ts'
import type { DoughCommand } from './dough-commands.ts'
import type { CareKind } from './said.ts'
import type { Counted, Forbid, Line, LoadPhase, SaleSource } from './state.ts'

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
  /** The course of the journal in which `seenSeq` counts; left out: the first one. */
  readonly seenCourse?: string
}

export type Act = LineCommand | CareCommand | StockCommand | DayCommand | ListCommand | DoughCommand | OrderCommand
export type ActType = Act['type']

export type LineCommand =
  /**
   * Pieces shaped now, put to proof or straight into the cooler. `mixId`: of that mix, which thereby is on the bench;
   * `isLast`: with them it has ended, and what is left of it was lost. `place`: rack and level.
   */
  | {
      readonly type: 'shape'
      readonly mixId?: MixId
      readonly isLast?: boolean
      readonly place?: string
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
  /** `from` left out: a tap. Only the source that the shop counts by changes what is left. */
  | { readonly type: 'sell'; readonly lines: readonly Line[]; readonly from?: SaleSource }
  /** Pieces of which nobody said the variety ("a dozen"): spread by what sells and what is there. */
  | { readonly type: 'sellUnnamed'; readonly pieces: number; readonly from?: SaleSource }
  | {
      readonly type: 'remove'
      readonly varietyId: VarietyId
      readonly pieces: number
      readonly fate: 'kitchen' | 'wasted' | 'given'
    }
  | { readonly type: 'count'; readonly varietyId: VarietyId; readonly pieces: number }
  /** The few rods in doubt, counted in one go; counted in half-dozens a rod is known to within some pieces. */
  | { readonly type: 'sweep'; readonly counts: readonly Counted[] }
  /** The last one went over the counter: nothing of it is for sale now. */
  | { readonly type: 'lastOneGone'; readonly varietyId: VarietyId }
  /** Pieces of an earlier day, put out for sale apart from today's. */
  | { readonly type: 'dayOldIn'; readonly lines: readonly Line[] }
  | {
      readonly type: 'dayOldOut'
      readonly varietyId: VarietyId
      readonly pieces: number
      readonly fate: 'sold' | 'kitchen' | 'wasted' | 'given'
    }
  /** `orderId`: for that order; left out: for somebody whom the board does not know. */
  | { readonly type: 'keep'; readonly lines: readonly Line[]; readonly orderId?: OrderId }
  | { readonly type: 'release'; readonly keepId: KeepId }
  | { readonly type: 'handOver'; readonly keepId: KeepId }

export type DayCommand =
  | { readonly type: 'openDay' }
  /** `label`: the day that the screen was showing; a late tap must not close the next one. */
  | {
      readonly type: 'closeDay'
      readonly label?: string
      /** Minutes worked by the crew, all of them together; left out: nobody said. */
      readonly crewMinutes?: number
    }
  /** The day closed last goes on, as if it had not been closed; before the next one has begun. */
  | { readonly type: 'reopenDay'; readonly label: string }
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
  /** What the advised plan must leave out; replaces what was said before. */
  | { readonly type: 'forbidLoads'; readonly forbids: readonly Forbid[] }
  /** `fromMs` left out: from now on. */
  | { readonly type: 'changeSetUp'; readonly changes: readonly SetUpChange[]; readonly fromMs?: EpochMs }
  /** A change that was to take effect later is dropped. */
  | { readonly type: 'dropSetUp'; readonly setUpId: SetUpId }
  /** The server's own: planned changes whose time has come. */
  | { readonly type: 'takeUpSetUps' }
  /**
   * The server's own: sales of days past were taken from a file. The rows lie in a table beside the journal; here stands
   * which file it was, how many they were, and of which dates.
   */
  | {
      readonly type: 'noteImport'
      readonly name: string
      readonly sha256: string
      readonly rows: number
      readonly from: string
      readonly to: string
    }
  | { readonly type: 'takeBack'; readonly commandId: CommandId }

/** Kettle and boards, besides what is boiled. */
export type CareCommand =
  | { readonly type: 'care'; readonly care: CareKind }
  /** Boards that can be used today. */
  | { readonly type: 'setBoards'; readonly usable: number }

/** What people say of the day and of its lists. */
export type ListCommand =
  /** `doughId`: which dough of a float test; else null. */
  | {
      readonly type: 'doStep'
      readonly stepId: StepId
      readonly doughId: DoughId | null
      readonly personId: PersonId | null
    }
  /** Who will do it; null: nobody in particular. */
  | {
      readonly type: 'giveStep'
      readonly stepId: StepId
      readonly doughId: DoughId | null
      readonly personId: PersonId | null
    }
  /** `lookAgainMs`: how long until the next look, where it has not passed; else null. */
  | {
      readonly type: 'testFloat'
      readonly doughId: DoughId
      readonly passed: boolean
      readonly lookAgainMs: DurationMs | null
      readonly personId: PersonId | null
    }
  | { readonly type: 'writeNote'; readonly text: string }
  | { readonly type: 'clearNote'; readonly noteId: NoteId }
  /** The changeover so much later than the set-up says (earlier: negative), for today. */
  | { readonly type: 'slipChangeover'; readonly slipMs: number }
  /** A shelf is done with bagels for today, or takes them again. */
  | { readonly type: 'changeOverShelf'; readonly shelfId: ShelfId; readonly to: 'secondMenu' | 'bagels' }
  /** A reading of the oven's heat, typed or posted; `shelfId` null: the oven as a whole. */
  | {
      readonly type: 'readOven'
      readonly shelfId: ShelfId | null
      readonly degrees: number
      readonly unit: 'C' | 'F'
    }
