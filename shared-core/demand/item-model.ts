import type { Factor } from './factor.ts'
import { addTo, forget, newFactor, shrunk } from './factor.ts'
import type { Level, Prior } from './level.ts'
import { learnLevel, levelOf, newLevel } from './level.ts'
import type { Menu } from './menu.ts'
import { learnMenu, newMenu, onMenu, wasOn } from './menu.ts'
import type { Spread } from './spread.ts'
import { kappaOf, learnSpread, newSpread } from './spread.ts'

/** All that is known of one item's demand by day. */
export interface ItemModel {
  readonly group: string | null
  /** Typed guess of a usual day's pieces. */
  readonly usual: number | null
  readonly level: Level
  readonly spread: Spread
  readonly menu: Menu
  /** Monday first. */
  readonly weekdays: readonly Factor[]
  readonly specials: Map<string, Factor>
  /** Days learnt on which it was on the menu, by belief. */
  days: number
}

/** What the shop as a whole says of a day, which an item's own factors are shrunk to. */
export interface ShopDay {
  /** 0 is Monday. */
  readonly weekday: number
  readonly weekdayFactor: number
  /** What is special about the day, by id; `known` is 0 to 1: how far its factor rests on days seen. */
  readonly specials: readonly { readonly id: string; readonly factor: number; readonly known: number }[]
  readonly kappa: number
  /** Open days since the last one learnt, 1 or more. */
  readonly steps: number
}

/** What a day asks of an item if it is on the menu, and whether it is. */
export interface Expected {
  readonly level: number
  readonly weekday: number
  readonly special: number
  /** level × weekday × special: pieces, on the menu. */
  readonly mean: number
  /** On the menu. */
  readonly dispersion: number
  readonly kappa: number
  readonly lump: number
  /** Chance to be on the menu. */
  readonly on: number
}

/** What a day showed of an item. */
export interface Seen {
  /** Pieces that went. */
  readonly pieces: number
  /** Pieces that would have gone had there been enough, and how sure: the same as `pieces` and 0 on a whole day. */
  readonly wanted: number
  readonly variance: number
  /** Part of the day's demand that it was there for. */
  readonly part: number
}

/** Effective pieces that an item's own weekdays are shrunk to the shop's by: a standard deviation of 16 %. */
const OWN_FACTOR_WORTH = 40
/** A factor learns once the level is known; before that it would learn the level's error. */
const READY_DAYS = 10
/** A level follows a single day no further than 3 standard deviations, once it is known by some days. */
const STEP_MOST_SD = 3
const KNOWN_DAYS = 5
const KEEP_WEEKDAYS = 0.5 ** (1 / 120)
/** Relative variance of what is said without sales: a typed guess is off by half, one from alike items by its whole. */
const GUESS_VARIANCE = 0.25
const NO_GUESS_VARIANCE = 1

export function newItem(group: string | null, usual: number | null): ItemModel {
  return {
    group,
    usual,
    level: newLevel(),
    spread: newSpread(),
    menu: newMenu(),
    weekdays: Array.from({ length: 7 }, newFactor),
    specials: new Map(),
    days: 0,
  }
}

/** @param lump pieces by which the item's sales come, E[s²] / E[s] of purchases of s */
export function expectedOf(item: ItemModel, prior: Prior, lump: number, shop: ShopDay): Expected {
  const level = levelOf(item.level, prior)
  const weekday = shrunk(weekdayOf(item, shop.weekday), OWN_FACTOR_WORTH, shop.weekdayFactor)
  let special = 1
  for (const { id, factor } of shop.specials) {
    const own = item.specials.get(id)
    special *= own === undefined ? factor : shrunk(own, OWN_FACTOR_WORTH, factor)
  }
  const mean = level * weekday * special
  const kappa = kappaOf(item.spread, shop.kappa)
  const unsure =
    (item.usual === null ? NO_GUESS_VARIANCE : GUESS_VARIANCE) * (prior.days / (prior.days + item.level.longDays))
  const lumps = mean > 0 ? (lump - 1) / mean : 0
  return {
    level,
    weekday,
    special,
    mean,
    kappa,
    lump,
    dispersion: 1 / (kappa + lumps + unsure),
    on: onMenu(item.menu, shop.weekday, shop.steps),
  }
}

/** The chance that an item on the menu sells none over a part of the day: (k / (k + mean·part))^k. */
export function noneSold({ mean, dispersion }: Expected, part: number): number {
  return (dispersion / (dispersion + mean * part)) ** dispersion
}

/** How likely the item was on the menu that day, with this chance to have sold none if it was. */
export function shareOf(expected: Expected, { pieces }: Seen): number {
  // By the whole day's chance even where it sold out: a level is not to fall because there was less to sell.
  return wasOn(expected.on, pieces > 0, noneSold(expected, 1))
}

/** Whether its level is known well enough to say something of the shop's days. */
export function isReady({ days }: ItemModel): boolean {
  return days >= READY_DAYS
}

/** Takes in a day. @param share as `shareOf` gives it */
export function learnItem(item: ItemModel, expected: Expected, seen: Seen, shop: ShopDay, share: number): void {
  learnMenu(item.menu, shop.weekday, expected.on, { hasSold: seen.pieces > 0, noneSold: noneSold(expected, seen.part) })
  learnFactors(item, expected, seen, shop, share)
  const isKnown = item.days >= KNOWN_DAYS
  if (isKnown && shop.specials.length === 0) {
    const errorSquared = (seen.wanted - expected.mean) ** 2 + seen.variance
    const { mean, lump } = expected
    learnSpread(item.spread, { mean, lump, shopKappa: shop.kappa }, errorSquared, share)
  }
  const sd = Math.sqrt(expected.mean + expected.mean ** 2 / expected.dispersion)
  const wanted = isKnown ? Math.min(seen.wanted, expected.mean + STEP_MOST_SD * sd + 1) : seen.wanted
  learnLevel(item.level, wanted, expected.weekday * expected.special, share * trustOf(shop))
  item.days += share
}

function learnFactors(item: ItemModel, expected: Expected, seen: Seen, shop: ShopDay, share: number): void {
  for (const factor of item.weekdays) forget(factor, KEEP_WEEKDAYS)
  if (!isReady(item)) return
  const worth = 1 / (1 + expected.mean * expected.kappa)
  const wanted = share * seen.wanted * worth
  if (shop.specials.length === 0) addTo(weekdayOf(item, shop.weekday), wanted, share * expected.level * worth)
  for (const { id, factor: towards } of shop.specials) {
    const own = madeSpecial(item, id)
    const without = expected.mean / shrunk(own, OWN_FACTOR_WORTH, towards)
    addTo(own, wanted, share * without * worth)
  }
}

/** How much of a special day's sales says something of plain days: as much as is known of it already. */
function trustOf({ specials }: ShopDay): number {
  return specials.reduce((trust, { known }) => trust * known, 1)
}

function weekdayOf({ weekdays }: ItemModel, weekday: number): Factor {
  return weekdays[weekday] ?? newFactor()
}

function madeSpecial({ specials }: ItemModel, id: string): Factor {
  const found = specials.get(id)
  if (found !== undefined) return found
  const made = newFactor()
  specials.set(id, made)
  return made
}
