import { isoWeekday } from '../shop/hours.ts'
import { assert } from '../support.ts'
import type { ItemGuess, Profile } from './demand.ts'
import type { OpenBins } from './intraday.ts'
import { BIN_MINUTES, BINS, binOf, Layer, massOf, openBins, usualPartBy } from './intraday.ts'
import type { ItemDay, SalesDay } from './sales-day.ts'

/** Learning weighs half after so many open days: seasons change when people come. On open data 30 to 120 do as well. */
const HALF_LIFE_DAYS = 60
const KEEP = 0.5 ** (1 / HALF_LIFE_DAYS)
/** What layers are worth before anything was seen, in purchases; and of how many bins each side they are seen together. */
const SHOP = { worth: 3, nearBins: 1 }
const KIND = { worth: 60, nearBins: 4 }
const GROUP = { worth: 15, nearBins: 4 }
const ITEM = { worth: 4, nearBins: 4 }
/** An item's day that was cut short is completed by its usual day, known as if its rate had this gamma shape. */
const CUT_SHAPE = 4

interface ItemShape {
  readonly layer: Layer
  /** Sums over the days on which it sold: days, pieces that have a time, and squares of purchases. */
  days: number
  pieces: number
  squares: number
}

/** Intensities by bin, from the usual shape on; and the layers that made each out of the one before. */
interface Steps {
  readonly intensities: readonly Float64Array[]
  readonly layers: readonly Layer[]
}

/** A day's hours with what the shop knows of such a day: the same for all its items. */
interface DayShape {
  readonly key: string
  readonly open: OpenBins
  readonly steps: Steps
}

/** What a day teaches of one item, before it is added. */
interface Reading {
  readonly shape: ItemShape
  readonly steps: Steps
  readonly came: Float64Array
  readonly pieces: number
  readonly squares: number
  readonly there: OpenBins
  /** Pieces that the whole day would have asked for. */
  readonly asked: number
}

/**
 * When in the day people ask for what. Each quarter of an hour has an intensity:
 *
 *   usual shape × shop × weekday kind × group × item,
 *
 * each factor being what was seen over what the factors before it expected at that time, shrunk to 1. As every day is
 * held against what was expected of it then, a finer layer does not hold on to a shape that the shop has left. Pieces
 * teach the time in which the item was there, and only that.
 */
export class Profiles {
  readonly #shop = new Layer(SHOP.nearBins)
  readonly #kinds = new Map<string, Layer>()
  readonly #groups = new Map<string, Layer>()
  readonly #items = new Map<string, ItemShape>()
  readonly #groupOf: ReadonlyMap<string, string | null>
  #pieces = 0
  #squares = 0
  /** The last day asked for, as days are asked for item after item. */
  #latest: DayShape | null = null

  /** @param guesses for the groups of items: alike, and so borrowing from each other */
  constructor(guesses: readonly ItemGuess[] = []) {
    this.#groupOf = new Map(guesses.map(({ id, group }) => [id, group]))
  }

  /** Learns from the pieces that have a time; those that were `unseen` have none. */
  learn(day: SalesDay): void {
    const items = [...day.items].filter(([, { offered, sold }]) => offered && sold.length > 0)
    const shape = this.#dayShape(day.date, day.openMinute, day.closeMinute)
    // What the day is held against must not depend on the order of its items: all are read before any is added.
    const readings = items.map(([id, item]) => this.#read(id, item, day, shape))
    for (const layer of new Set(readings.flatMap(({ steps }) => steps.layers))) layer.forget(KEEP)
    this.#pieces *= KEEP
    this.#squares *= KEEP
    for (const reading of readings) this.#add(reading, shape.open)
    this.#latest = null
  }

  /** An item's profile on a day. An item never seen has its group's, else the shop's. */
  of(itemId: string, group: string | null, date: string, openMinute: number, closeMinute: number): Profile {
    const { open, steps } = this.#dayShape(date, openMinute, closeMinute)
    const intensity = lastOf(this.#withItem(steps, open, itemId, group).intensities)
    const total = massOf(intensity, open)
    const points: [number, number][] = [[openMinute, 0]]
    let sum = 0
    for (let bin = open.first; bin < open.end; bin += 1) {
      sum += (intensity[bin] ?? 0) * (open.there[bin] ?? 0)
      points.push([Math.min(closeMinute, (bin + 1) * BIN_MINUTES), Math.min(1, sum / total)])
    }
    points[points.length - 1] = [closeMinute, 1]
    return points
  }

  #dayShape(date: string, openMinute: number, closeMinute: number): DayShape {
    assert(closeMinute > openMinute, `opening hours end after they begin: ${openMinute} to ${closeMinute}`)
    const kind = kindOf(date)
    const key = `${kind} ${openMinute} ${closeMinute}`
    if (this.#latest?.key === key) return this.#latest
    const open = openBins(openMinute, closeMinute)
    const lump = lumpOf(this.#pieces, this.#squares)
    const usual: Steps = { intensities: [usualIntensity(openMinute, closeMinute)], layers: [] }
    const shop = withLayer(usual, this.#shop, open, SHOP.worth * lump)
    const steps = withLayer(shop, layerAt(this.#kinds, kind, KIND.nearBins), open, KIND.worth * lump)
    this.#latest = { key, open, steps }
    return this.#latest
  }

  #withItem(shop: Steps, open: OpenBins, itemId: string, group: string | null): Steps {
    let steps = shop
    const lump = lumpOf(this.#pieces, this.#squares)
    if (group !== null) {
      steps = withLayer(steps, layerAt(this.#groups, group, GROUP.nearBins), open, GROUP.worth * lump)
    }
    const item = this.#items.get(itemId)
    if (item === undefined) return steps
    return withLayer(steps, item.layer, open, ITEM.worth * lumpOf(item.pieces, item.squares))
  }

  #read(id: string, item: ItemDay, day: SalesDay, { open, steps }: DayShape): Reading {
    const shape = this.#items.get(id) ?? { layer: new Layer(ITEM.nearBins), days: 0, pieces: 0, squares: 0 }
    this.#items.set(id, shape)
    const came = new Float64Array(BINS)
    let pieces = 0
    let squares = 0
    for (const purchase of item.sold) {
      const bin = binOf(purchase.minute, day.openMinute, day.closeMinute)
      came[bin] = (came[bin] ?? 0) + purchase.pieces
      pieces += purchase.pieces
      squares += purchase.pieces ** 2
    }
    const there = item.gone.length === 0 ? open : openBins(day.openMinute, day.closeMinute, item.gone)
    const own = this.#withItem(steps, open, id, this.#groupOf.get(id) ?? null)
    const intensity = lastOf(own.intensities)
    const asked = completed(pieces, massOf(intensity, there) / massOf(intensity, open), shape)
    return { shape, steps: own, came, pieces, squares, there, asked }
  }

  #add({ shape, steps, came, pieces, squares, there, asked }: Reading, open: OpenBins): void {
    for (const [place, layer] of steps.layers.entries()) {
      const before = steps.intensities[place]
      assert(before !== undefined, 'each layer is laid over something')
      layer.add(came, before, there, asked / massOf(before, open))
    }
    shape.days = shape.days * KEEP + 1
    shape.pieces = shape.pieces * KEEP + pieces
    shape.squares = shape.squares * KEEP + squares
    this.#pieces += pieces
    this.#squares += squares
  }
}

function withLayer({ intensities, layers }: Steps, layer: Layer, open: OpenBins, worth: number): Steps {
  return {
    intensities: [...intensities, layer.sharpened(lastOf(intensities), open, worth)],
    layers: [...layers, layer],
  }
}

function lastOf(intensities: readonly Float64Array[]): Float64Array {
  const last = intensities[intensities.length - 1]
  assert(last !== undefined, 'the usual shape comes first')
  return last
}

function usualIntensity(openMinute: number, closeMinute: number): Float64Array {
  const intensity = new Float64Array(BINS)
  const hours = closeMinute - openMinute
  for (let bin = 0; bin < BINS; bin += 1) {
    // A bin that is open in part has the intensity of the whole quarter of an hour inside the hours.
    const from = Math.max(openMinute, Math.min(bin * BIN_MINUTES, closeMinute - BIN_MINUTES))
    intensity[bin] = usualPartBy((from + BIN_MINUTES - openMinute) / hours) - usualPartBy((from - openMinute) / hours)
  }
  return intensity
}

/** Pieces that the whole day would have asked for; all that was sold, when the item was there throughout. */
function completed(total: number, part: number, { days, pieces }: ItemShape): number {
  if (part >= 1 - 1e-9) return total
  const usual = days === 0 ? total : pieces / days
  return total + ((1 - part) * (CUT_SHAPE + total)) / (CUT_SHAPE / usual + part)
}

/** Monday to Friday, Saturday or Sunday: what days differ by in most shops. Common practice, no source. */
function kindOf(date: string): string {
  const weekday = isoWeekday(date)
  return weekday === 7 ? 'sunday' : weekday === 6 ? 'saturday' : 'weekday'
}

/** Pieces by which evidence comes: customers are independent of each other, the twelve of a dozen are not. */
function lumpOf(pieces: number, squares: number): number {
  return pieces > 0 ? squares / pieces : 1
}

function layerAt(layers: Map<string, Layer>, key: string, nearBins: number): Layer {
  const found = layers.get(key)
  if (found !== undefined) return found
  const made = new Layer(nearBins)
  layers.set(key, made)
  return made
}
