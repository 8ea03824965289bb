import type { Line, State } from '../day/state.ts'
import type { NoonOf } from '../dough/dates.ts'
import type { DoughId, OrderId, ShelfId, VarietyId } from '../ids.ts'
import type { Outlook } from '../live/outlook.ts'
import type { Plan } from '../live/plan.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import type { Book } from './book.ts'
import { bookOf, wantedOf } from './book.ts'
import { earliestOf } from './earliest.ts'
import { nextDayOf } from './next-day.ts'
import type { OrderLine } from './order.ts'
import { partNow } from './part-now.ts'
import { whyOf } from './promise-why.ts'

/** What a promise is reckoned from. */
export interface SupplyAsked {
  readonly state: State
  readonly nowMs: EpochMs
  /** The shop's date of today. */
  readonly date: string
  readonly noonOf: NoonOf
  /** Nobody fetches anything after it. */
  readonly closesAtMs: EpochMs
  /** Of today and fresh; null: plan or pace say what walk-ins will ask for. */
  readonly outlook: Outlook | null
  /** Of today; null: only loads that people have listed are on the way. */
  readonly plan: Plan | null
}

export interface PromiseAsked extends SupplyAsked {
  readonly lines: readonly OrderLine[]
  /** The order that is being changed: what it had is free for it. */
  readonly leaveOut?: OrderId
}

export interface Promised {
  /** Earliest instant from which on it takes nothing from anybody; null: not today. */
  readonly atMs: EpochMs | null
  readonly why: PromiseWhy
  /** What could go at once, mixed lines filled: all of it where `atMs` is now. */
  readonly now: readonly Line[]
  /** Some now and the rest then; null: there is nothing now, or all of it. */
  readonly split: { readonly nowLines: readonly Line[]; readonly restAtMs: EpochMs } | null
  /** The opening of the next day, while orders for it are taken; null: it is too late for that too. */
  readonly nextDayAtMs: EpochMs | null
}

/** What decides the earliest time. `varietyId` null: of mixed lines. */
export type PromiseWhy =
  | { readonly code: 'there' }
  /** It lies there; cooling enough to be sliced or bagged, and packing, take until then. */
  | { readonly code: 'packing' }
  /** Out of the oven, and not cool enough before. */
  | { readonly code: 'cooling'; readonly varietyId: VarietyId | null; readonly readyAtMs: EpochMs }
  /** Ready with this load. `shelfId` null: nobody knows on which. */
  | {
      readonly code: 'load'
      readonly varietyId: VarietyId | null
      readonly shelfId: ShelfId | null
      readonly readyAtMs: EpochMs
    }
  /** There is some before, but it is for that order. */
  | { readonly code: 'orders'; readonly varietyId: VarietyId | null; readonly orderId: OrderId }
  /** There is some before, but it is left to those who walk in. */
  | { readonly code: 'walkIns'; readonly varietyId: VarietyId | null }
  /** Not today: no dough is left for it. */
  | { readonly code: 'dough'; readonly doughId: DoughId }
  /** Not today: no load brings enough. */
  | { readonly code: 'noLoad'; readonly varietyId: VarietyId | null }
  /** Not today: what is still to come is ready after the close, or nobody said what the shop is. */
  | { readonly code: 'tooLate' }

/**
 * The earliest time for what is asked that takes nothing from other orders nor from what is left to walk-ins:
 *
 *   the first t such that for all later times, and for each variety,
 *   ready − open orders due − walk-ins' part − what stays out ≥ what is asked
 *
 * with mixed lines, these and those of other orders, filled from whatever has room (`mixed-flow.ts`). What is sliced or
 * bagged must have cooled for it, and is packed before. Rods count as what is there at least as four times in five.
 * It rests on the plan: a load that is late makes an order at risk (`at-risk.ts`), not a promise untrue in hindsight.
 */
export function promiseFor(asked: PromiseAsked): Promised {
  const nextDayAtMs = nextDayOf(asked)
  const book = bookOf(asked, 'careful', asked.leaveOut === undefined ? {} : { leaveOut: asked.leaveOut })
  if (book === null) return { atMs: null, why: { code: 'tooLate' }, now: [], split: null, nextDayAtMs }
  const wanted = wantedOf(book, asked.lines)
  const atMs = earliestOf(book, wanted)
  const { now, rest } = partNow(book, asked)
  return {
    atMs: atMs === null ? null : epochMs(atMs),
    why: whyOf(asked, book, wanted, atMs),
    now,
    split: splitOf(book, now, rest),
    nextDayAtMs,
  }
}

function splitOf(book: Book, now: readonly Line[], rest: readonly OrderLine[]): Promised['split'] {
  if (now.length === 0 || rest.length === 0) return null
  const restAtMs = earliestOf(book, wantedOf(book, rest), now)
  return restAtMs === null ? null : { nowLines: now, restAtMs: epochMs(restAtMs) }
}
