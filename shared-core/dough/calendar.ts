import type { State } from '../day/state.ts'
import type { FormulaId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'
import type { DoughNeed, FormulaNeed } from './day-plan.ts'

/** One date of the dough room's calendar. */
export interface CalendarDay {
  /** YYYY-MM-DD */
  readonly date: string
  readonly isClosed: boolean
  /** Pieces wanted for boiling on it, for the counter and for orders. */
  readonly wanted: number
  readonly ordered: number
  /** What the plan of the day comes to (`dayPlan`). */
  readonly doughs: readonly DoughNeed[]
  readonly formulas: readonly FormulaNeed[]
  /** Mixes for boiling on it that stand in the state: planned, and begun. */
  readonly planned: number
  readonly begun: number
  /** Mixes that are mixed on it, for whatever day: those that stand, else those of the plans. */
  readonly mixesToday: number
  /** What must be decided on it, soonest first. */
  readonly decisions: readonly Decision[]
  /** Trays in the cooler in the night after it. `space`: what it holds; null: nobody has said. */
  readonly night: { readonly trays: number; readonly space: number | null; readonly over: number }
}

export interface Decision {
  readonly formulaId: FormulaId
  /** The day of boiling that it is for. */
  readonly bakeDate: string
  readonly atMs: EpochMs
  /** Mixes for that day stand already. */
  readonly isDecided: boolean
}

/**
 * The days ahead in the dough room: what is wanted, what it comes to, what must be decided when, and trays in the cooler by
 * night. @param days from `fromDate` on
 */
export function doughCalendar(
  _state: State,
  _shop: Shop,
  _fromDate: string,
  _days: number,
  _noonOf: NoonOf,
): readonly CalendarDay[] {
  return []
}
