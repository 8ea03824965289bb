import { dateAfter } from '../day/label.ts'
import type { DayDemand } from '../demand/demand.ts'
import type { Pieces } from '../demand/pieces.ts'
import { expectedSold, negativeBinomial, quantile } from '../demand/pieces.ts'
import type { Sizes } from '../demand/purchase-sizes.ts'
import { piecesOfDay } from '../demand/purchase-sizes.ts'
import { togetherOf } from '../demand/together.ts'
import type { NoonOf } from '../dough/dates.ts'
import { boilingOn } from '../dough/dates.ts'
import { decideAt } from '../dough/decide-by.ts'
import { keptUntilOf } from '../dough/need-supply.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { hoursOn } from '../shop/hours.ts'
import { inOrder } from '../shop/in-order.ts'
import type { Dough, Shop, Variety } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { howMuchDough, inTrays } from './dough-amount.ts'
import type { Amount, Asked } from './how-many.ts'
import { howMany, NONE_THERE } from './how-many.ts'
import type { Why } from './why.ts'
import { summedUp, weighedOf } from './why.ts'
import type { WorthGiven } from './worth.ts'
import { worthOf, worthOfPool } from './worth.ts'

/** A day to come: what will probably be asked for, and how much is worth having. Plain values that go through JSON. */
export interface ComingDay {
  /** YYYY-MM-DD, the day on which it is boiled and sold. */
  readonly date: string
  /** Closed by its weekday or by a closure, or sold and closed already: nothing is advised. */
  readonly isClosed: boolean
  /** In the shop's order; those that no variety is made of are left out. */
  readonly doughs: readonly ComingDough[]
}

/** What the counter will ask for, orders besides: fewer than that with one chance in two, four in five, nine in ten. */
export interface Likely {
  readonly likely: number
  readonly careful: number
  readonly plenty: number
}

export interface ComingDough extends Likely {
  readonly doughId: DoughId
  /** Nothing: nothing is advised, and its numbers are orders alone. */
  readonly basis: DayDemand['basis']
  /** Advised for the counter, before what is chilled is taken off: what `setWanted` takes. */
  readonly counter: number
  readonly ordered: number
  /** There by then and inside its window that day. */
  readonly carried: number
  /** counter + ordered − carried, not below 0; the pieces of `why` sum up to it. */
  readonly toMake: number
  readonly why: readonly Why[]
  /** By when it must be decided; null where nobody has said what it is mixed by. */
  readonly decideAtMs: EpochMs | null
  readonly varieties: readonly ComingVariety[]
}

export interface ComingVariety extends Likely {
  readonly varietyId: VarietyId
  readonly basis: DayDemand['basis']
  /** Advised to bake for the counter. */
  readonly counter: number
  readonly ordered: number
  /** Both together; the pieces of `why` sum up to it. */
  readonly bake: number
  readonly why: readonly Why[]
  /** Expected with it: pieces left at the close, and pieces asked for in vain. */
  readonly left: number
  readonly lost: number
}

export interface ComingGiven {
  readonly date: string
  readonly noonOf: NoonOf
  /** Pieces of each dough that will be there for that day, inside their window. */
  readonly carried: ReadonlyMap<DoughId, number>
  readonly orders: readonly {
    readonly doughId: DoughId
    readonly varietyId: VarietyId | null
    readonly pieces: number
  }[]
  /** Of a variety's demand, what the kitchen uses: 0 to 1. */
  readonly kitchen: ReadonlyMap<VarietyId, number>
  /** How many pieces a purchase takes, by variety; left out: not known. */
  readonly sizes: ReadonlyMap<string, Sizes>
  /** How much varieties stray together (`demand/together.ts`). */
  readonly shared: number
  /** The next day that the shop is open, which takes what is left over inside its window; null: nobody knows. */
  readonly next: { readonly date: string; readonly demands: ReadonlyMap<string, DayDemand> } | null
}

/** Chances of the three numbers that are shown: those that past forecasts are judged by (`demand/backtest.ts`). */
export const LIKELY = 0.5
export const CAREFUL = 0.8
export const PLENTY = 0.9

/**
 * Two decisions of one day: how much dough, a day or more ahead, on the pooled demand of what it becomes, where too much
 * is carried over; and how many pieces to bake of each variety, on the day, where too much is day-old.
 * @param ahead by variety; of one that is missing, or of which nothing is known, nothing is advised: only its orders are made
 */
export function comingDay(shop: Shop, ahead: ReadonlyMap<string, DayDemand>, given: ComingGiven): ComingDay {
  const { date } = given
  if (hoursOn(shop, date) === null) return { date, isClosed: true, doughs: [] }
  const demands = knownOf(ahead)
  const varieties = inOrder(shop.varieties)
  const means = new Map(varieties.map(({ id }) => [id, demands.get(id)?.mean ?? 0]))
  const worthGiven = { means, kitchen: given.kitchen }
  const bakes = bakesOf(shop, varieties, demands, { ...given, worthGiven })
  const doughs = inOrder(shop.doughs).flatMap((dough) => {
    const ofIt = varieties.filter(({ doughId }) => doughId === dough.id)
    if (ofIt.length === 0) return []
    const some = ofIt.flatMap(({ id }) => bakes.get(id) ?? [])
    return [comingDough(shop, { dough, varieties: ofIt, demands, given, worthGiven }, some)]
  })
  return { date, isClosed: false, doughs }
}

function knownOf(demands: ReadonlyMap<string, DayDemand>): ReadonlyMap<string, DayDemand> {
  return new Map([...demands].filter(([, { basis }]) => basis !== 'nothing'))
}

/** Of what nothing is known of: nothing is advised. */
const NO_AMOUNT: Amount = { pieces: 0, exact: 0, underCents: 0, overCents: 0, covered: 0 }

/** Dough keeps for days, not for weeks. */
const NEXT_DAYS_MAX = 7

/** The next date on which the shop is open. @returns null when there is none within a week */
export function nextOpenDate(shop: Shop, date: string): string | null {
  for (let days = 1; days <= NEXT_DAYS_MAX; days += 1) {
    const next = dateAfter(date, days)
    if (hoursOn(shop, next) !== null) return next
  }
  return null
}

interface Varieties {
  readonly dough: Dough
  readonly varieties: readonly Variety[]
  readonly demands: ReadonlyMap<string, DayDemand>
  readonly given: ComingGiven
  readonly worthGiven: WorthGiven
}

function comingDough(shop: Shop, of: Varieties, varieties: readonly ComingVariety[]): ComingDough {
  const { dough, given, demands } = of
  const known = of.varieties.flatMap(({ id }) => demands.get(id) ?? [])
  const demand = poolOf(of.varieties, demands, given)
  const asked = {
    demand,
    worth: worthOfPool(shop, of.varieties, of.worthGiven),
    next: nextOf(shop, of),
  }
  const amount = known.length === 0 ? NO_AMOUNT : howMuchDough(asked)
  const ordered = sumOf(given.orders.filter(({ doughId }) => doughId === dough.id))
  const carried = given.carried.get(dough.id) ?? 0
  const counter = known.length === 0 ? 0 : inTrays(asked, amount, carried - ordered, dough.trayPieces)
  const toMake = Math.max(0, counter + ordered - carried)
  const after: Why[] = [
    { code: 'orders', pieces: ordered },
    // What is there beyond what is needed takes nothing off: no dough is unmade.
    { code: 'carried', pieces: toMake - counter - ordered },
    { code: 'unit', pieces: counter - amount.pieces, unit: dough.trayPieces },
  ]
  const formula = dough.formulaId === null ? undefined : shop.formulas.get(dough.formulaId)
  return {
    doughId: dough.id,
    ...likelyOf(demand),
    basis: basisOf(known),
    counter,
    ordered,
    carried,
    toMake,
    why: [...demandWhy(known, amount, asked.worth.isAssumed), ...after.filter(({ pieces }) => pieces !== 0)],
    decideAtMs:
      formula === undefined || formula.retired ? null : decideAt({ shop, noonOf: given.noonOf }, formula, given.date),
    varieties,
  }
}

/** What the next day may take of what is left over; null where the dough is past its window by then. */
function nextOf(shop: Shop, { dough, varieties, given }: Varieties): Pieces | null {
  const { next, date, noonOf } = given
  if (next === null) return null
  if (keptUntilOf(shop, dough.id, date, noonOf) < boilingOn(shop, next.date, noonOf).fromMs) return null
  return poolOf(varieties, knownOf(next.demands), given)
}

function bakesOf(
  shop: Shop,
  varieties: readonly Variety[],
  demands: ReadonlyMap<string, DayDemand>,
  { orders, sizes, worthGiven }: ComingGiven & { readonly worthGiven: WorthGiven },
): ReadonlyMap<VarietyId, ComingVariety> {
  const asked = new Map<VarietyId, Asked>()
  for (const variety of varieties) {
    const demand = demands.get(variety.id)
    asked.set(variety.id, {
      demand: demand === undefined ? negativeBinomial(0, 1) : piecesOfDay(demand, sizes.get(variety.id)),
      stock: NONE_THERE,
      later: null,
      worth: worthOf(shop, variety, worthGiven),
      unit: variety.bakedOn === 'board' ? shop.boards.pieces : 1,
      besides: sumOf(orders.filter(({ varietyId }) => varietyId === variety.id)),
    })
  }
  // Even with nobody asking a piece may earn its cost as day-old: no reason to bake what nobody knows anything of.
  const amounts = howMany(new Map([...asked].filter(([id]) => demands.has(id))), shop.demand.dayOldSells)
  return new Map(
    [...asked].map(([id, one]) => [id, comingVariety(id, one, amounts.get(id) ?? NO_AMOUNT, demands.get(id))]),
  )
}

function comingVariety(id: VarietyId, asked: Asked, amount: Amount, demand: DayDemand | undefined): ComingVariety {
  const { besides: ordered, unit, worth } = asked
  const sold = expectedSold(asked.demand, amount.pieces)
  const after: Why[] = [
    { code: 'orders', pieces: ordered },
    { code: 'unit', pieces: amount.pieces - amount.exact, unit },
  ]
  const known = demand === undefined ? [] : [demand]
  return {
    varietyId: id,
    ...likelyOf(asked.demand),
    basis: basisOf(known),
    counter: amount.pieces,
    ordered,
    bake: amount.pieces + ordered,
    why: [...demandWhy(known, amount, worth.isAssumed), ...after.filter(({ pieces }) => pieces !== 0)],
    left: amount.pieces - sold,
    lost: Math.max(0, asked.demand.mean - sold),
  }
}

function likelyOf(demand: Pieces): Likely {
  return { likely: quantile(demand, LIKELY), careful: quantile(demand, CAREFUL), plenty: quantile(demand, PLENTY) }
}

/** Reasons of the pieces for the counter before rounding. */
function demandWhy(known: readonly DayDemand[], amount: Amount, isAssumed: boolean): readonly Why[] {
  const total = (of: (parts: DayDemand['parts']) => number) => known.reduce((sum, { parts }) => sum + of(parts), 0)
  const usual = total(({ level }) => level)
  const withWeekday = total(({ level, weekday }) => level * weekday)
  const withSpecial = total(({ level, weekday, special }) => level * weekday * special)
  const parts: Why[] = [
    { code: 'usual', pieces: usual },
    { code: 'weekday', pieces: withWeekday - usual, factor: usual === 0 ? 1 : withWeekday / usual },
    { code: 'special', pieces: withSpecial - withWeekday, factor: withWeekday === 0 ? 1 : withSpecial / withWeekday },
  ]
  return summedUp(amount.exact, parts, (pieces) => ({ code: 'sure', pieces, isAssumed, ...weighedOf(amount) }))
}

/** Of several, what is known of most of what is asked for: a new variety does not make a dough a guess. */
function basisOf(known: readonly DayDemand[]): DayDemand['basis'] {
  const all = known.reduce((sum, { mean }) => sum + mean, 0)
  const part = (...some: DayDemand['basis'][]) =>
    known.reduce((sum, { mean, basis }) => (some.includes(basis) ? sum + mean : sum), 0) / all
  if (known.length === 0) return 'nothing'
  if (all === 0 || part('guess') > 1 / 3) return 'guess'
  return part('guess', 'few') > 1 / 3 ? 'few' : 'many'
}

/** What all varieties of a dough are asked for together; of one alone, what it is. */
function poolOf(
  varieties: readonly Variety[],
  demands: ReadonlyMap<string, DayDemand>,
  { shared, sizes }: ComingGiven,
): Pieces {
  const [only, ...others] = varieties
  const known = varieties.flatMap(({ id }) => demands.get(id) ?? [])
  const [first] = known
  if (only === undefined || first === undefined || others.length > 0) return togetherOf(known, shared)
  return piecesOfDay(first, sizes.get(only.id))
}

function sumOf(orders: ComingGiven['orders']): number {
  return orders.reduce((sum, { pieces }) => sum + pieces, 0)
}
