import type { Line } from './order-line.ts'
import { lineAfter } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'

/** Below zero: the first costs less. */
export function costCompared(one: Line, other: Line): number {
  return one.contacts - other.contacts || one.washes - other.washes || one.latenessMs - other.latenessMs
}

/** Moves single mixes to where they cost less until none can be. */
export function improved(problem: Problem, from: readonly Item[]): readonly Item[] {
  let order = from
  let cost = lineAfter(problem, order)
  let isBetter = true
  while (isBetter) {
    isBetter = false
    for (let at = 0; at < order.length; at += 1)
      for (let to = 0; to < order.length; to += 1) {
        const tried = moved(order, at, to)
        const line = lineAfter(problem, tried)
        if (costCompared(line, cost) >= 0) continue
        order = tried
        cost = line
        isBetter = true
      }
  }
  return order
}

function moved(order: readonly Item[], at: number, to: number): readonly Item[] {
  const rest = order.filter((_, index) => index !== at)
  return [...rest.slice(0, to), ...order.slice(at, at + 1), ...rest.slice(to)]
}
