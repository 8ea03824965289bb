import { dateAfter } from '../day/label.ts'
import type { State } from '../day/state.ts'
import type { FormulaId } from '../ids.ts'
import { hoursOn } from '../shop/hours.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'
import { dateOf, mixDateOf } from './dates.ts'
import type { DayPlan, DoughNeed, FormulaNeed } from './day-plan.ts'
import { boardOrders, demandOn } from './need-demand.ts'
import type { DaysAhead, Looked } from './plan-days.ts'
import { planDays } from './plan-days.ts'
import { piecesOvernight, traysFor } from './trays.ts'

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

/** Dough is mixed three days ahead at most, and a preparation begun a day or two before that. */
const LOOK_AHEAD_DAYS = 5

/**
 * The days ahead in the dough room: what is wanted, what it comes to, what must be decided when, and trays in the cooler by
 * night. Days for which nobody has typed anything have nothing wanted, closed or not.
 * @param fromDate YYYY-MM-DD @param days from it on
 * @example rye of two days ahead wanted on Thursday, decided by 10:00 // Tuesday has { rye, Thursday, Tuesday 10:00 }
 */
export function doughCalendar(
  state: State,
  shop: Shop,
  fromDate: string,
  days: number,
  noonOf: NoonOf,
): readonly CalendarDay[] {
  const looked: Looked = { state, shop, noonOf }
  const ahead = planDays(looked, dateAfter(fromDate, days - 1 + LOOK_AHEAD_DAYS))
  const plans = new Map(ahead.plans.map((plan) => [plan.date, plan]))
  const decisions = decisionsOf(looked, ahead.plans, fromDate)
  const mixed = mixedOn(state, ahead.plans)
  return Array.from({ length: Math.max(0, days) }, (_, n): CalendarDay => {
    const date = dateAfter(fromDate, n)
    const plan = plans.get(date)
    const demand = [...demandOn(state, date, boardOrders(looked, date)).values()]
    const mixes = [...state.mixes.values()].filter(({ bakeDate }) => bakeDate === date)
    const planned = mixes.filter(({ stage }) => stage === 'planned').length
    return {
      date,
      isClosed: hoursOn(shop, date) === null,
      wanted: demand.reduce((sum, { counter }) => sum + counter, 0),
      ordered: demand.reduce((sum, { orders }) => sum + orders, 0),
      doughs: plan?.doughs ?? [],
      formulas: plan?.formulas ?? [],
      planned,
      begun: mixes.length - planned,
      mixesToday: mixed.get(date) ?? 0,
      decisions: decisions.get(date) ?? [],
      night: nightOf(looked, ahead, date),
    }
  })
}

function nightOf(looked: Looked, ahead: DaysAhead, date: string): CalendarDay['night'] {
  const trays = traysFor(looked.shop, piecesOvernight(looked, ahead, date, dateAfter(date, 1)))
  const space = looked.shop.cooler?.trays ?? null
  return { trays, space, over: space === null ? 0 : Math.max(0, trays - space) }
}

/** By the date on which they fall. A formula whose mixes stand is still listed, as decided. */
function decisionsOf(
  { state, noonOf }: Looked,
  plans: readonly DayPlan[],
  near: string,
): ReadonlyMap<string, readonly Decision[]> {
  const byDate = new Map<string, Decision[]>()
  for (const plan of plans) {
    for (const { formulaId, decideAtMs } of plan.formulas) {
      const isDecided = [...state.mixes.values()].some(
        ({ formula, bakeDate }) => formula.id === formulaId && bakeDate === plan.date,
      )
      const date = dateOf(noonOf, near, decideAtMs)
      const decision = { formulaId, bakeDate: plan.date, atMs: decideAtMs, isDecided }
      byDate.set(date, [...(byDate.get(date) ?? []), decision])
    }
  }
  for (const [date, list] of byDate)
    byDate.set(
      date,
      list.sort((one, other) => one.atMs - other.atMs || (one.formulaId < other.formulaId ? -1 : 1)),
    )
  return byDate
}

/** How many mixes are mixed on each date. A day with mixes of its own is counted by them, else by its plan. */
function mixedOn({ mixes }: State, plans: readonly DayPlan[]): ReadonlyMap<string, number> {
  const count = new Map<string, number>()
  const add = (date: string) => count.set(date, (count.get(date) ?? 0) + 1)
  const standing = [...mixes.values()]
  for (const { formula, bakeDate } of standing) add(mixDateOf(formula, bakeDate))
  for (const plan of plans) {
    if (standing.some(({ stage, bakeDate }) => stage === 'planned' && bakeDate === plan.date)) continue
    for (const { mixDate } of plan.mixes) add(mixDate)
  }
  return count
}
