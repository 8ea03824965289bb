import type {
  Build,
  DividerChecks,
  Friction,
  Mix,
  OnHand,
  Place,
  PlaceReadings,
  Teaching,
  Wanted,
} from '../dough/mix.ts'
import type {
  BatchId,
  BuildId,
  CommandId,
  DeviceId,
  DoughId,
  IngredientId,
  KeepId,
  LoadId,
  MixId,
  NoteId,
  OrderId,
  PlannedId,
  PortionId,
  SetUpId,
  ShelfId,
  StandingId,
  UnsureId,
  VarietyId,
} from '../ids.ts'
import type { MakeTimes, Order, PortionsLeft, StandingOrder } from '../orders/order.ts'
import type { SetUpChange } from '../shop/set-up-change.ts'
import type { BatchStage, Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { OverLimit } from './answers.ts'
import type { ClosedDay } from './closed-day.ts'
import type { Presumed } from './events.ts'
import type { Habit } from './habit.ts'
import type { Care, CareKind, Mark, Note } from './said.ts'
import type { Trace } from './trace.ts'

/** Raised by one whenever the fold changes: screens with another number reload, snapshots with another are not read. */
export const FOLD_VERSION = 7

/**
 * The running shop: the fold of the journal. Entities are immutable and replaced whole; the maps are changed in place,
 * through `recorder.ts` only. All numbers are integers.
 */
export interface State {
  /** Sequence number of the last entry, 0 before the first. */
  seq: number
  recordedAtMs: EpochMs
  /** When work of an open day was recorded last (`night.ts` says what is none). */
  lastActAtMs: EpochMs
  /** Null until the first set-up. */
  shop: Shop | null
  day: Day | null
  lastDay: ClosedDay | null
  readonly batches: Map<BatchId, Batch>
  readonly loads: Map<LoadId, Load>
  readonly shelves: Map<ShelfId, ShelfUse>
  readonly stock: Map<VarietyId, Stock>
  readonly keeps: Map<KeepId, Keep>
  /** Orders still to be handed over, of today and of days to come. */
  readonly orders: Map<OrderId, Order>
  readonly standing: Map<StandingId, StandingOrder>
  readonly portions: Map<PortionId, PortionsLeft>
  /** How long made-to-order items really take, by `makeKey`. */
  readonly makeTimes: Map<string, MakeTimes>
  readonly planned: Map<PlannedId, PlannedLoad>
  /** What the advised plan must leave out; what is over is dropped at the close. */
  forbids: readonly Forbid[]
  readonly unsure: Map<UnsureId, Unsure>
  /** What people said of this day; cleared at its close. */
  readonly marks: Map<string, Mark>
  readonly notes: Map<NoteId, Note>
  /** When kettle and boards were cared for last. */
  readonly cares: Map<CareKind, Care>
  /** Changes of the set-up that take effect later. */
  readonly setUps: Map<SetUpId, PlannedSetUp>
  /** What the shop's counts have taught about each variety; it stays from day to day. */
  readonly habits: Map<VarietyId, Habit>
  /** Pieces wanted, by the day on which they are boiled. */
  readonly wanted: Map<string, Wanted>
  readonly mixes: Map<MixId, Mix>
  readonly builds: Map<BuildId, Build>
  readonly readings: Map<Place, PlaceReadings>
  readonly frictions: Map<string, Friction>
  readonly teachings: Map<DoughId, Teaching>
  readonly onHand: Map<IngredientId, OnHand>
  readonly checks: Map<DoughId, DividerChecks>
  /** Pieces that have touched the kettle's water (by dough) and the boards (by variety), counted up for good. */
  readonly touches: Map<string, number>
  /** The day's account by dough, in pieces. */
  readonly account: Map<DoughId, Account>
  /** The last commands, oldest first, with what they replaced: what take-back needs. At most `TRACES_MAX`. */
  traces: readonly Trace[]
}

export interface Day {
  /** Local date of its opening, YYYY-MM-DD; the day runs from open to close, not from midnight. */
  readonly label: string
  readonly openedAtMs: EpochMs
  /**
   * The shop's noon of that date, from which the minutes of its hours are counted: clocks change at night. Null in days
   * that were opened before the board knew it.
   */
  readonly noonMs: EpochMs | null
  /** The number of the last slip that was given one; left out: none today. */
  readonly lastSlip?: number
}

/** Pieces of one dough or variety that move together. `varietyId` is null while it is still plain dough. */
export interface Batch {
  readonly id: BatchId
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly stage: BatchStage
  readonly loadId: LoadId | null
  readonly sinceMs: EpochMs
  /** When the stage may, should and must end; null where the set-up gives no window. */
  readonly until: Until | null
  /** The way here was presumed from a later tap, not tapped itself. */
  readonly presumed: boolean
  /** The mix that it is of; left out: not known, or of several. */
  readonly mixId?: MixId
  /** Rack and level, as the shop calls it; left out: nobody said. */
  readonly place?: string
  /**
   * How far it had fermented when it came here: equivalent time at the temperature at which its proof window holds.
   * Left out: nothing before.
   */
  readonly fermentedMs?: number
}

export interface Until {
  readonly earliestAtMs: EpochMs
  readonly targetAtMs: EpochMs
  readonly latestAtMs: EpochMs
}

export type LoadPhase = 'first-side' | 'second-side'

/** One filling of one shelf. What is in it are the batches with its id. */
export interface Load {
  readonly id: LoadId
  readonly shelfId: ShelfId
  readonly phase: LoadPhase
  readonly loadedAtMs: EpochMs
  /** Boards under it until the flip. */
  readonly boards: number
  readonly flippedAtMs: EpochMs | null
  /** When its boards, freed at the flip, are wet enough again; null before the flip. */
  readonly boardsWetAtMs: EpochMs | null
  /** Null when nothing in it is flipped. */
  readonly flip: Until | null
  readonly out: Until | null
  readonly plannedId: PlannedId | null
}

/** What the boards and the door need to know of a shelf after its load has gone. */
export interface ShelfUse {
  readonly touchedAtMs: EpochMs
  readonly boardsFreed: number
  readonly boardsWetAtMs: EpochMs
}

/** Pieces that came out of the oven together; for sale from `readyAtMs` on. */
export interface Lot {
  readonly id: BatchId
  readonly pieces: number
  readonly outAtMs: EpochMs
  readonly readyAtMs: EpochMs
}

export type SaleSource = 'tap' | 'till'

export interface Stock {
  readonly varietyId: VarietyId
  readonly doughId: DoughId
  /** Oldest first. */
  readonly lots: readonly Lot[]
  readonly kept: number
  /** Pieces of an earlier day that are for sale, apart from the lots. */
  readonly dayOld: number
  readonly soldToday: number
  /** Pieces sold in each quarter of an hour of the last two hours, oldest first. */
  readonly pace: readonly { readonly fromMs: EpochMs; readonly pieces: number }[]
  /** The last count, right to within some pieces (0: to the piece). */
  readonly counted: { readonly atMs: EpochMs; readonly pieces: number; readonly within: number } | null
  /** When what is there was last known: at that count, or when the first pieces came to an empty rod. */
  readonly seen: Seen | null
  /** Sold since then (else since it opened) without anybody having said of which variety: spread, not known. */
  readonly unnamedSince: number
  /** The same of all of today. */
  readonly unnamedToday: number
  /** Pieces of an earlier day that were put out today. */
  readonly dayOldPut: number
  /** Since when it has stood at nothing, if it does. */
  readonly goneSinceMs: EpochMs | null
}

/** A moment at which a rod was known, with what was on record as sold by then today: of it, and of all varieties. */
export interface Seen {
  readonly atMs: EpochMs
  readonly sold: number
  readonly shopSold: number
}

/** A count of one rod, to within some pieces. */
export interface Counted {
  readonly varietyId: VarietyId
  readonly pieces: number
  readonly within: number
}

export interface PlannedSetUp {
  readonly id: SetUpId
  readonly fromMs: EpochMs
  readonly changes: readonly SetUpChange[]
  readonly deviceId: DeviceId
}

export interface Line {
  readonly varietyId: VarietyId
  readonly pieces: number
}

export interface Keep {
  readonly id: KeepId
  readonly lines: readonly Line[]
  readonly keptAtMs: EpochMs
  /** Of the youngest pieces in it: what is released cools on. */
  readonly outAtMs: EpochMs
  readonly readyAtMs: EpochMs
  /** The order that they are kept for; left out: none that the board knows. */
  readonly orderId?: OrderId
}

export interface PlannedLoad {
  readonly id: PlannedId
  readonly order: number
  /** Null: any shelf. */
  readonly shelfId: ShelfId | null
  /** When it should go in; null: as soon as a shelf is free. */
  readonly inAtMs: EpochMs | null
  readonly lines: readonly Line[]
  /** Loaded, or left out. */
  readonly done: boolean
}

/** No advised load goes in from–to: on that shelf, with that variety; both null means none at all. */
export interface Forbid {
  readonly shelfId: ShelfId | null
  readonly varietyId: VarietyId | null
  readonly fromMs: EpochMs
  readonly toMs: EpochMs
}

/** Something the board took for granted and a person with dry hands may confirm. */
export interface Unsure {
  readonly id: UnsureId
  readonly commandId: CommandId
  readonly atMs: EpochMs
  readonly what: UnsureWhat
}
export type UnsureWhat =
  | ({ readonly kind: 'presumed' } & Presumed)
  | { readonly kind: 'found'; readonly doughId: DoughId; readonly pieces: number }
  | {
      readonly kind: 'over'
      readonly limit: OverLimit
      readonly shelfId: ShelfId | null
      readonly pieces: number
      readonly most: number
    }

/**
 * shaped + carriedIn = in a stage + for sale + kept + sold + kitchen + wasted + given + dayOld + unexplained.
 * `unexplained` is signed: positive when a count finds fewer than known, negative when more turned up.
 */
export interface Account {
  readonly shaped: number
  readonly carriedIn: number
  readonly sold: number
  readonly kitchen: number
  readonly wasted: number
  readonly given: number
  readonly dayOld: number
  readonly unexplained: number
}
