import type { Chance } from '../plan/bake-off/chance.ts'
import type { SlotsDecoder } from './slots-decode.ts'
import { unitOf } from './slots-decode.ts'
import type { SlotsProblem } from './slots-units.ts'

/** So far a move reaches, as a share of all units. */
const REACH = 0.17
/** So many of the moves of whole orders bring one that is late forward. */
const BRING_FORWARD = 0.5
/** Looks for a late order before any is taken. */
const LOOKS = 5

/** Changes of an order of units, in place; each gives the first position that is another than before. */
export class SlotMoves {
  readonly #problem: SlotsProblem
  readonly #chance: Chance
  readonly #reach: number
  readonly #moving: Int32Array
  readonly #isLate: Uint8Array
  readonly #isMine: Uint8Array
  readonly #latestMs: Float64Array

  constructor(problem: SlotsProblem, chance: Chance) {
    const { units, orders } = problem
    this.#problem = problem
    this.#chance = chance
    this.#reach = Math.max(2, Math.round(units.length * REACH))
    this.#moving = new Int32Array(units.length)
    this.#isMine = new Uint8Array(units.length)
    this.#isLate = new Uint8Array(orders.length)
    this.#latestMs = new Float64Array(units.length)
  }

  /** Learns which orders are late, from what was put in last. */
  look(decoder: SlotsDecoder): void {
    const { orders } = this.#problem
    for (let at = 0; at < orders.length; at += 1)
      this.#isLate[at] = decoder.completeMs(at) > (orders[at]?.dueMs ?? 0) ? 1 : 0
  }

  /** All units of one order, one after another as they stood, some way forward or back. */
  moveOrder(order: Int32Array): number {
    const { orders } = this.#problem
    let which = this.#chance.index(orders.length)
    let isForward = this.#chance.part() < 0.5
    if (this.#chance.part() < BRING_FORWARD) {
      isForward = true
      for (let look = 1; look < LOOKS && this.#isLate[which] === 0; look += 1) which = this.#chance.index(orders.length)
    }
    const { units = [] } = orders[which] ?? {}
    for (const unit of units) this.#isMine[unit] = 1
    let first = order.length
    let kept = 0
    let moved = 0
    for (let place = 0; place < order.length; place += 1) {
      const code = order[place] ?? 0
      if (this.#isMine[unitOf(code, this.#problem)] === 1) {
        this.#moving[moved] = code
        moved += 1
        first = Math.min(first, place)
      } else {
        order[kept] = code
        kept += 1
      }
    }
    for (const unit of units) this.#isMine[unit] = 0
    if (moved === 0) return order.length
    const to = this.#away(first, isForward, kept)
    order.copyWithin(to + moved, to, kept)
    for (let at = 0; at < moved; at += 1) order[to + at] = this.#moving[at] ?? 0
    return Math.min(first, to)
  }

  /** One unit elsewhere, or two in each other's place. */
  moveUnit(order: Int32Array): number {
    const from = this.#chance.index(order.length)
    const to = this.#away(from, this.#chance.part() < 0.5, order.length - 1)
    const unit = order[from] ?? 0
    if (this.#chance.part() < 0.5) order[from] = order[to] ?? 0
    else if (from < to) order.copyWithin(from, from + 1, to + 1)
    else order.copyWithin(to + 1, to, from)
    order[to] = unit
    return Math.min(from, to)
  }

  /** One unit to another shelf, or to any. A narrow or wide one may be put where it leaves room for others. */
  moveShelf(order: Int32Array): number {
    const { units, given } = this.#problem
    const at = this.#chance.index(order.length)
    const unit = unitOf(order[at] ?? 0, this.#problem)
    const shelf = this.#chance.index(given.shelves.length + 1) - 1
    const places = given.shelves[shelf]?.freeMs.length ?? Number.POSITIVE_INFINITY
    const needs = units[unit]?.parts.reduce((sum, { slots }) => sum + slots, 0) ?? 0
    order[at] = needs <= places ? unit + units.length * (shelf + 1) : unit
    return at
  }

  /**
   * By the latest that each could begin without its order being complete later, or late: what is not pressed leaves its
   * place to what is. Source: Valls, Ballestín and Quintanilla, Justification and RCPSP, EJOR 165 (2005).
   * @param decoder has put in `order`
   */
  justify(order: Int32Array, decoder: SlotsDecoder): number {
    const { units, orders } = this.#problem
    for (let at = 0; at < units.length; at += 1) {
      const unit = units[at]
      let latestMs = Number.POSITIVE_INFINITY
      for (let part = 0; part < (unit?.parts.length ?? 0); part += 1) {
        const of = unit?.orders[part] ?? 0
        const byMs = Math.max(decoder.completeMs(of), orders[of]?.dueMs ?? 0)
        latestMs = Math.min(latestMs, byMs - (unit?.parts[part]?.bakeMs ?? 0) - (unit?.parts[part]?.afterMs ?? 0))
      }
      this.#latestMs[at] = latestMs
    }
    const latest = (code: number) => this.#latestMs[unitOf(code, this.#problem)] ?? 0
    order.sort((one, other) => latest(one) - latest(other) || one - other)
    return 0
  }

  #away(from: number, isForward: boolean, most: number): number {
    const by = 1 + this.#chance.index(this.#reach)
    return Math.max(0, Math.min(most, isForward ? from - by : from + by))
  }
}
