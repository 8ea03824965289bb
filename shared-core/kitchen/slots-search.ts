import { Chance } from '../plan/bake-off/chance.ts'
import { SlotMoves } from './slot-moves.ts'
import { firstOrders } from './slot-rules.ts'
import type { SlotsDecoder } from './slots-decode.ts'
import type { SlotUnit } from './slots-units.ts'

/** The search draws from it: the same given makes the same plan. */
const SEED = 20_261_127
/** Lateness that a change may cost at first, in mean bakes; it goes down to nothing. Found by trial, as what follows. */
const WARMTH = 0.5
/** Whole orders are moved first, single units in the last part of the tries; sooner where units or orders are few. */
const UNITS_FROM = { many: 0.85, few: 0.4 }
const FEW_UNITS = 12
const FEW_ORDERS = 4
/** So many of the moves of single units are to another shelf, where some need several places. */
const TO_SHELF = { many: 0.1, few: 0.4 }
/** Every so many tries what is not pressed leaves its place to what is. */
const JUSTIFY_EVERY = 25
/** Few units have few orders: so many tries for each pair of them are enough. */
const TRIES_EACH = 200
/** A millisecond of lateness is worth so much of the sum of completion times: that only breaks ties. */
const SUM_WEIGHT = 1e-6
/** One thing more that is made outweighs all lateness. */
const LEFT_OUT_MS = 1e11

/**
 * The order in which to put units in: the best of some dispatching rules, bettered by threshold accepting over moves of
 * whole orders and of units (Dueck and Scheuer, Journal of Computational Physics 90, 1990: simulated annealing without
 * its exponential, which engines may round differently).
 * @returns units by index
 */
export function bestOrder(decoder: SlotsDecoder, triesMax: number): Int32Array {
  const { problem } = decoder
  const tries = Math.min(triesMax, TRIES_EACH * problem.units.length * problem.units.length)
  const search = new Search(decoder)
  for (const order of firstOrders(decoder)) search.offer(order)
  const { units } = problem
  if (units.length < 2 || search.bestCost <= leastCost(decoder)) return search.best
  const warmthMs = (WARMTH * units.reduce((sum, { parts }) => sum + (parts[0]?.bakeMs ?? 0), 0)) / units.length
  const chance = new Chance(SEED)
  const moves = new SlotMoves(problem, chance)
  search.begin(moves)
  const size = units.length <= FEW_UNITS ? 'few' : 'many'
  const unitsFrom = problem.orders.length <= FEW_ORDERS ? 0 : tries * UNITS_FROM[size]
  const toShelf = problem.firstPlace.length > 2 && units.some(({ parts }) => !isPlain(parts)) ? TO_SHELF[size] : 0
  for (let at = 0; at < tries; at += 1) {
    const leewayMs = warmthMs * (1 - at / tries) * chance.part()
    if (at % JUSTIFY_EVERY === JUSTIFY_EVERY - 1) search.attempt((order) => search.justify(order), leewayMs)
    else if (at < unitsFrom) search.attempt((order) => moves.moveOrder(order), leewayMs)
    else if (chance.part() < toShelf) search.attempt((order) => moves.moveShelf(order), leewayMs)
    else search.attempt((order) => moves.moveUnit(order), leewayMs)
  }
  return search.best
}

function isPlain(parts: SlotUnit['parts']): boolean {
  return parts.length === 1 && parts[0]?.slots === 1
}

class Search {
  readonly #decoder: SlotsDecoder
  #moves: SlotMoves | null = null
  #current: Int32Array = new Int32Array(0)
  #currentCost = Number.POSITIVE_INFINITY
  /** The decoder keeps the current order up to there. */
  #keptTo = 0
  #candidate: Int32Array = new Int32Array(0)
  best: Int32Array = new Int32Array(0)
  bestCost = Number.POSITIVE_INFINITY

  constructor(decoder: SlotsDecoder) {
    this.#decoder = decoder
  }

  offer(order: Int32Array): void {
    this.#decoder.put(order, 0, Number.POSITIVE_INFINITY)
    const cost = costOf(this.#decoder)
    if (cost >= this.bestCost) return
    this.best = order
    this.bestCost = cost
  }

  begin(moves: SlotMoves): void {
    this.#moves = moves
    this.#current = Int32Array.from(this.best)
    this.#candidate = Int32Array.from(this.best)
    this.#currentCost = this.bestCost
    this.#keptTo = 0
    moves.look(this.#decoder)
  }

  attempt(change: (order: Int32Array) => number, leewayMs: number): void {
    const from = change(this.#candidate)
    if (from > this.#keptTo) this.#keep()
    const isWhole = this.#decoder.put(this.#candidate, from, this.#currentCost + leewayMs)
    const cost = costOf(this.#decoder)
    if (!isWhole || cost > this.#currentCost + leewayMs) {
      this.#candidate.set(this.#current)
      return
    }
    this.#current.set(this.#candidate)
    this.#currentCost = cost
    this.#moves?.look(this.#decoder)
    this.#keptTo = Math.min(this.#keptTo, from)
    if (cost >= this.bestCost) return
    this.best = Int32Array.from(this.#current)
    this.bestCost = cost
  }

  justify(order: Int32Array): number {
    this.#decoder.put(this.#current, 0, Number.POSITIVE_INFINITY)
    return this.#moves?.justify(order, this.#decoder) ?? 0
  }

  /** What was taken is kept only when a change begins behind it: often the next one begins before. */
  #keep(): void {
    this.#decoder.keep(this.#current, this.#keptTo)
    this.#keptTo = this.#current.length
  }
}

function costOf({ lateMs, sumMs, leftOut }: SlotsDecoder): number {
  return leftOut * LEFT_OUT_MS + lateMs + SUM_WEIGHT * sumMs
}

/** What no order can be better than: each unit goes in as if it were alone. */
function leastCost({ problem }: SlotsDecoder): number {
  const { units, orders, freeMs } = problem
  const soonestMs = freeMs.reduce((least, atMs) => Math.min(least, atMs), Number.POSITIVE_INFINITY)
  return orders.reduce((sum, { dueMs, otherMs, units: some }) => {
    let atMs = otherMs
    for (const at of some) {
      const unit = units[at]
      const startMs = Math.max(unit?.readyMs ?? 0, soonestMs)
      for (const { bakeMs, afterMs } of unit?.parts ?? []) atMs = Math.max(atMs, startMs + bakeMs + afterMs)
    }
    return sum + Math.max(0, atMs - dueMs) + SUM_WEIGHT * atMs
  }, 0)
}
