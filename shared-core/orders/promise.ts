import type { Line, State } from '../day/state.ts'
import type { NoonOf } from '../dough/dates.ts'
import type { DoughId, OrderId, ShelfId, VarietyId } from '../ids.ts'
import type { Outlook } from '../live/outlook.ts'
import type { Plan } from '../live/plan.ts'
import type { EpochMs } from '../units.ts'
import type { OrderLine } from './order.ts'

/** What a promise is reckoned from. */
export interface SupplyAsked {
  readonly state: State
  readonly nowMs: EpochMs
  /** The shop's date of today. */
  readonly date: string
  readonly noonOf: NoonOf
  /** Nobody fetches anything after it. */
  readonly closesAtMs: EpochMs
  /** Of today and fresh; null: the pace of the last two hours says what walk-ins will ask for. */
  readonly outlook: Outlook | null
  /** Of today; null: only loads that people have set are on the way. */
  readonly plan: Plan | null
}

export interface PromiseAsked extends SupplyAsked {
  readonly lines: readonly OrderLine[]
  /** The order that is being changed: its own pieces are free for it. */
  readonly leaveOut?: OrderId
}

export interface Promised {
  /** Earliest instant from which on it takes nothing from anybody; null: not today. */
  readonly atMs: EpochMs | null
  readonly why: PromiseWhy
  /** What could go at once, mixed lines filled. Nothing of it where all can. */
  readonly now: readonly Line[]
  /** Some now and the rest then; null: all at once is as soon, or there is nothing now. */
  readonly split: { readonly nowLines: readonly Line[]; readonly restAtMs: EpochMs } | null
  /** The opening of the next day, while orders for it are taken; null: it is too late for that too. */
  readonly nextDayAtMs: EpochMs | null
}

/** What decides the earliest time. */
export type PromiseWhy =
  | { readonly code: 'there' }
  /** It lies there; slicing and packing take until then. */
  | { readonly code: 'packing' }
  /** Out of the oven, and not cool enough before. */
  | { readonly code: 'cooling'; readonly varietyId: VarietyId; readonly readyAtMs: EpochMs }
  /** Ready with this load. `shelfId` null: nobody knows on which. */
  | {
      readonly code: 'load'
      readonly varietyId: VarietyId | null
      readonly shelfId: ShelfId | null
      readonly readyAtMs: EpochMs
    }
  /** There is some, but until then it is for that order. */
  | { readonly code: 'orders'; readonly varietyId: VarietyId | null; readonly orderId: OrderId }
  /** There is some, but until then it is left to those who walk in. */
  | { readonly code: 'walkIns'; readonly varietyId: VarietyId | null }
  /** Not today: no dough is left for it. */
  | { readonly code: 'dough'; readonly doughId: DoughId }
  /** Not today: no load brings it. */
  | { readonly code: 'noLoad'; readonly varietyId: VarietyId | null }
  /** Not today: no load that is still to come would be ready before the close. */
  | { readonly code: 'tooLate' }
