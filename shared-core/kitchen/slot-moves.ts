import type { Chance } from '../plan/bake-off/chance.ts'
import type { SlotsProblem } from './slots-units.ts'

/** Small changes of an order of units: one unit elsewhere, two swapped, all units of one order together elsewhere. */
export class SlotMoves {
  readonly #problem: SlotsProblem
  readonly #chance: Chance
  readonly #moving: Int32Array

  constructor(problem: SlotsProblem, chance: Chance) {
    this.#problem = problem
    this.#chance = chance
    this.#moving = new Int32Array(problem.units.length)
  }

  /** Changes it in place. @returns the first position that is another than before */
  change(order: Int32Array): number {
    const kind = this.#chance.part()
    if (kind < 0.4) return this.#insert(order)
    if (kind < 0.65) return this.#swap(order)
    return this.#moveOrder(order)
  }

  #insert(order: Int32Array): number {
    const from = this.#chance.index(order.length)
    const to = this.#chance.index(order.length)
    const unit = order[from] ?? 0
    if (from < to) order.copyWithin(from, from + 1, to + 1)
    else order.copyWithin(to + 1, to, from)
    order[to] = unit
    return Math.min(from, to)
  }

  #swap(order: Int32Array): number {
    const one = this.#chance.index(order.length)
    const other = this.#chance.index(order.length)
    const unit = order[one] ?? 0
    order[one] = order[other] ?? 0
    order[other] = unit
    return Math.min(one, other)
  }

  /** Its units come one after another, in the order in which they stood. */
  #moveOrder(order: Int32Array): number {
    const mine = new Set(this.#problem.orders[this.#chance.index(this.#problem.orders.length)]?.units)
    const at = this.#chance.index(order.length)
    let first = order.length
    let kept = 0
    let moved = 0
    for (let place = 0; place < order.length; place += 1) {
      const unit = order[place] ?? 0
      if (mine.has(unit)) {
        this.#moving[moved] = unit
        moved += 1
        first = Math.min(first, place)
      } else {
        order[kept] = unit
        kept += 1
      }
    }
    const to = Math.min(at, kept)
    order.copyWithin(to + moved, to, kept)
    order.set(this.#moving.subarray(0, moved), to)
    return Math.min(first, to)
  }
}
