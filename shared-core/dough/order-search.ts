import { leastLateness } from './order-bound.ts'
import type { ContactsAhead } from './order-contacts.ts'
import { inOne } from './order-contacts.ts'
import type { Line } from './order-line.ts'
import { lineBefore, withMixed, withShaped } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'

export interface Searched {
  /** The best that was found; null: none within the bound. */
  readonly order: readonly Item[] | null
  /** The search came to its end: what was found is the best there is, and the first by rank among the best. */
  readonly isWhole: boolean
}

/**
 * The least late of the orders with the fewest contacts and washes, by branch and bound.
 *
 * It goes through the orders by rank, one mix after another, and leaves a beginning
 * - from which the fewest contacts and washes cannot be reached any more (`ContactsAhead`, exact);
 * - that cannot come within the bound, by what mixer and bench can do at the best (`leastLateness`);
 * - that is no better in anything than one with the same mixes, the same class last, which failed before.
 * Mixes of one kind are taken by rank only. Each order found lowers the bound to one below, so that the last one found is
 * the best, and by rank the first of them.
 * @param boundMs lateness of an order that is known: as late is good enough
 * @param stepsMost after so many steps it stops, not whole
 */
export function searched(problem: Problem, ahead: ContactsAhead, boundMs: number, stepsMost: number): Searched {
  const search = new Search(problem, ahead, boundMs, stepsMost)
  search.goOn(lineBefore(problem), null, ahead.whole)
  return { order: search.best, isWhole: search.stepsLeft > 0 }
}

/** Failed beginnings that are compared with, of the same mixes: more cost more time than they spare (measured). */
const FAILED_MOST = 16

class Search {
  best: readonly Item[] | null = null
  stepsLeft: number
  readonly #problem: Problem
  readonly #ahead: ContactsAhead
  readonly #least: number
  /** Ready times come in the order of mixing: an earlier free mixer is never worse. */
  readonly #isEvenWait: boolean
  readonly #order: Item[] = []
  readonly #used: boolean[]
  readonly #failed = new Map<string, Line[]>()
  #boundMs: number

  constructor(problem: Problem, ahead: ContactsAhead, boundMs: number, stepsMost: number) {
    this.#problem = problem
    this.#ahead = ahead
    this.#least = ahead.least(ahead.whole, null)
    this.#isEvenWait = new Set(problem.items.filter((item) => item.isShaped).map(({ task }) => task.waitMs)).size <= 1
    this.#used = problem.items.map(() => false)
    this.#boundMs = boundMs
    this.stepsLeft = stepsMost
  }

  goOn(before: Line, last: Item | null, left: number): void {
    this.stepsLeft -= 1
    const rest = this.#problem.items.filter(({ rank }) => this.#used[rank] !== true)
    const nextMs = rest.reduce(
      (soonest, { task }) => Math.min(soonest, task.mixMs + task.waitMs),
      Number.POSITIVE_INFINITY,
    )
    const line = withShaped(this.#problem, before, before.mixerFreeMs + nextMs)
    if (rest.length === 0) {
      this.#found(line)
      return
    }
    const soonestMs = Math.min(line.waiting[0]?.readyMs ?? Number.POSITIVE_INFINITY, line.mixerFreeMs + nextMs)
    const here = { ...line, benchFreeMs: Math.max(line.benchFreeMs, soonestMs) }
    if (line.latenessMs + leastLateness(this.#problem, here, rest) > this.#boundMs) return
    const key = `${rest.map(({ kind }) => kind).join(' ')}|${last?.class ?? -1}`
    const failed = this.#failed.get(key) ?? []
    if (failed.some((one) => this.#isNoBetter(here, one))) return
    const tried = new Set<number>()
    for (const item of rest) {
      if (this.stepsLeft <= 0) return
      if (tried.has(item.kind)) continue
      tried.add(item.kind)
      const after = withMixed(this.#problem, line, item)
      const leftAfter = this.#ahead.without(left, item)
      if (inOne(after) + this.#ahead.least(leftAfter, item) > this.#least) continue
      this.#used[item.rank] = true
      this.#order.push(item)
      this.goOn(after, item, leftAfter)
      this.#order.pop()
      this.#used[item.rank] = false
    }
    if (this.stepsLeft > 0) this.#failed.set(key, [here, ...failed.slice(0, FAILED_MOST - 1)])
  }

  #found(line: Line): void {
    if (line.latenessMs > this.#boundMs) return
    this.best = [...this.#order]
    this.#boundMs = line.latenessMs - 1
  }

  /** Whatever follows, the one comes out no less late than the other, which came out too late. */
  #isNoBetter(one: Line, other: Line): boolean {
    if (one.latenessMs < other.latenessMs || one.benchFreeMs < other.benchFreeMs) return false
    if (this.#isEvenWait ? one.mixerFreeMs < other.mixerFreeMs : one.mixerFreeMs !== other.mixerFreeMs) return false
    return isSameWaiting(one, other) && isFuller(one, other)
  }
}

/** Those who wait are of the same kinds and ready at the same times, so that the bench takes them alike. */
function isSameWaiting({ waiting: some }: Line, { waiting: others }: Line): boolean {
  return (
    some.length === others.length &&
    some.every(
      ({ item, readyMs }, place) => item.kind === others[place]?.item.kind && readyMs === others[place]?.readyMs,
    )
  )
}

/** At no time from when the one's bench is free have trays more room. */
function isFuller({ proofing: some, benchFreeMs: fromMs }: Line, { proofing: others }: Line): boolean {
  const standing = (list: Line['proofing'], atMs: number) =>
    list.reduce((sum, { untilMs, trays }) => sum + (untilMs > atMs ? trays : 0), 0)
  const times = [fromMs, ...some.map(({ untilMs }) => untilMs)]
  return times.every((atMs) => standing(some, Math.max(atMs, fromMs)) >= standing(others, Math.max(atMs, fromMs)))
}
