import { dateAfter } from '../day/label.ts'
import type { PlannedLoad, State } from '../day/state.ts'
import type { DoughId } from '../ids.ts'
import { isAdvised } from '../live/plan.ts'
import { doughOrdered } from '../orders/mixed-spread.ts'
import { piecesOn } from '../orders/ordered-on.ts'
import type { Shop } from '../shop/shop.ts'
import type { Looked } from './plan-days.ts'

/** Pieces of one dough wanted on a day, for the counter and for orders; varieties are pooled to their dough. */
export interface Demand {
  readonly counter: number
  readonly orders: number
}

/**
 * What was typed for a day, by dough, and what its orders come to.
 * @param ordered the board's orders by dough (`boardOrders`); left out: what was typed alone
 */
export function demandOn(
  { wanted }: Pick<State, 'wanted'>,
  date: string,
  ordered: ReadonlyMap<DoughId, number> = new Map(),
): ReadonlyMap<DoughId, Demand> {
  const demand = new Map<DoughId, Demand>([...ordered].map(([id, orders]) => [id, { counter: 0, orders }]))
  for (const { doughId, pieces, ordered } of wanted.get(date)?.lines ?? []) {
    const before = demand.get(doughId) ?? { counter: 0, orders: 0 }
    demand.set(doughId, { counter: before.counter + pieces, orders: before.orders + ordered })
  }
  return demand
}

/**
 * Dough of the board's orders for a day to come; mixed ones in equal shares. Of the day that is open nothing: some of its orders
 * are gone already, and it is baked by its loads.
 */
export function boardOrders({ state, shop, noonOf }: Looked, date: string): ReadonlyMap<DoughId, number> {
  const pieces = new Map<DoughId, number>()
  if (state.day?.label === date) return pieces
  for (const one of doughOrdered(shop, piecesOn(state, { date, noonMs: noonOf(date) })))
    pieces.set(one.doughId, (pieces.get(one.doughId) ?? 0) + one.pieces)
  return pieces
}

/** The next date on which anything is boiled: the open day's, else the one after the last close. */
export function firstDate({ day, lastDay }: Pick<State, 'day' | 'lastDay'>, otherwise: string): string {
  if (day !== null) return day.label
  return lastDay === null ? otherwise : dateAfter(lastDay.closedOn, 1)
}

/**
 * Pieces of each dough that the first date still takes out of the cooler. On the open day: of the loads that are planned,
 * what is not pulled yet; without these, what is wanted less what has been pulled. Null: nobody has said anything, so what
 * is chilled is presumed to be for that day.
 * @param isOver nothing more is boiled that day
 */
export function openingDemand(looked: Looked, date: string, isOver: boolean): ReadonlyMap<DoughId, number> | null {
  if (isOver) return new Map()
  const { state, shop } = looked
  const demand = demandOn(state, date)
  if (state.day?.label !== date)
    return demand.size === 0 ? null : summed(demandOn(state, date, boardOrders(looked, date)))
  const listed = [...state.planned.values()].filter(isListed)
  if (listed.some(({ done }) => !done)) return plannedStillToPull(state, shop, listed)
  if (demand.size === 0) return listed.length > 0 ? new Map() : null
  const pulled = pulledToday(state)
  return new Map([...summed(demand)].map(([id, pieces]) => [id, Math.max(0, pieces - (pulled.get(id) ?? 0))]))
}

/** What is only advised follows the dough that there is, and asks for none. */
function isListed({ id }: PlannedLoad): boolean {
  return !isAdvised(id)
}

function summed(demand: ReadonlyMap<DoughId, Demand>): Map<DoughId, number> {
  return new Map([...demand].map(([id, { counter, orders }]) => [id, counter + orders]))
}

function plannedStillToPull(state: State, shop: Shop, listed: readonly PlannedLoad[]): Map<DoughId, number> {
  const pieces = new Map<DoughId, number>()
  const add = (id: DoughId, more: number) => pieces.set(id, Math.max(0, (pieces.get(id) ?? 0) + more))
  for (const { done, lines } of listed) {
    if (done) continue
    for (const line of lines) {
      const variety = shop.varieties.get(line.varietyId)
      if (variety !== undefined) add(variety.doughId, line.pieces)
    }
  }
  for (const { stage, doughId, pieces: some } of state.batches.values())
    if (stage === 'rack' || stage === 'kettle' || stage === 'boards') add(doughId, -some)
  return pieces
}

/** Everything that came in today and does not proof or chill any more; day-old pieces were never in the cooler. */
function pulledToday(state: State): Map<DoughId, number> {
  const pulled = new Map<DoughId, number>()
  const add = (id: DoughId, more: number) => pulled.set(id, Math.max(0, (pulled.get(id) ?? 0) + more))
  for (const [id, { shaped, carriedIn }] of state.account) add(id, shaped + carriedIn)
  for (const { stage, doughId, pieces } of state.batches.values())
    if (stage === 'proof' || stage === 'chill') add(doughId, -pieces)
  for (const { doughId, dayOldPut, kept } of state.stock.values()) add(doughId, -dayOldPut - kept)
  return pulled
}
