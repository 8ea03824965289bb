import type { Line } from '../day/state.ts'
import type { DoughId, PlannedId, ShelfId, VarietyId } from '../ids.ts'
import { plannedId } from '../ids.ts'
import type { Allergen } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'

/**
 * Which loads when, for the rest of a day. Advice: reckoned on the server, told to all screens, latest only, outside the
 * fold and its hash. Instants and whole numbers, ready to be shown.
 */
export interface Plan {
  /** The day that it is of. */
  readonly date: string
  /** When what it rests on stood so. */
  readonly atMs: EpochMs
  /** Loads that have not gone into the oven, in the order of their kettle starts; those that people set are among them. */
  readonly loads: readonly PlanLoad[]
  /** What to take out of the cooler, soonest first. */
  readonly pulls: readonly PlanPull[]
  /** What is another than in the plan before, and why; null: nothing that anybody must know. */
  readonly changed: PlanChange | null
  /** Null: the shop bakes until it closes, or no more is baked today. */
  readonly last: LastLoads | null
  /** What was wished and cannot be. */
  readonly cannot: readonly PlanCannot[]
  /** By variety: what there will be against what will be asked for. */
  readonly supply: readonly PlanSupply[]
  readonly figures: PlanFigures
}

export interface PlanLoad {
  /** Of an advised load it begins with `ADVISED`; it stays the same while the load is recognisably the same. */
  readonly id: PlannedId
  readonly shelfId: ShelfId
  /** First dip; null: nothing in it is boiled. */
  readonly kettleAtMs: EpochMs | null
  readonly dips: number
  readonly inAtMs: EpochMs
  /** Null: nothing in it is flipped. */
  readonly flipAtMs: EpochMs | null
  readonly outAtMs: EpochMs
  readonly readyAtMs: EpochMs
  readonly lines: readonly Line[]
  /** People set it: it is not moved. */
  readonly isPinned: boolean
  /** The last that its shelf takes today. */
  readonly isLast: boolean
  /** One for each line, in their order. */
  readonly why: readonly PlanWhy[]
  /** Allergens that a line should not meet and that water, boards, trays, peel or stone have touched by then. */
  readonly contacts: readonly PlanContact[]
}

/** Why a line is in its load. */
export type PlanWhy = { readonly varietyId: VarietyId } /** Without it the variety is probably gone by then. */ & (
  | { readonly kind: 'runsOut'; readonly atMs: EpochMs; readonly kettleByMs: EpochMs | null }
  | { readonly kind: 'opening' }
  | { readonly kind: 'order'; readonly dueAtMs: EpochMs; readonly pieces: number }
  /** Nothing is baked after the changeover: it carries the variety to the close. */
  | { readonly kind: 'afternoon'; readonly untilMs: EpochMs }
  /** There is enough for now; these are fresher than more of an earlier load would be. */
  | { readonly kind: 'fresh' }
  /** The shop wants so many on show. */
  | { readonly kind: 'show'; readonly least: number }
  /** Where kettle or shelves are full later, it goes now. */
  | { readonly kind: 'room' }
  | { readonly kind: 'pinned' }
)

export interface PlanContact {
  readonly varietyId: VarietyId
  readonly allergens: readonly Allergen[]
  readonly where: readonly ContactPlace[]
}
export type ContactPlace = 'kettle' | 'boards' | 'trays' | 'peel' | 'stone'

export interface PlanPull {
  readonly atMs: EpochMs
  readonly doughId: DoughId
  /** Null: plain dough. */
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly trays: number
  /** Load that it is for: the first that needs it. */
  readonly loadId: PlannedId
  /** The oldest window first: trays of it are past their latest time by then; null: no window ends before. */
  readonly latestAtMs: EpochMs | null
}

export interface PlanChange {
  readonly atMs: EpochMs
  /** What gave rise to it. */
  readonly cause: PlanCause
  /** The next load is another one than it was. */
  readonly next: boolean
  /** Gained against keeping the plan as it was, in cents of expected profit; null: it could not be kept. */
  readonly gainCents: number | null
  /** What matters most of what is new. */
  readonly what:
    | {
        readonly kind: 'load-added' | 'load-dropped' | 'load-moved'
        readonly load: PlanLoad
        readonly wasAtMs: EpochMs | null
      }
    | {
        readonly kind: 'contents'
        readonly load: PlanLoad
        readonly more: readonly Line[]
        readonly fewer: readonly Line[]
      }
    | { readonly kind: 'order-of-loads' }
}
export type PlanCause =
  | { readonly kind: 'sales'; readonly varietyId: VarietyId; readonly isMore: boolean }
  | {
      readonly kind:
        | 'load-late'
        | 'flip-late'
        | 'kettle-slow'
        | 'oven-cold'
        | 'set-up'
        | 'changeover'
        | 'people'
        | 'order'
        | 'other'
    }
  | { readonly kind: 'shelf-over' | 'shelf-open'; readonly shelfId: ShelfId }
  | { readonly kind: 'load-other'; readonly shelfId: ShelfId }
  | { readonly kind: 'dough'; readonly doughId: DoughId }
  | { readonly kind: 'wish' }

export interface LastLoads {
  /** Latest first dip that still empties the oven in time, and latest load. */
  readonly kettleByMs: EpochMs
  readonly inByMs: EpochMs
  readonly emptyByMs: EpochMs
  readonly loadIds: readonly PlannedId[]
  /** With the changeover so much later (earlier: negative): what that gains, less what a slip costs at the second menu. */
  readonly slips: readonly {
    readonly byMs: number
    readonly gainCents: number
    readonly lostFewer: number
    readonly leftFewer: number
  }[]
}

export type PlanCannot =
  | { readonly kind: 'order-short'; readonly varietyId: VarietyId; readonly dueAtMs: EpochMs; readonly pieces: number }
  | { readonly kind: 'pinned-over'; readonly loadId: PlannedId; readonly limit: PlanLimit }
  | { readonly kind: 'show-short'; readonly varietyId: VarietyId; readonly pieces: number }
  | { readonly kind: 'dough-short'; readonly doughId: DoughId; readonly pieces: number }
  | { readonly kind: 'no-time' }
export type PlanLimit = 'kettle' | 'boards' | 'shelf' | 'oven' | 'dough' | 'hands'

export interface PlanSupply {
  readonly varietyId: VarietyId
  readonly forSale: number
  /** Ready to sell, summed up from now on: `[instant, pieces so far]`. */
  readonly ready: readonly (readonly [EpochMs, number])[]
  /** Expected to be asked for, summed up from now on, and with 10 and 90 % chance not more. */
  readonly asked: readonly (readonly [EpochMs, q10: number, mean: number, q90: number])[]
  /** Expected, to one decimal. */
  readonly lost: number
  readonly left: number
}

export interface PlanFigures {
  /** Expected, in cents: price of what is sold less cost, disappointment and standing. */
  readonly profitCents: number
  /** The same with equal waves of 90 minutes, as shops bake by habit; null: none could be reckoned. */
  readonly wavesProfitCents: number | null
  readonly baked: number
  /** Expected pieces: asked for in vain, missing in orders, left at the close. */
  readonly lost: number
  readonly missing: number
  readonly left: number
  /** Of a piece when it is sold. */
  readonly ageMinutes: number
  readonly firstKettleAtMs: EpochMs | null
  readonly lastOutAtMs: EpochMs | null
  /** From the first dip to the last out, times the people who are there. Null: the shop has not said who is there. */
  readonly crewMinutes: number | null
  /** What more of would gain most, and how much in cents; null: nothing gains more than a little. */
  readonly bottleneck: { readonly of: Bottleneck; readonly gainCents: number } | null
}
export type Bottleneck = 'kettle' | 'boards' | 'shelves' | 'dough' | 'people'

/** Ids of advised loads begin with it, so that a load that was tapped as advised says so for ever. A command's id is longer. */
export const ADVISED = 'advised.'

/** The id of an advised load. @param seq of the entry on which the plan rested that had it first */
export function advisedId(seq: number, n: number): PlannedId {
  return plannedId(`${ADVISED}${seq}.${n}`)
}

export function isAdvised(id: PlannedId | null): boolean {
  return id?.startsWith(ADVISED) ?? false
}
