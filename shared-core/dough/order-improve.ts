import { inOne } from './order-contacts.ts'
import type { Line } from './order-line.ts'
import { lineAfter, lineBefore, lineOn, withMixed } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'
import { bitsIn, needsWash } from './order-problem.ts'

/** At most so many mixes are moved together. */
const BLOCK_MOST = 4
/** Moves that shake an order up once no single one makes it better. */
const SHAKES = 3

interface Tried {
  readonly order: readonly Item[]
  readonly cost: Line
}

/**
 * An order made better by moving some mixes that follow each other to elsewhere, as long as that costs less; then shaken
 * up and made better again, from the best so far (iterated local search). Where it goes is drawn from a fixed row of
 * numbers, so that the same mixes get the same order on every screen.
 * @param goal contacts and washes as `inOne` that nothing can be below: with them and nothing late it stops
 * @param triesMost orders that are tried, of some microseconds each
 * Source: Lourenço, Martin and Stützle (2003), Iterated Local Search, Handbook of Metaheuristics (from memory).
 */
export function improved(problem: Problem, from: readonly Item[], goal: number, triesMost: number): readonly Item[] {
  const climb = new Climb(problem, triesMost)
  const draw = drawing()
  let best = climb.climbed({ order: from, cost: lineAfter(problem, from) })
  while (climb.triesLeft > 0 && from.length > 2 && !(best.cost.latenessMs === 0 && inOne(best.cost) <= goal)) {
    let { order } = best
    for (let shake = 0; shake < SHAKES; shake += 1) {
      order = moved(order, draw(order.length), 1 + draw(BLOCK_MOST), draw(order.length))
    }
    const other = climb.climbed({ order, cost: lineAfter(problem, order) })
    if (costCompared(other.cost, best.cost) <= 0) best = other
  }
  return best.order
}

/** Below zero: the first costs less. */
export function costCompared(one: Line, other: Line): number {
  return inOne(one) - inOne(other) || one.latenessMs - other.latenessMs
}

class Climb {
  triesLeft: number
  readonly #problem: Problem

  constructor(problem: Problem, triesMost: number) {
    this.#problem = problem
    this.triesLeft = triesMost
  }

  climbed(from: Tried): Tried {
    let best = from
    for (let better = this.#better(best); better !== null; better = this.#better(best)) best = better
    return best
  }

  /** The first that costs less; null: none, or no more tries. What stands before the move is not gone through again. */
  #better({ order, cost }: Tried): Tried | null {
    const before = linesOf(this.#problem, order)
    for (let size = 1; size <= Math.min(BLOCK_MOST, order.length - 1); size += 1)
      for (let at = 0; at + size <= order.length; at += 1)
        for (let to = 0; to + size <= order.length; to += 1) {
          if (to === at) continue
          if (this.triesLeft <= 0) return null
          const same = Math.min(at, to)
          const start = before[same]
          const tried = moved(order, at, size, to)
          if (start === undefined || costsMore(start, tried, same, inOne(cost))) continue
          this.triesLeft -= 1
          const line = lineOn(this.#problem, start, tried.slice(same))
          if (costCompared(line, cost) < 0) return { order: tried, cost: line }
        }
    return null
  }
}

/** The line before each place of an order. */
function linesOf(problem: Problem, order: readonly Item[]): Line[] {
  let line = lineBefore(problem)
  return order.map((item) => {
    const before = line
    line = withMixed(problem, line, item)
    return before
  })
}

/** Whether contacts and washes alone come to more, times left aside. */
function costsMore(
  { mask: day, bowl, contacts, washes }: Line,
  order: readonly Item[],
  from: number,
  most: number,
): boolean {
  let mask = day
  let last = bowl
  let cost = inOne({ contacts, washes })
  for (let place = from; place < order.length && cost <= most; place += 1) {
    const item = order[place]
    if (item === undefined) break
    const contactMask = mask & ~item.mask
    cost += inOne({ contacts: contactMask === 0 ? 0 : bitsIn(contactMask), washes: needsWash(last, item) ? 1 : 0 })
    mask |= item.mask
    last = item
  }
  return cost > most
}

function moved(order: readonly Item[], at: number, size: number, to: number): readonly Item[] {
  const rest = [...order.slice(0, at), ...order.slice(at + size)]
  return [...rest.slice(0, to), ...order.slice(at, at + size), ...rest.slice(to)]
}

/** Whole numbers below a limit, always the same row: a linear congruence modulo 2^32, of which the upper bits count. */
function drawing(): (below: number) => number {
  let state = 1
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor((state / 0x1_0000_0000) * below)
  }
}
