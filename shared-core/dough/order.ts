import type { FormulaId } from '../ids.ts'
import type { Allergen } from '../shop/shop.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import { bestOrder } from './order-best.ts'
import { costOf } from './order-places.ts'
import { problemOf } from './order-problem.ts'

/**
 * The order in which one mixer makes a day's mixes.
 *
 * What an order costs, the more important first:
 * 1. **contacts**: over all mixes, the allergens that a mix does not contain and an earlier mix of the day did, washed in
 *    between or not. Why even when washed: a wash between two doughs is a quick one and nobody tests it, so that what
 *    comes before is the surest; the count only says which order is better, never that a dough is clean.
 * 2. **washes**: between two mixes, when the second lacks an allergen of the first or is milder in flavour. What is in
 *    the bowl is always what the last mix was, as everything unwashed before it held no more and was no stronger.
 * 3. **lateness**: by how much each mix comes into the cooler after it should, summed up.
 * Ties: the mix whose own latest comfortable start is sooner goes first, then by id.
 */

/** One mix as the order sees it. */
export interface MixTask {
  readonly id: string
  readonly formulaId: FormulaId
  readonly allergens: readonly Allergen[]
  /** 0 to 9, as in the formula. */
  readonly strength: number
  /** Its pre-ferments and soakers are ready by then, and work can begin. */
  readonly earliestAtMs: EpochMs
  /** The mixer is taken for so long. */
  readonly mixMs: DurationMs
  /** Rest and bulk ferment, out of the mixer and before the bench. */
  readonly waitMs: DurationMs
  /** Dividing and shaping: bench, divider and rollers do one mix at a time. */
  readonly benchMs: DurationMs
  readonly proofMs: DurationMs
  /** Proofing from when its shaping begins until it goes into the cooler. */
  readonly trays: number
  /** In the cooler by then. */
  readonly dueAtMs: EpochMs
}

export interface OrderRules {
  readonly washMs: DurationMs
  /** When mixer and bench are free. */
  readonly mixerFromMs: EpochMs
  readonly benchFromMs: EpochMs
  /** Trays that may proof at once; null: no limit. One mix that has more than that proofs alone. */
  readonly proofTrays: number | null
  /** What was mixed before on that day; null: nothing, and the bowl is clean. */
  readonly before: Before | null
}

export interface Before {
  /** Of the last mix: what is in the bowl. */
  readonly allergens: readonly Allergen[]
  readonly strength: number
  /** Of all mixes of the day. */
  readonly dayAllergens: readonly Allergen[]
}

export interface OrderCost {
  readonly contacts: number
  readonly washes: number
  readonly latenessMs: number
  /** In the order of mixing. */
  readonly places: readonly OrderPlace[]
}

/** When each step of a mix is, everything begun as soon as it can be. */
export interface OrderPlace {
  readonly id: string
  /** Mixing begins. */
  readonly startAtMs: EpochMs
  /** It could begin as late as this and nothing would come later into the cooler than it does; never before startAtMs. */
  readonly latestAtMs: EpochMs
  readonly mixedAtMs: EpochMs
  readonly benchAtMs: EpochMs
  readonly shapedAtMs: EpochMs
  readonly coolerAtMs: EpochMs
  readonly latenessMs: number
  /** The mixer is washed before it. */
  readonly isWashedBefore: boolean
  /** Allergens that it lacks and an earlier mix of the day contained. */
  readonly contacts: readonly Allergen[]
}

export interface OrderFound extends OrderCost {
  /** The ids in the order of mixing. */
  readonly order: readonly string[]
  /** `exact`: no order costs less. */
  readonly how: 'exact' | 'bestFound'
}

/**
 * The order that costs least.
 * @param tasks of one mixing day, with ids of their own
 * @returns `exact` where the search came to an end: mostly up to `EXACT_MIXES`, and above now and then
 */
export function mixingOrder(tasks: readonly MixTask[], rules: OrderRules): OrderFound {
  const problem = problemOf(tasks, rules)
  const { order, isExact } = bestOrder(problem)
  return { ...costOf(problem, order), order: order.map(({ id }) => id), how: isExact ? 'exact' : 'bestFound' }
}

/**
 * What an order costs that somebody chose.
 * @param order ids of the tasks; those that it leaves out come last, in the order of their latest comfortable start, and
 * ids that are of no task are passed over
 */
export function orderCost(tasks: readonly MixTask[], order: readonly string[], rules: OrderRules): OrderCost {
  const problem = problemOf(tasks, rules)
  const byId = new Map(problem.items.map((item) => [item.id, item]))
  const chosen = new Set(order.flatMap((id) => byId.get(id) ?? []))
  const rest = problem.items.filter((item) => !chosen.has(item))
  return costOf(problem, [...chosen, ...rest])
}

/** By how much an order costs more (or less: negative) than another, by kind. */
export function costDifference(from: OrderCost, to: OrderCost): Pick<OrderCost, 'contacts' | 'washes' | 'latenessMs'> {
  return {
    contacts: to.contacts - from.contacts,
    washes: to.washes - from.washes,
    latenessMs: to.latenessMs - from.latenessMs,
  }
}
