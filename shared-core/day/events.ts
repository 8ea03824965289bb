import type { OnHand } from '../dough/mix.ts'
import type {
  BatchId,
  BuildId,
  CommandId,
  DeviceId,
  DoughId,
  KeepId,
  LoadId,
  MixId,
  NoteId,
  OrderId,
  PlannedId,
  SetUpId,
  ShelfId,
  StandingId,
  UnsureId,
  VarietyId,
} from '../ids.ts'
import type { MakeTimes, Order, PortionsLeft, StandingOrder } from '../orders/order.ts'
import type { SetUpChange } from '../shop/set-up-change.ts'
import type { EpochMs } from '../units.ts'
import type { OverLimit } from './answers.ts'
import type { DoughFact } from './dough-events.ts'
import type { Habit } from './habit.ts'
import type { Care, Mark, Note } from './said.ts'
import type { Batch, Forbid, Keep, Line, Load, Lot, PlannedLoad, PlannedSetUp, SaleSource, Unsure } from './state.ts'
import type { Told } from './trace.ts'

/**
 * One accepted command in the journal: its events happen together or not at all. `seq` counts entries from 1 without
 * a gap; `recordedAtMs` never goes back; each event's `atMs` is when it happened in the shop.
 */
export interface Entry {
  readonly seq: number
  readonly commandId: CommandId
  readonly deviceId: DeviceId
  readonly recordedAtMs: EpochMs
  readonly told: Told
  readonly events: readonly Event[]
}

/**
 * Facts. They carry the results of rules (due times, what was taken from where), so that applying them never reads the
 * set-up and an old event means the same for ever. `v` is the version of the event's form; see `upcast.ts`.
 */
export type Event = { readonly v: number; readonly atMs: EpochMs } & Fact
export type EventType = Fact['type']
export type EventOf<Type extends EventType> = Extract<Event, { type: Type }>

export type Fact =
  | DoughFact
  /** `noonMs`: the shop's noon of that date; null: not known. */
  | { readonly type: 'dayOpened'; readonly label: string; readonly noonMs: EpochMs | null }
  | ({
      readonly type: 'dayClosed'
      readonly closedOn: string
      readonly left: readonly Line[]
      readonly plannedIds: readonly PlannedId[]
      readonly crewMinutes: number | null
      /** Mixes and builds of which nothing is left, and planned ones whose day is over; what they took leaves `onHand`. */
      readonly mixIds: readonly MixId[]
      readonly buildIds: readonly BuildId[]
      readonly onHand: readonly OnHand[]
    } & Strays)
  | { readonly type: 'dayReopened'; readonly label: string }
  | { readonly type: 'setUpChanged'; readonly changes: readonly SetUpChange[] }
  | { readonly type: 'setUpPlanned'; readonly setUp: PlannedSetUp }
  /** Dropped by a person, or taken into effect by the `setUpChanged` beside it. */
  | { readonly type: 'setUpDropped'; readonly setUpId: SetUpId }
  | { readonly type: 'marked'; readonly mark: Mark }
  | { readonly type: 'unmarked'; readonly markId: string }
  | { readonly type: 'noted'; readonly note: Note }
  | { readonly type: 'noteCleared'; readonly noteId: NoteId }
  | { readonly type: 'cared'; readonly care: Care }
  | { readonly type: 'loadListSet'; readonly loads: readonly PlannedLoad[] }
  | { readonly type: 'plannedDone'; readonly planned: PlannedLoad }
  | { readonly type: 'loadsForbidden'; readonly forbids: readonly Forbid[] }
  /** `from`: the mix that they are of; left out: nobody said. `unexplained`: more than was left in it, negative. */
  | {
      readonly type: 'piecesShaped'
      readonly batch: Batch
      readonly from?: { readonly mixId: MixId; readonly milligrams: number; readonly unexplainedMilligrams: number }
    }
  | { readonly type: 'piecesCarriedIn'; readonly batch: Batch }
  /** More dough was there than the board knew: booked as unexplained, signed. */
  | { readonly type: 'piecesFound'; readonly batch: Batch }
  | {
      readonly type: 'batchMoved'
      readonly takes: readonly Take[]
      readonly put: Batch
      readonly presumed: readonly Presumed[]
      readonly over: readonly OverLimit[]
    }
  | {
      readonly type: 'loaded'
      readonly load: Load
      readonly takes: readonly Take[]
      readonly puts: readonly Batch[]
      readonly presumed: readonly Presumed[]
      readonly over: readonly OverLimit[]
    }
  /** The contents of a load corrected while it bakes. */
  | {
      readonly type: 'loadChanged'
      readonly load: Load
      readonly takes: readonly Take[]
      readonly puts: readonly Batch[]
      readonly presumed: readonly Presumed[]
      readonly over: readonly OverLimit[]
    }
  | {
      readonly type: 'flipped'
      readonly loadId: LoadId
      readonly presumed: boolean
      readonly boardsWetAtMs: EpochMs
      readonly over: readonly OverLimit[]
    }
  | {
      readonly type: 'out'
      readonly loadId: LoadId
      readonly takes: readonly Take[]
      readonly lots: readonly VarietyLot[]
      readonly boardsWetAtMs: EpochMs
      readonly last: boolean
      readonly over: readonly OverLimit[]
    }
  | {
      readonly type: 'loadMoved'
      readonly load: Load
      readonly fromShelfId: ShelfId
      readonly over: readonly OverLimit[]
    }
  /** A load taken back out of the oven, onto boards; or one of which nothing is left. */
  | {
      readonly type: 'loadUndone'
      readonly loadId: LoadId
      readonly takes: readonly Take[]
      readonly puts: readonly Batch[]
    }
  | { readonly type: 'batchWasted'; readonly take: Take; readonly doughId: DoughId }
  | { readonly type: 'unsureRaised'; readonly unsure: Unsure }
  | { readonly type: 'unsureSettled'; readonly unsureIds: readonly UnsureId[] }
  | {
      readonly type: 'stockTaken'
      readonly varietyId: VarietyId
      readonly doughId: DoughId
      readonly fate: 'sold' | 'kitchen' | 'wasted' | 'given'
      readonly takes: readonly Take[]
      readonly found: number
      /** Nobody said that it was this variety: its share of what was sold without a name. */
      readonly unnamed: boolean
      readonly from: SaleSource
    }
  /** Sold by a source that the shop does not count by: on record, and nothing is taken off. */
  | {
      readonly type: 'saleNoted'
      readonly lines: readonly Line[]
      /** Pieces besides those, of which nobody said the variety. */
      readonly unnamed: number
      readonly from: SaleSource
    }
  /** Sales of days past came from a file; the rows lie beside the journal. */
  | {
      readonly type: 'importNoted'
      readonly name: string
      readonly sha256: string
      readonly rows: number
      readonly from: string
      readonly to: string
    }
  | {
      readonly type: 'dayOldPut'
      readonly lines: readonly { readonly varietyId: VarietyId; readonly doughId: DoughId; readonly pieces: number }[]
    }
  /** `found`: of these so many were not known to be there. */
  | {
      readonly type: 'dayOldTaken'
      readonly varietyId: VarietyId
      readonly doughId: DoughId
      readonly fate: 'sold' | 'kitchen' | 'wasted' | 'given'
      readonly pieces: number
      readonly found: number
    }
  /** `matured`: lots that the count shows to be for sale already. `unexplained` = known − counted. */
  | {
      readonly type: 'counted'
      readonly varietyId: VarietyId
      readonly doughId: DoughId
      readonly pieces: number
      /** Right to within so many pieces. */
      readonly within: number
      /** What the count teaches; null: nothing. */
      readonly habit: Habit | null
      readonly matured: readonly BatchId[]
      readonly takes: readonly Take[]
      readonly unexplained: number
      readonly foundLot: Lot | null
    }
  | { readonly type: 'kept'; readonly keep: Keep; readonly parts: readonly KeptPart[] }
  | { readonly type: 'released'; readonly keepId: KeepId; readonly lots: readonly VarietyLot[] }
  | {
      readonly type: 'handedOver'
      readonly keepId: KeepId
      readonly parts: readonly { readonly varietyId: VarietyId; readonly doughId: DoughId; readonly pieces: number }[]
    }
  /** `slip`: it got the next slip's number; null: it is called otherwise. */
  | { readonly type: 'orderTaken'; readonly order: Order; readonly slip: number | null }
  | { readonly type: 'orderChanged'; readonly order: Order }
  | { readonly type: 'orderEnded'; readonly orderId: OrderId; readonly how: OrderEnd }
  /** It left with fewer pieces than ordered, or with others in their place: `missing` by the order's lines (null: mixed). */
  | { readonly type: 'orderShort'; readonly orderId: OrderId; readonly missing: readonly Short[] }
  | { readonly type: 'standingSet'; readonly standing: StandingOrder }
  | { readonly type: 'standingEnded'; readonly standingId: StandingId }
  /** Parts of items begun, turned, made, or waiting again: the orders as they are after it. */
  | { readonly type: 'itemsMoved'; readonly orders: readonly Order[]; readonly times: readonly MakeTimes[] }
  /** Counted, or taken for an item: what is left of each now. */
  | { readonly type: 'portionsLeft'; readonly left: readonly PortionsLeft[] }
  | { readonly type: 'takenBack'; readonly commandId: CommandId }

export type OrderEnd = 'handedOver' | 'noShow' | 'cancelled'

export interface Short {
  readonly varietyId: VarietyId | null
  readonly pieces: number
}

/** Pieces out of a batch or lot; the batch goes when none are left in it. */
export interface Take {
  readonly batchId: BatchId
  readonly pieces: number
}
export interface VarietyLot {
  readonly varietyId: VarietyId
  readonly doughId: DoughId
  readonly lot: Lot
}
export interface KeptPart {
  readonly varietyId: VarietyId
  readonly doughId: DoughId
  readonly takes: readonly Take[]
  readonly found: number
}

/** An act that must have come before the one tapped. Never learnt from: nobody saw when it happened. */
export interface Presumed {
  readonly act: 'pull' | 'dip' | 'lift' | 'board' | 'flip'
  readonly doughId: DoughId
  readonly pieces: number
}

/** What a close finds that nobody has touched since before the day: it leaves the account rather than pile up. */
export interface Strays {
  readonly batchIds: readonly BatchId[]
  readonly loadIds: readonly LoadId[]
  readonly keepIds: readonly KeepId[]
}
