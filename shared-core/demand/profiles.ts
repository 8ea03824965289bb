import { assert } from '../support.ts'
import type { ItemGuess, Profile } from './demand.ts'
import { BIN_MINUTES, BINS, BinSums, binOf, presence, usualPartBy } from './intraday.ts'
import type { ItemDay, SalesDay } from './sales-day.ts'

/** Learning weighs half after so many open days: seasons change when people come. */
const HALF_LIFE_DAYS = 60
const KEEP = 0.5 ** (1 / HALF_LIFE_DAYS)
/** What each step of the shrinkage is worth, in purchases a bin: the usual shape, the weekday, group and item. */
const USUAL_WORTH = 100
const KIND_WORTH = 15
const GROUP_WORTH = 15
const ITEM_WORTH = 15
/** An item's day that was cut short is completed by its usual day with this dispersion. */
const CUT_DISPERSION = 4

interface ItemShape {
  readonly sums: BinSums
  /** Decayed sums: days on which it sold, timed pieces of them, and pieces squared. */
  days: number
  pieces: number
  squares: number
}

/**
 * When in the day people ask for what. Of each quarter of an hour an intensity:
 *
 *   shop (the usual shape, then what was sold) × weekday kind × group × item,
 *
 * each factor shrunk to 1 by (pieces + w) / (expected + w), the mean of a gamma–Poisson posterior with mean 1, where
 * expected is what the factors before it say. Pieces teach only the time when the item was there.
 */
export class Profiles {
  readonly #shop = new BinSums()
  readonly #kinds = new Map<string, BinSums>()
  readonly #groups = new Map<string, BinSums>()
  readonly #items = new Map<string, ItemShape>()
  readonly #groupOf: ReadonlyMap<string, string | null>
  #pieces = 0
  #squares = 0

  constructor(guesses: readonly ItemGuess[] = []) {
    this.#groupOf = new Map(guesses.map(({ id, group }) => [id, group]))
  }

  /** Learns from the pieces that have a time. An item cut short counts for the time when it was there. */
  learn(day: SalesDay): void {
    const open = presence(day.openMinute, day.closeMinute)
    const kind = madeAt(this.#kinds, kindOf(day.date), () => new BinSums())
    // Shop and kind forget by day, an item by the days on which it sold: a seasonal one keeps its shape.
    this.#shop.forget(KEEP)
    kind.forget(KEEP)
    this.#pieces *= KEEP
    this.#squares *= KEEP
    for (const group of this.#groups.values()) group.forget(KEEP)
    for (const [id, item] of day.items)
      if (item.offered && item.sold.length > 0) this.#learnItem(id, item, day, open, kind)
  }

  /** An item's profile on a day. An item never seen has its group's, else the shop's. */
  of(itemId: string, group: string | null, date: string, openMinute: number, closeMinute: number): Profile {
    assert(closeMinute > openMinute, `opening hours end after they begin: ${openMinute} to ${closeMinute}`)
    const open = presence(openMinute, closeMinute)
    const intensity = this.#intensity(itemId, group, date, openMinute, closeMinute)
    const points: [number, number][] = [[openMinute, 0]]
    const total = mass(intensity, open)
    let sum = 0
    for (let bin = 0; bin < BINS; bin += 1) {
      const here = (intensity[bin] ?? 0) * (open[bin] ?? 0)
      if ((open[bin] ?? 0) === 0) continue
      sum += here
      points.push([Math.min(closeMinute, (bin + 1) * BIN_MINUTES), Math.min(1, sum / total)])
    }
    points[points.length - 1] = [closeMinute, 1]
    return points
  }

  #learnItem(id: string, item: ItemDay, day: SalesDay, open: Float64Array, kind: BinSums): void {
    const pieces = new Float64Array(BINS)
    const shape = madeAt(this.#items, id, newShape)
    const group = this.#groupOf.get(id) ?? null
    let total = 0
    let squares = 0
    for (const purchase of item.sold) {
      const bin = binOf(purchase.minute, day.openMinute, day.closeMinute)
      pieces[bin] = (pieces[bin] ?? 0) + purchase.pieces
      total += purchase.pieces
      squares += purchase.pieces ** 2
    }
    const there = item.gone.length === 0 ? open : presence(day.openMinute, day.closeMinute, item.gone)
    const intensity = this.#intensity(id, group, day.date, day.openMinute, day.closeMinute)
    const whole = mass(intensity, open)
    const asked = completed(total, mass(intensity, there) / whole, shape)
    shape.sums.forget(KEEP)
    const sums = [this.#shop, kind, shape.sums]
    if (group !== null) sums.push(madeAt(this.#groups, group, () => new BinSums()))
    for (const each of sums) each.add(pieces, there, asked / whole)
    shape.days = shape.days * KEEP + 1
    shape.pieces = shape.pieces * KEEP + total
    shape.squares = shape.squares * KEEP + squares
    this.#pieces += total
    this.#squares += squares
  }

  #intensity(
    itemId: string,
    group: string | null,
    date: string,
    openMinute: number,
    closeMinute: number,
  ): Float64Array {
    const intensity = usualIntensity(openMinute, closeMinute)
    for (let bin = 0; bin < BINS; bin += 1) {
      const usual = intensity[bin] ?? 0
      const worth = USUAL_WORTH
      intensity[bin] = ((this.#shop.pieces[bin] ?? 0) + worth * usual) / ((this.#shop.chances[bin] ?? 0) + worth)
    }
    const shopLump = lumpOf(this.#pieces, this.#squares)
    const item = this.#items.get(itemId)
    sharpen(intensity, this.#kinds.get(kindOf(date)), KIND_WORTH * shopLump)
    if (group !== null) sharpen(intensity, this.#groups.get(group), GROUP_WORTH * shopLump)
    if (item !== undefined) sharpen(intensity, item.sums, ITEM_WORTH * lumpOf(item.pieces, item.squares))
    return intensity
  }
}

/** Multiplies intensities by what the sums say beyond them, by bins with their neighbours. */
function sharpen(intensity: Float64Array, sums: BinSums | undefined, worth: number): void {
  if (sums === undefined) return
  const before = Float64Array.from(intensity)
  for (let bin = 0; bin < BINS; bin += 1) {
    let seen = 0
    let expected = 0
    for (let near = Math.max(0, bin - 2); near <= Math.min(BINS - 1, bin + 2); near += 1) {
      seen += sums.pieces[near] ?? 0
      expected += (sums.chances[near] ?? 0) * (before[near] ?? 0)
    }
    intensity[bin] = ((before[bin] ?? 0) * (seen + worth)) / (expected + worth)
  }
}

/** Pieces that the whole day would have asked for; all that was sold, when the item was there throughout. */
function completed(total: number, part: number, { days, pieces }: ItemShape): number {
  if (part >= 1 - 1e-9) return total
  const usual = days === 0 ? total : pieces / days
  return total + ((1 - part) * (CUT_DISPERSION + total)) / (CUT_DISPERSION / usual + part)
}

function usualIntensity(openMinute: number, closeMinute: number): Float64Array {
  const intensity = new Float64Array(BINS)
  const hours = closeMinute - openMinute
  for (let bin = 0; bin < BINS; bin += 1) {
    const from = Math.min(Math.max(bin * BIN_MINUTES, openMinute), closeMinute - BIN_MINUTES)
    intensity[bin] = usualPartBy((from + BIN_MINUTES - openMinute) / hours) - usualPartBy((from - openMinute) / hours)
  }
  return intensity
}

/** Monday to Friday, Saturday or Sunday: what a week's hours differ by in most shops. */
function kindOf(date: string): string {
  const weekday = new Date(`${date}T00:00:00Z`).getUTCDay()
  return weekday === 0 ? 'sunday' : weekday === 6 ? 'saturday' : 'weekday'
}

function mass(intensity: Float64Array, there: Float64Array): number {
  let sum = 0
  for (let bin = 0; bin < BINS; bin += 1) sum += (intensity[bin] ?? 0) * (there[bin] ?? 0)
  return sum
}

/** Pieces by which evidence comes: customers are independent of each other, the twelve of a dozen are not. */
function lumpOf(pieces: number, squares: number): number {
  return pieces > 0 ? squares / pieces : 1
}

function newShape(): ItemShape {
  return { sums: new BinSums(), days: 0, pieces: 0, squares: 0 }
}

function madeAt<Value>(map: Map<string, Value>, key: string, make: () => Value): Value {
  const found = map.get(key)
  if (found !== undefined) return found
  const made = make()
  map.set(key, made)
  return made
}
