import type { MixAsked } from '../day/dough-commands.ts'
import type { State } from '../day/state.ts'
import type { DoughId, FormulaId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { assert } from '../support.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'
import { planDays } from './plan-days.ts'

/** What the dough room should make for one day of boiling, and why. Advice: nothing of it is in the state. */
export interface DayPlan {
  /** YYYY-MM-DD, the day on which the pieces are boiled. */
  readonly date: string
  /** The shop is closed on that weekday; what is wanted all the same is planned all the same. */
  readonly isClosed: boolean
  /** Doughs of which something is wanted, or of which more is shaped than wanted; in the shop's order. */
  readonly doughs: readonly DoughNeed[]
  /** What is mixed, in the shop's order of formulas. */
  readonly formulas: readonly FormulaNeed[]
  readonly mixes: readonly PlannedMix[]
  /** The soonest hour by which one of its formulas must be decided; null: nothing is mixed. */
  readonly decideAtMs: EpochMs | null
}

/** Pieces of one dough for the day. The pieces of `why` sum up to `pieces`. */
export interface DoughNeed {
  readonly doughId: DoughId
  /** Null: nobody has said what it is mixed by. */
  readonly formulaId: FormulaId | null
  /** To be shaped for that day, in whole trays (but for what fills up a bag). */
  readonly pieces: number
  /** Of one piece as shaped; 0 where the set-up does not say. */
  readonly pieceMilligrams: number
  /** Of `pieces`, what nobody asked for: what trays and bags add. */
  readonly over: number
  /** Of `pieces`, those that no mix is planned for, as the dough has no formula or no piece weight. */
  readonly short: number
  /** There by then, inside their window that day, and wanted by nobody. */
  readonly spare: number
  readonly why: readonly NeedReason[]
}

/**
 * `counter`, `orders`: wanted. `boiled`: of today, boiled already; `loads`: today's planned loads take more than is wanted.
 * `chilled`: in the cooler or proofing and inside its window that day. `begun`: of mixes that are made for it. `earlier`:
 * what mixes for an earlier day will leave over. `trays`, `bags`: rounded up.
 */
export type NeedCode = 'counter' | 'orders' | 'boiled' | 'loads' | 'chilled' | 'begun' | 'earlier' | 'trays' | 'bags'
export interface NeedReason {
  readonly code: NeedCode
  /** Signed: what is there already counts off. */
  readonly pieces: number
}

/** Dough of one formula for the day. The weights of `why` sum up to `doughMilligrams`. */
export interface FormulaNeed {
  readonly formulaId: FormulaId
  readonly flourMilligrams: number
  readonly doughMilligrams: number
  readonly mixes: number
  /** `belowLeast`: less flour than the mixer can mix. `unequal`: no number of equal mixes is within its limits. */
  readonly fits: 'fits' | 'belowLeast' | 'unequal'
  /** The mixer's limits; null: nobody has said. */
  readonly mixer: { readonly leastMilligrams: number; readonly mostMilligrams: number } | null
  readonly why: readonly DoughReason[]
  /** The day on which it is mixed, and whether the shop is closed then. */
  readonly mixDate: string
  readonly isMixDateClosed: boolean
  readonly decideAtMs: EpochMs
}

/** `pieces`: what is shaped. `loss`: bowl and divider. `bags`: dough of the flour that fills up a bag. */
export interface DoughReason {
  readonly code: 'pieces' | 'loss' | 'bags'
  readonly milligrams: number
}

export interface PlannedMix extends MixAsked {
  readonly doughMilligrams: number
  readonly mixDate: string
}

/**
 * The plan of one day of boiling: wanted and ordered pieces, less what will be there and still inside its window, in whole
 * trays and where the shop wants it in bags, split evenly into mixes within the mixer's limits. What is there is given to
 * the days before first, by whose window closes first.
 * @param date YYYY-MM-DD @param noonOf the shop's noon of a date
 * @example 300 plain wanted, 32 chilled, trays of 15 // 270 to shape: 300 − 32 + 2
 */
export function dayPlan(state: State, shop: Shop, date: string, noonOf: NoonOf): DayPlan {
  const { plans } = planDays({ state, shop, noonOf }, date)
  const plan = plans[plans.length - 1]
  assert(plan !== undefined, `no plan for ${date}`)
  return plan
}
