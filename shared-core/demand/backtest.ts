import type { DayDemand, Demand, ItemGuess } from './demand.ts'
import { exposureOf, partBy } from './exposure.ts'
import { Learner } from './learner.ts'
import type { Pieces } from './pieces.ts'
import { negativeBinomial, quantile } from './pieces.ts'
import type { ItemDay, SalesDay } from './sales-day.ts'
import { soldOf } from './sales-day.ts'
import type { Simple } from './same-weekdays.ts'
import { SameWeekdays } from './same-weekdays.ts'

/**
 * How good the forecasts would have been: the days are walked through in order, each is forecast from those before it,
 * and only then learnt. Nothing looks ahead, so a later day changes nothing that is said of an earlier one.
 *
 * What was asked for on a day that sold out is nobody's knowledge. It is estimated, in part by the very forecast that is
 * judged here, so such rows carry `isEstimated` and are told apart.
 */
export interface BacktestAsked {
  readonly guesses: readonly ItemGuess[]
  /** Days before this date are learnt, not judged. */
  readonly judgedFrom: string
  /** Minutes at which the rest of the day is forecast too, of days from `restFrom` on. */
  readonly restMinutes: readonly number[]
  readonly restFrom: string
}

export interface WalkedDay {
  readonly day: SalesDay
  /** By item, pieces that would have gone had there been any to the end; as many as went where it did not sell out. */
  readonly asked: ReadonlyMap<string, number>
  readonly judged: readonly Judged[]
  readonly rests: readonly JudgedRest[]
}

/** One item's forecast of one day, and what came. */
export interface Judged {
  readonly itemId: string
  readonly date: string
  /** Pieces asked for, rounded. */
  readonly asked: number
  readonly sold: number
  readonly isEstimated: boolean
  readonly demand: Pick<Demand, 'mean' | 'dispersion'>
  readonly said: Said
  readonly simple: Simple | null
}

/** The same of the part of the day after a minute. */
export interface JudgedRest extends Omit<Judged, 'demand' | 'sold'> {
  readonly minute: number
}

/** Quantiles that were said, and the part of the days that each should hold by the model's own reckoning. */
export interface Said {
  readonly mean: number
  readonly q10: number
  readonly q50: number
  readonly q80: number
  readonly q90: number
  /** P(asked ≤ q). At least the quantile's own part, and more where pieces are few: they come whole. */
  readonly holds: { readonly q50: number; readonly q80: number; readonly q90: number }
  /** P(q10 ≤ asked ≤ q90). */
  readonly inside: number
}

/** An item of which less is expected, and of which none was sold, is not on the menu: it says nothing of a forecast. */
const MEAN_MIN = 0.05

/**
 * One step for each day, so that long histories can be walked in pieces.
 * @param days in order of their dates; @throws AssertionError when they are not
 */
export function* walkForward(days: Iterable<SalesDay>, asked: BacktestAsked): Generator<WalkedDay, void> {
  const learner = new Learner(asked.guesses)
  const weekdays = new SameWeekdays()
  for (const day of days) {
    const ahead = learner.ahead(day)
    const demands = learner.trueDemand(day)
    const isJudged = day.date >= asked.judgedFrom
    const seen = { day, ahead, demands, weekdays }
    yield {
      day,
      asked: demands,
      judged: isJudged ? judgedDay(seen) : [],
      rests: day.date >= asked.restFrom ? judgedRests(seen, learner, asked.restMinutes) : [],
    }
    for (const [id, item] of day.items) {
      if (item.offered) weekdays.note(id, day.date, noted(item, asked.restMinutes))
    }
    learner.learn(day)
  }
}

interface Seen {
  readonly day: SalesDay
  readonly ahead: ReadonlyMap<string, DayDemand>
  readonly demands: ReadonlyMap<string, number>
  readonly weekdays: SameWeekdays
}

function judgedDay({ day, ahead, demands, weekdays }: Seen): Judged[] {
  return [...ahead].flatMap(([itemId, demand]): Judged[] => {
    const item = day.items.get(itemId) ?? NONE_SOLD
    const pieces = Math.round(demands.get(itemId) ?? 0)
    if (!item.offered || (pieces === 0 && demand.mean < MEAN_MIN)) return []
    const simple = weekdays.simple(itemId, day.date)
    const isEstimated = item.gone.length > 0
    const sold = soldOf(item)
    // Without its profile: a year of these is kept.
    const { mean, dispersion } = demand
    return [
      {
        ...{ itemId, date: day.date, asked: pieces, sold, isEstimated },
        ...{ demand: { mean, dispersion }, said: saidBy(demand), simple },
      },
    ]
  })
}

function judgedRests(seen: Seen, learner: Learner, minutes: readonly number[]): JudgedRest[] {
  const { day, ahead } = seen
  return minutes.flatMap((minute, place) => {
    if (minute <= day.openMinute || minute >= day.closeMinute) return []
    const rests = learner.rest(ahead, upTo(day, minute), minute)
    return [...rests].flatMap(([itemId, rest]): JudgedRest[] => {
      const item = day.items.get(itemId) ?? NONE_SOLD
      const demand = ahead.get(itemId)
      // Of what was gone by then and stayed so nobody can say what would have been asked for.
      if (demand === undefined || !item.offered || isGoneFrom(item, minute, day.closeMinute)) return []
      const pieces = Math.round(askedAfter(item, demand, seen.demands.get(itemId) ?? 0, minute))
      if (pieces === 0 && rest.mean < MEAN_MIN) return []
      const isEstimated = item.gone.some(({ toMinute }) => toMinute > minute)
      const simple = seen.weekdays.simple(itemId, day.date, place)
      return [{ itemId, date: day.date, minute, asked: pieces, isEstimated, said: saidBy(rest), simple }]
    })
  })
}

const NONE_SOLD: ItemDay = { sold: [], unseen: 0, gone: [], offered: true }

/** What a forecast says in whole pieces. */
export function saidBy({ mean, dispersion }: Pick<Demand, 'mean' | 'dispersion'>): Said {
  const pieces: Pieces = negativeBinomial(mean, dispersion)
  const at = (part: number) => quantile(pieces, part)
  const [q10, q50, q80, q90] = [at(0.1), at(0.5), at(0.8), at(0.9)]
  const holds = { q50: pieces.cdf(q50), q80: pieces.cdf(q80), q90: pieces.cdf(q90) }
  return { mean, q10, q50, q80, q90, holds, inside: holds.q90 - pieces.cdf(q10 - 1) }
}

/** As the day stood at a minute. What went without a time is not known before somebody counts. */
function upTo(day: SalesDay, minute: number): SalesDay {
  const items = [...day.items].map(([id, item]): [string, ItemDay] => {
    const sold = item.sold.filter((purchase) => purchase.minute < minute)
    const gone = item.gone
      .filter(({ fromMinute }) => fromMinute < minute)
      .map(({ fromMinute, toMinute }) => ({ fromMinute, toMinute: Math.min(toMinute, minute) }))
    return [id, { sold, gone, unseen: 0, offered: item.offered }]
  })
  return { ...day, items: new Map(items) }
}

function isGoneFrom({ gone }: ItemDay, minute: number, closeMinute: number): boolean {
  return gone.some(({ fromMinute, toMinute }) => fromMinute <= minute && toMinute >= closeMinute)
}

/** Sold after the minute, with the parts of what went without a time and of what was lost that came after it. */
function askedAfter(item: ItemDay, { profile }: DayDemand, asked: number, minute: number): number {
  const lost = asked - soldOf(item)
  const gone = 1 - exposureOf(profile, item.gone)
  const goneBefore = partBy(profile, minute) - exposureOf(profile, item.gone, minute)
  const lostAfter = gone <= 0 ? 0 : lost * (1 - goneBefore / gone)
  return Math.max(0, soldAfter(item, minute) + item.unseen * (1 - partBy(profile, minute)) + lostAfter)
}

function noted(item: ItemDay, minutes: readonly number[]) {
  return { sold: soldOf(item), soldAfter: minutes.map((minute) => soldAfter(item, minute)) }
}

function soldAfter({ sold }: ItemDay, minute: number): number {
  return sold.reduce((sum, purchase) => sum + (purchase.minute >= minute ? purchase.pieces : 0), 0)
}
