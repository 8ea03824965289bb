import type { Line } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'

/**
 * Less late than this, the mixes that are still to be mixed or shaped cannot be.
 *
 * One machine at a time, as if nothing else stood in the way, when can the first of them be through at the best, when the
 * second, and so on: at the mixer, at the bench (none sooner than it may be ready), and by the trays' room (each mix takes
 * its trays for its time, in all no more than there are). Of all ways to give these times to the mixes, the sooner time to
 * the sooner due is the least late, as lateness is convex.
 * Source: Chu, C. (1992), A branch-and-bound algorithm to minimize total tardiness with different release dates, Naval
 * Research Logistics 39:265–283, section 2 (from memory).
 */
export function leastLateness({ rules }: Problem, line: Line, rest: readonly Item[]): number {
  const mixer = leastLate(
    through(
      line.mixerFreeMs,
      rest.map(({ task }) => task.mixMs),
    ),
    rest.map(({ task }) => task.dueAtMs - task.waitMs - task.benchMs - task.proofMs),
  )
  const toShape = [
    ...line.waiting.map(({ item, readyMs }) => ({ item, readyMs })),
    ...rest.filter(({ isShaped }) => isShaped).map((item) => ({ item, readyMs: soonestReady(line, item) })),
  ]
  const bench = leastLate(
    throughBench(line.benchFreeMs, toShape),
    toShape.map(({ item: { task } }) => task.dueAtMs - task.proofMs),
  )
  const { proofTrays } = rules
  if (proofTrays === null || bench === 0) return Math.max(mixer, bench)
  const room = leastLate(
    through(
      line.benchFreeMs,
      toShape.map(({ item: { task } }) => Math.min(1, task.trays / proofTrays) * (task.benchMs + task.proofMs)),
    ),
    toShape.map(({ item: { task } }) => task.dueAtMs),
  )
  return Math.max(mixer, bench, room)
}

function soonestReady(line: Line, { task }: Item): number {
  return Math.max(line.mixerFreeMs, task.earliestAtMs) + task.mixMs + task.waitMs
}

/** When a machine that is free from a time on is through with the first, second, … of them at the soonest. */
function through(fromMs: number, takes: readonly number[]): number[] {
  let atMs = fromMs
  return [...takes].sort(ascending).map((takesMs) => {
    atMs += takesMs
    return atMs
  })
}

/** The same where they are not all ready: always at the one with least left to do, left and taken up again at will. */
function throughBench(fromMs: number, jobs: readonly { readonly item: Item; readonly readyMs: number }[]): number[] {
  const byReady = jobs
    .map(({ item, readyMs }) => ({ readyMs, left: item.task.benchMs as number }))
    .sort((a, b) => a.readyMs - b.readyMs)
  const open: { left: number }[] = []
  const times: number[] = []
  let atMs = fromMs
  let next = 0
  while (times.length < jobs.length) {
    for (let job = byReady[next]; job !== undefined && job.readyMs <= atMs; job = byReady[next]) {
      open.push(job)
      next += 1
    }
    const nextMs = byReady[next]?.readyMs ?? Number.POSITIVE_INFINITY
    const shortest = open.reduce<{ left: number } | null>(
      (least, job) => (least === null || job.left < least.left ? job : least),
      null,
    )
    if (shortest === null) {
      atMs = nextMs
      continue
    }
    const spanMs = Math.min(shortest.left, nextMs - atMs)
    atMs += spanMs
    shortest.left -= spanMs
    if (shortest.left > 0) continue
    open.splice(open.indexOf(shortest), 1)
    times.push(atMs)
  }
  return times
}

function leastLate(times: readonly number[], due: readonly number[]): number {
  const soonest = [...due].sort(ascending)
  return times.reduce((sum, atMs, place) => sum + Math.max(0, atMs - (soonest[place] ?? 0)), 0)
}

function ascending(a: number, b: number): number {
  return a - b
}
