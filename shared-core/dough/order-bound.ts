import type { Line } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'

/**
 * Less late than this, the mixes that are still to be mixed or shaped cannot be.
 *
 * One machine at a time, as if nothing else stood in the way: the k-th mix to leave the mixer leaves it no sooner than the
 * k shortest take together, and the same at the bench. Of all ways to give these times to the mixes, the sooner time to
 * the sooner due is the least late, as lateness is convex.
 * Source: Chu, C. (1992), A branch-and-bound algorithm to minimize total tardiness with different release dates, Naval
 * Research Logistics 39:265–283, section 2 (from memory).
 */
export function leastLateness({ rules }: Problem, line: Line, rest: readonly Item[]): number {
  const mixer = leastLate(
    line.mixerFreeMs,
    rest.map(({ task }) => task.mixMs),
    rest.map(({ task }) => task.dueAtMs - task.waitMs - task.benchMs - task.proofMs),
  )
  const shaped = [...rest.filter(({ isShaped }) => isShaped), ...line.waiting.map(({ item }) => item)]
  const bench = leastLate(
    Math.max(line.benchFreeMs, rules.benchFromMs),
    shaped.map(({ task }) => task.benchMs),
    shaped.map(({ task }) => task.dueAtMs - task.proofMs),
  )
  return Math.max(mixer, bench)
}

function leastLate(fromMs: number, takes: readonly number[], due: readonly number[]): number {
  const shortest = [...takes].sort(ascending)
  const soonest = [...due].sort(ascending)
  let atMs = fromMs
  let lateMs = 0
  for (const [place, takesMs] of shortest.entries()) {
    atMs += takesMs
    lateMs += Math.max(0, atMs - (soonest[place] ?? 0))
  }
  return lateMs
}

function ascending(a: number, b: number): number {
  return a - b
}
