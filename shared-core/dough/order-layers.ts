import type { Beginning } from './order-graph.ts'
import { latenessAhead } from './order-graph.ts'
import type { Line } from './order-line.ts'
import { lineBefore, withMixed, withShaped } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'
import { needsWash } from './order-problem.ts'
import type { Searched } from './order-search.ts'
import { isWorse } from './order-worse.ts'

/** Beginnings of one length that are gone on from when it would take too long to go on from all. */
const KEPT_MOST = 120

/** What takes about as long as making a beginning one longer (measured): mixes ruled out at sight, and comparisons. */
const RULED_OUT_PER_STEP = 4
const COMPARED_PER_STEP = 12

/** Some mixes in their order, and the room after them. */
export interface State {
  readonly at: Beginning
  readonly line: Line
  /** From when the bench may take the next. */
  readonly benchMs: number
  /** Lateness of all that is mixed, if the bench takes each as soon as it is ready. */
  readonly soonestMs: number
  /** Less late than this no order is that goes on from here. */
  readonly leastMs: number
  /** Apart from all else, so that only this is kept of a beginning that was gone on from. */
  readonly path: Path | null
}

interface Path {
  readonly item: Item
  readonly from: Path | null
}

/**
 * The least late of the orders with the fewest contacts and washes, by dynamic programming over sets of mixes.
 *
 * It goes on from all beginnings of one length to those that are one longer, and leaves what cannot come within the bound
 * (`latenessAhead`) or, of those with the same mixes and the same class last, is worse than another (`isWorse`). They stay
 * in the order of ranks, so that of the best orders the first by rank is found.
 * @param problem of a room that always has space for trays
 * @param at of `beginningsOf`
 * @param boundMs lateness of an order that is known: as late is good enough
 * @param stepsMost after so many steps only the most promising beginnings are gone on from, and the search is not whole
 */
export function layered(problem: Problem, at: Beginning, boundMs: number, stepsMost: number): Searched {
  return new Layers(problem, boundMs, stepsMost).searched(at)
}

class Layers {
  readonly #problem: Problem
  readonly #boundMs: number
  #stepsLeft: number

  constructor(problem: Problem, boundMs: number, stepsMost: number) {
    this.#problem = problem
    this.#boundMs = boundMs
    this.#stepsLeft = stepsMost
  }

  searched(at: Beginning): Searched {
    const line = lineBefore(this.#problem)
    const { benchFreeMs: benchMs } = line
    let layer: readonly State[] = [{ at, line, benchMs, soonestMs: 0, leastMs: 0, path: null }]
    let isWhole = true
    for (const _ of this.#problem.items) {
      const next = this.#longer(layer)
      if (next === null) isWhole = false
      layer = next ?? this.#longer(promising(layer), Number.POSITIVE_INFINITY) ?? []
    }
    const best = layer.reduce<State | null>(
      (least, state) => (least === null || state.line.latenessMs < least.line.latenessMs ? state : least),
      null,
    )
    return { order: best === null ? null : orderOf(best.path), isWhole }
  }

  /** All that are one longer; null: there are no more steps to say so. */
  #longer(layer: readonly State[], stepsMost = this.#stepsLeft): State[] | null {
    const fronts = new Map<Beginning, State[]>()
    const next: State[] = []
    const dropped = new Set<State>()
    let steps = 0
    for (const from of layer) {
      steps += from.at.next.length / RULED_OUT_PER_STEP
      if (steps > stepsMost) return null
      for (const { item, to } of from.at.next) {
        const state = this.#after(from, item, to)
        if (state === null) continue
        steps += 1
        const front = fronts.get(to)
        if (front === undefined) fronts.set(to, [state])
        else {
          steps += front.length / COMPARED_PER_STEP
          if (!this.#joins(front, state, dropped)) continue
        }
        next.push(state)
      }
    }
    this.#stepsLeft -= steps
    return dropped.size === 0 ? next : next.filter((state) => !dropped.has(state))
  }

  /** Among those with the same mixes, unless one of them is as good; those that are worse are dropped. */
  #joins(front: State[], state: State, dropped: Set<State>): boolean {
    for (const other of front) if (isWorse(state, other, false)) return false
    for (let place = front.length - 1; place >= 0; place -= 1) {
      const other = front[place]
      if (other === undefined || !isWorse(other, state, true)) continue
      dropped.add(other)
      front.splice(place, 1)
    }
    front.push(state)
    return true
  }

  /** null: it cannot come within the bound. */
  #after(from: State, item: Item, at: Beginning): State | null {
    const { mixMs, waitMs, earliestAtMs } = item.task
    const startMs = from.line.mixerFreeMs + (needsWash(from.line.bowl, item) ? this.#problem.rules.washMs : 0)
    const readyMs = Math.max(startMs, earliestAtMs) + mixMs + waitMs
    const hopeMs = from.soonestMs + lateAtSoonest(item, readyMs) + latenessAhead(at, from.line.benchFreeMs)
    if (hopeMs > this.#boundMs) return null
    const mixed = withMixed(this.#problem, from.line, item)
    const nextMs = mixed.mixerFreeMs + at.soonestMs
    const line = withShaped(this.#problem, mixed, nextMs)
    let soonestMs = line.latenessMs
    for (const { item: one, readyMs } of line.waiting) soonestMs += lateAtSoonest(one, readyMs)
    const leastMs = soonestMs + latenessAhead(at, line.benchFreeMs)
    if (leastMs > this.#boundMs) return null
    const firstMs = Math.min(line.waiting[0]?.readyMs ?? Number.POSITIVE_INFINITY, nextMs)
    const benchMs = at.rest.length === 0 ? line.benchFreeMs : Math.max(line.benchFreeMs, firstMs)
    return { at, line, benchMs, soonestMs, leastMs, path: { item, from: from.path } }
  }
}

/** Those from which least lateness can be hoped for. */
function promising(layer: readonly State[]): readonly State[] {
  const kept = new Set([...layer].sort((a, b) => a.leastMs - b.leastMs).slice(0, KEPT_MOST))
  return layer.filter((state) => kept.has(state))
}

/** How late it is if the bench takes it as soon as it is ready. */
export function lateAtSoonest({ task: { benchMs, proofMs, dueAtMs } }: Item, readyMs: number): number {
  return Math.max(0, readyMs + benchMs + proofMs - dueAtMs)
}

function orderOf(path: Path | null): Item[] {
  const order: Item[] = []
  for (let one = path; one !== null; one = one.from) order.push(one.item)
  return order.reverse()
}
