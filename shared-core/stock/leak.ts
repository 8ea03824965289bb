import type { Habit } from '../day/habit.ts'
import type { State } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import type { Gamma } from './gamma-poisson.ts'
import { updated } from './gamma-poisson.ts'
import type { OpenHours } from './open-hours.ts'
import { openHoursOf, openParts } from './open-hours.ts'

/**
 * The leak: pieces that leave without anybody saying so, as a rate by variety.
 *
 * Most shops do not tap every sale. What counts found missing, over how long, is the only evidence of the rest. It is
 * thin: a rod is counted a few times a day. So each variety's rate is drawn towards the shop's (empirical Bayes): a
 * gamma prior whose mean is the shop's rate times how much of the variety goes through its rod against the others, and
 * whose shape says how much varieties differ. Time is weighed by how busy the shop was, in two ways: by the hour of the
 * day, as counts have shown it, and by what was sold on record since, against the usual.
 * Why not a share of the sales on record alone: a shop that taps nothing has none, and there the leak is everything.
 *
 * All of it is read off integers in the state; nothing is assumed while no count has found anything missing.
 */
export interface Leaks {
  readonly hours: OpenHours
  /** How busy each hour of the day is, 1 being usual; hours that are not in it are usual. */
  readonly weights: ReadonlyMap<number, number>
  /** Purchases in a millisecond of usual time. Its `exposure` is infinite where no leak is known. */
  readonly rateOf: (varietyId: VarietyId) => Gamma
  /** On record as sold today, all varieties. */
  readonly shopSold: number
  /** Pieces on record as sold in a millisecond of usual time. */
  readonly soldPerMs: number
  /** (Gap / doubt)² of past counts, on average: how much wider than reckoned the doubt has to be. */
  readonly wider: number
  /** 1 while no count has been compared yet, towards 0 the more have. */
  readonly ignorance: number
}

/**
 * Pieces of a variety that leave together, a little under three: singles, a few, now and then a dozen of a kind. It is
 * the purchases that are Poisson, so the variance of pieces is this many times their mean. The mean of squares over the
 * mean of the sizes that the demo's customers buy; `wider` puts it right for a shop.
 */
export const PIECES_TOGETHER = 3
/** How unlike varieties are: a gamma of shape 2 has a deviation of 0.7 of its mean. Common practice, no source. */
const VARIETY_SHAPE = 2
/** Pieces that an hour's or a variety's figures need before they weigh as much as what is usual. */
const HOUR_WEIGHS_FROM = 500
const SHARE_WEIGHS_FROM = 12
/** A rate is not told from less time than this. */
const LEAST_MS = 10 * 60_000
/** Counts that have to agree before the doubt follows them. */
const WIDER_FROM_CHECKS = 12
const IGNORANT_CHECKS = 2

/** @returns null before a day is open: nothing leaves then */
export function leaksOf(state: State): Leaks | null {
  const hours = openHoursOf(state)
  if (hours === null) return null
  const habits = [...state.habits.values()]
  const shopSold = sum([...state.stock.values()], (stock) => stock.soldToday)
  const weights = hourWeights(habits)
  const checks = sum(habits, (habit) => habit.checks)
  return {
    hours,
    weights,
    rateOf: rates(state, habits),
    shopSold,
    soldPerMs:
      sum(habits, (habit) => habit.shopSold) /
      Math.max(
        LEAST_MS,
        sum(habits, (habit) => habit.usualMs),
      ),
    wider: (WIDER_FROM_CHECKS + sum(habits, (habit) => habit.squares) / 100) / (WIDER_FROM_CHECKS + checks),
    ignorance: IGNORANT_CHECKS / (IGNORANT_CHECKS + checks),
  }
}

/** Usual time in a span: the time while the shop was open, each hour by its weight. */
export function usualMs({ hours, weights }: Pick<Leaks, 'hours' | 'weights'>, fromMs: number, toMs: number): number {
  return openParts(hours, fromMs, toMs).reduce((ms, part) => ms + part.ms * (weights.get(part.hour) ?? 1), 0)
}

/** How busy each hour is: what counts found missing in it over what would have been, were all hours alike. */
export function hourWeights(habits: readonly Habit[]): ReadonlyMap<number, number> {
  const sums = new Map<number, { missing: number; usual: number }>()
  for (const habit of habits)
    for (const { hour, missing, usual } of habit.hours) {
      const so = sums.get(hour) ?? { missing: 0, usual: 0 }
      sums.set(hour, { missing: so.missing + missing, usual: so.usual + usual })
    }
  return new Map(
    [...sums].map(([hour, { missing, usual }]) => {
      const weight = (HOUR_WEIGHS_FROM + Math.max(0, missing)) / (HOUR_WEIGHS_FROM + usual)
      return [hour, Math.min(HOUR_WEIGHT_MAX, Math.max(HOUR_WEIGHT_MIN, weight))]
    }),
  )
}
const HOUR_WEIGHT_MIN = 0.1
const HOUR_WEIGHT_MAX = 5

/** Each variety's rate: the prior drawn from the shop, updated by its own counts. */
function rates(state: State, habits: readonly Habit[]): Leaks['rateOf'] {
  const ids = new Set<VarietyId>([...state.habits.keys(), ...state.stock.keys()])
  const through = new Map([...ids].map((id) => [id, wentThrough(state, id)]))
  const average = sum([...through.values()], (pieces) => pieces) / Math.max(1, ids.size)
  const likedOf = (id: VarietyId) => (SHARE_WEIGHS_FROM + (through.get(id) ?? 0)) / (SHARE_WEIGHS_FROM + average)
  const missing = Math.max(
    0,
    sum(habits, (habit) => habit.missing),
  )
  const shopRate =
    missing / PIECES_TOGETHER / (LEAST_MS + sum(habits, (habit) => habit.busyMs * likedOf(habit.varietyId)))
  return (id) => {
    if (shopRate === 0) return { shape: VARIETY_SHAPE, exposure: Number.POSITIVE_INFINITY }
    const prior = { shape: VARIETY_SHAPE, exposure: VARIETY_SHAPE / (shopRate * likedOf(id)) }
    const habit = state.habits.get(id)
    if (habit === undefined) return prior
    // A variety of which counts found more than was known leaks nothing.
    return updated(prior, { events: Math.max(0, habit.missing) / PIECES_TOGETHER, exposure: habit.busyMs })
  }
}

/** Pieces of a variety that came to its rod today, and what was sold of it on days before: bakers bake what is liked. */
function wentThrough({ stock, habits }: State, id: VarietyId): number {
  const mine = stock.get(id)
  const habit = habits.get(id)
  const today = mine === undefined ? 0 : piecesOf(mine.lots) + mine.kept + mine.soldToday
  return today + (habit === undefined ? 0 : habit.sold + Math.max(0, habit.missing))
}

function sum<Thing>(things: readonly Thing[], of: (thing: Thing) => number): number {
  return things.reduce((total, thing) => total + of(thing), 0)
}
