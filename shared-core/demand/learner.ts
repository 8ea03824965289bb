import { dateAfter } from '../day/label.ts'
import { isoWeekday } from '../shop/hours.ts'
import { assert } from '../support.ts'
import type { DayDemand, ItemGuess, Profile, RestDemand } from './demand.ts'
import { exposureOf } from './exposure.ts'
import type { Expected, ItemModel, Seen, ShopDay } from './item-model.ts'
import { expectedOf, isReady, learnItem, newItem, noneSold, shareOf } from './item-model.ts'
import type { Prior } from './level.ts'
import { levelOf } from './level.ts'
import { wasOn } from './menu.ts'
import { Mornings } from './mornings.ts'
import { Profiles } from './profiles.ts'
import { restOf } from './rest.ts'
import type { DayAsked, SalesDay, Span } from './sales-day.ts'
import { soldOf } from './sales-day.ts'
import { ShopModel } from './shop-model.ts'
import { usualKappa } from './spread.ts'
import { Together } from './together.ts'
import { trueDemandOf } from './true-demand.ts'

/** Days of sales that a typed guess is worth, that alike items are, and that a piece a day is of which nothing is known. */
const GUESS_DAYS = 3
const ALIKE_DAYS = 1
const UNKNOWN: Prior = { pieces: 1, days: 0.3 }
/** Days on the menu from which on a forecast rests on many: two of each weekday. Common practice, no source. */
const MANY_DAYS = 14
/** Chances of the menu settle within so many open days. */
const STEPS_MOST = 14
/** A single item's spike counts for the shop's factors as four times its mean, so that it does not move all others. */
const SPIKE_MOST = 4

interface Forecast {
  readonly item: ItemModel
  readonly expected: Expected
  readonly demand: DayDemand
}

interface DayForecast {
  /** What was asked for. */
  readonly key: string
  readonly shop: ShopDay
  readonly forecasts: ReadonlyMap<string, Forecast>
}

/**
 * What a shop's days teach of its demand, forward in time: learn a day, then ask for days ahead. By item
 *
 *   mean = on the menu × level × weekday × special day,   variance = lump · mean + κ · mean²,
 *
 * every part shrunk to what the shop, the group or a guess says (`level.ts`, `factor.ts`, `menu.ts`, `spread.ts`). The
 * same days give the same forecast, in whatever order their items and rows come. On open data every constant stands in
 * the middle of a broad range that does alike, on training days as on later ones, so that none is fitted to them.
 */
export class Learner {
  readonly #items = new Map<string, ItemModel>()
  /** Sorted, so that no sum depends on the order in which items came. */
  #ids: readonly string[]
  readonly #shop = new ShopModel()
  readonly #profiles: Profiles
  #lastDate: string | null = null
  readonly #openWeekdays = new Set<number>()
  readonly #mornings = new Mornings()
  readonly #together = new Together()
  /** The forecast that was made last, from what is learnt now. */
  #last: DayForecast | null = null

  constructor(guesses: readonly ItemGuess[]) {
    for (const { id, group, usual } of guesses) this.#items.set(id, newItem(group, usual))
    this.#ids = [...this.#items.keys()].sort()
    this.#profiles = new Profiles(guesses)
  }

  /** @throws AssertionError when the day is not after the last one learnt */
  learn(given: SalesDay): void {
    this.#assertAhead(given)
    this.#meet(given)
    const day = { ...given, items: new Map([...given.items].sort(byId)) }
    const { shop, forecasts } = this.#forecast(day)
    const wanted = this.#wantedOf(day, forecasts)
    const totals = { wanted: 0, plain: 0, expected: 0 }
    const onMenu: { readonly demand: DayDemand; readonly asked: number }[] = []
    for (const [id, { item, expected, demand }] of forecasts) {
      const record = day.items.get(id)
      // An item that never sold and that nobody lists may not have been there yet.
      if (record?.offered === false || (record === undefined && item.days === 0)) continue
      const seen = seenOf(day, id, expected, demand.profile, wanted.get(id) ?? 0)
      if (isReady(item)) onMenu.push({ demand, asked: seen.wanted })
      const share = shareOf(expected, seen)
      if (isReady(item)) {
        totals.wanted += share * Math.min(seen.wanted, SPIKE_MOST * expected.mean + 2 * SPIKE_MOST)
        totals.plain += share * expected.level
        totals.expected += share * expected.mean
      }
      learnItem(item, expected, seen, shop, share)
    }
    this.#shop.learn(shop, totals)
    this.#profiles.learn(day)
    this.#mornings.learn(day, demandsOf(forecasts))
    this.#together.learn(onMenu)
    this.#lastDate = day.date
    this.#last = null
    this.#openWeekdays.add(shop.weekday)
  }

  /** For each item that is known of, what the day will ask of it. @throws AssertionError for a day that is past */
  ahead(asked: DayAsked): ReadonlyMap<string, DayDemand> {
    this.#assertAhead(asked)
    return demandsOf(this.#forecast(asked).forecasts)
  }

  /** How much items stray together; what a sum of them needs besides their own variances (`together.ts`). */
  get shared(): number {
    return this.#together.shared
  }

  /** For each item of `ahead`, what is left of a day that runs. @param soFar what is known by `nowMinute` */
  rest(ahead: ReadonlyMap<string, DayDemand>, soFar: SalesDay, nowMinute: number): ReadonlyMap<string, RestDemand> {
    return restOf(ahead, soFar, nowMinute, this.#mornings)
  }

  /** Of a day that is not learnt yet, what would have gone of each item had none sold out. */
  trueDemand(day: SalesDay): ReadonlyMap<string, number> {
    this.#assertAhead(day)
    const { forecasts } = this.#forecast(day)
    const demands = new Map<string, number>()
    for (const [id, wanted] of this.#wantedOf(day, forecasts)) {
      const forecast = forecasts.get(id)
      const record = day.items.get(id)
      const isSure = forecast === undefined || record === undefined || soldOf(record) > 0
      // Of what sold none nobody knows that it was there to begin with.
      demands.set(id, isSure ? wanted : wanted * onMenuUnsold(forecast, record.gone))
    }
    return demands
  }

  #assertAhead({ date }: DayAsked): void {
    const last = this.#lastDate
    assert(last === null || date > last, `days come in order: ${date} is not after ${last}, which is learnt`)
  }

  /** Items that come up for the first time. */
  #meet(day: SalesDay): void {
    const fresh = [...day.items.keys()].filter((id) => !this.#items.has(id))
    if (fresh.length === 0) return
    this.#last = null
    for (const id of fresh) this.#items.set(id, newItem(null, null))
    this.#ids = [...this.#items.keys()].sort()
  }

  #shopDay({ date, specials }: DayAsked): ShopDay {
    const kappa = usualKappa(this.#ids.flatMap((id) => this.#items.get(id)?.spread ?? []))
    return { ...this.#shop.dayOf(isoWeekday(date) - 1, specials), kappa, steps: this.#stepsTo(date) }
  }

  /** Days from the last one learnt to a date, of weekdays on which the shop has been open. */
  #stepsTo(date: string): number {
    if (this.#lastDate === null) return 1
    let steps = 1
    for (let days = 1; days < STEPS_MOST; days += 1) {
      const between = dateAfter(this.#lastDate, days)
      if (between >= date) break
      if (this.#openWeekdays.has(isoWeekday(between) - 1)) steps += 1
    }
    return steps
  }

  /** What is known of an item without its own sales: a guess, else the group's geometric mean of what sold or was
   * guessed, else next to nothing. */
  #priors(): (item: ItemModel) => Prior {
    const groups = new Map<string, { logs: number; items: number }>()
    for (const id of this.#ids) {
      const item = this.#items.get(id)
      if (item === undefined || item.group === null || (item.days === 0 && item.usual === null)) continue
      const group = groups.get(item.group) ?? { logs: 0, items: 0 }
      groups.set(item.group, group)
      const pieces = item.days === 0 && item.usual !== null ? item.usual : levelOf(item.level, UNKNOWN)
      group.logs += Math.log(Math.max(0.1, pieces))
      group.items += 1
    }
    return ({ group, usual }) => {
      if (usual !== null) return { pieces: usual, days: GUESS_DAYS }
      const alike = group === null ? undefined : groups.get(group)
      return alike === undefined ? UNKNOWN : { pieces: Math.exp(alike.logs / alike.items), days: ALIKE_DAYS }
    }
  }

  /** The same day is asked for again and again, and then learnt. */
  #forecast(asked: DayAsked): DayForecast {
    const { date, openMinute, closeMinute, specials } = asked
    const key = JSON.stringify([date, openMinute, closeMinute, specials])
    if (this.#last?.key !== key) this.#last = { key, ...this.#madeForecast(asked) }
    return this.#last
  }

  #madeForecast(asked: DayAsked): Omit<DayForecast, 'key'> {
    const shop = this.#shopDay(asked)
    const priors = this.#priors()
    const forecasts = new Map<string, Forecast>()
    for (const id of this.#ids) {
      const item = this.#items.get(id)
      if (item === undefined) continue
      const prior = priors(item)
      const expected = expectedOf(item, prior, this.#mornings.lumpOf(id), shop)
      const profile = this.#profiles.of(id, item.group, asked.date, asked.openMinute, asked.closeMinute)
      forecasts.set(id, { item, expected, demand: demandOf(expected, profile, basisOf(item, prior)) })
    }
    return { shop, forecasts }
  }

  /** What would have gone of each item of a day if it was on the menu. */
  #wantedOf(day: SalesDay, forecasts: ReadonlyMap<string, Forecast>): ReadonlyMap<string, number> {
    const onMenu = new Map<string, DayDemand>()
    for (const [id, { expected, demand }] of forecasts) {
      onMenu.set(id, { ...demand, mean: expected.mean, dispersion: expected.dispersion })
    }
    return trueDemandOf(onMenu, day, this.#mornings)
  }
}

function demandOf(expected: Expected, profile: Profile, basis: DayDemand['basis']): DayDemand {
  const { on, mean, dispersion, level, weekday, special } = expected
  return {
    mean: on * mean,
    // The negative binomial with the mean and variance of "none, or what it asks for on the menu".
    dispersion: 1 / ((1 / dispersion + 1) / on - 1),
    profile,
    basis,
    parts: { level: on * level, weekday, special },
  }
}

function basisOf({ days }: ItemModel, prior: Prior): DayDemand['basis'] {
  if (days === 0) return prior === UNKNOWN ? 'nothing' : 'guess'
  return days < MANY_DAYS ? 'few' : 'many'
}

function demandsOf(forecasts: ReadonlyMap<string, Forecast>): ReadonlyMap<string, DayDemand> {
  return new Map([...forecasts].map(([id, { demand }]) => [id, demand]))
}

/** What a day showed of an item, `wanted` as if it was on the menu. */
function seenOf(day: SalesDay, id: string, expected: Expected, profile: Profile, wanted: number): Seen {
  const record = day.items.get(id)
  if (record === undefined) return { pieces: 0, wanted: 0, variance: 0, part: 1 }
  const pieces = soldOf(record)
  const part = exposureOf(profile, record.gone)
  const rest = wanted - pieces
  // Of the gamma–Poisson posterior, whose shape is the dispersion and the pieces.
  return { pieces, wanted, variance: rest + rest ** 2 / (expected.dispersion + pieces), part }
}

function byId([left]: readonly [string, unknown], [right]: readonly [string, unknown]): number {
  return left < right ? -1 : left > right ? 1 : 0
}

/** How likely an item that sold none was on the menu all the same. */
function onMenuUnsold({ expected, demand }: Forecast, gone: readonly Span[]): number {
  return wasOn(expected.on, false, noneSold(expected, exposureOf(demand.profile, gone)))
}
