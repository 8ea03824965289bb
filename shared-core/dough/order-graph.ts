import type { ContactsAhead } from './order-contacts.ts'
import { inOne, washesOf } from './order-contacts.ts'
import type { Item, Problem, Residue } from './order-problem.ts'
import { bitsIn, needsWash } from './order-problem.ts'

/** Points of time at which the bench may be free that the lateness ahead is worked out for: finer tells hardly more. */
const BENCH_TIMES = 32

/** All beginnings with the same mixes and the same class in the bowl, from which the fewest contacts and washes are kept. */
export interface Beginning {
  readonly rest: readonly Item[]
  /** What may be mixed next. */
  readonly next: readonly { readonly item: Item; readonly to: Beginning }[]
  /** From when the mixer is free, the soonest that one of the rest may be ready. */
  readonly soonestMs: number
  /** From when the mixer is free, the longest it may take to mix the rest, once all of them may begin. */
  readonly mixerMs: number
  /** By then all of the rest may begin. */
  readonly earliestMs: number
  /** All of the rest wait alike. */
  readonly isEvenWait: boolean
  /** Least lateness of the rest, by when the bench is free: `benchFromMs` and every `benchStepMs` later. */
  readonly latenessMs: Float64Array
  readonly benchFromMs: number
  readonly benchStepMs: number
}

/** Less late than this the rest cannot be. */
export function latenessAhead({ latenessMs, benchFromMs, benchStepMs }: Beginning, benchFreeMs: number): number {
  const place = Math.floor((benchFreeMs - benchFromMs) / benchStepMs)
  return latenessMs[Math.max(0, Math.min(place, BENCH_TIMES - 1))] ?? 0
}

/**
 * The beginnings of a day, each with the least lateness ahead of it.
 *
 * That is exact of a room where there is always space for trays, where the bench has those doughs only that wait as long
 * as most do, and the others pass it by: these come to the bench in the order of mixing, so that for each set of mixes it
 * is enough to know when the bench is free (dynamic programming over subsets; times of the bench rounded down).
 * Source: Held and Karp (1962), A dynamic programming approach to sequencing problems, SIAM Journal 10:196–210 (from memory).
 */
export function beginningsOf(problem: Problem, ahead: ContactsAhead): Beginning {
  return new Graph(problem, ahead).beginning(0, ahead.whole, null, problem.items, 0)
}

class Graph {
  readonly #problem: Problem
  readonly #ahead: ContactsAhead
  readonly #known = new Map<number, Beginning>()
  readonly #mostWaitMs: number
  readonly #leadMs: number
  readonly #stepMs: number
  readonly #washes: number

  constructor(problem: Problem, ahead: ContactsAhead) {
    this.#problem = problem
    this.#ahead = ahead
    this.#washes = washesOf(ahead.least(ahead.whole, null))
    this.#mostWaitMs = mostWait(problem.items)
    const group = problem.items.filter((item) => this.#isInGroup(item))
    this.#leadMs = this.#mostWaitMs + Math.min(...group.map(({ task }) => task.mixMs))
    this.#stepMs = Math.max(1, Math.ceil(group.reduce((sum, { task }) => sum + task.benchMs, 0) / BENCH_TIMES))
  }

  /**
   * @param mask of the ranks that are mixed
   * @param left of `ContactsAhead`
   * @param mixedMs time in the mixer of what is mixed
   */
  beginning(mask: number, left: number, last: Item | null, rest: readonly Item[], mixedMs: number): Beginning {
    const key = mask * (this.#problem.classes.length + 1) + (last === null ? 0 : last.class + 1)
    const known = this.#known.get(key)
    if (known !== undefined) return known
    const { rules, bowl } = this.#problem
    const washesLeft = washesOf(this.#ahead.least(left, last))
    const atMs = rules.mixerFromMs + mixedMs + (this.#washes - washesLeft) * rules.washMs
    const next = this.#next(mask, left, last, rest, mixedMs)
    let soonestMs = Number.POSITIVE_INFINITY
    let mixerMs = washesLeft * rules.washMs
    let earliestMs = 0
    for (const { task } of rest) {
      soonestMs = Math.min(soonestMs, task.mixMs + task.waitMs)
      mixerMs += task.mixMs
      earliestMs = Math.max(earliestMs, task.earliestAtMs)
    }
    const found: Beginning = {
      rest,
      next,
      soonestMs,
      mixerMs,
      earliestMs,
      isEvenWait: isEvenWait(rest),
      latenessMs: this.#lateness(next, last ?? bowl, atMs),
      benchFromMs: atMs + this.#leadMs,
      benchStepMs: this.#stepMs,
    }
    this.#known.set(key, found)
    return found
  }

  /** Of mixes of one kind the first by rank only. */
  #next(mask: number, left: number, last: Item | null, rest: readonly Item[], mixedMs: number): Beginning['next'] {
    const { items, dayMask, bowl } = this.#problem
    let day = dayMask
    for (const item of items) if ((mask & (1 << item.rank)) !== 0) day |= item.mask
    const least = this.#ahead.least(left, last)
    const next: { readonly item: Item; readonly to: Beginning }[] = []
    for (const item of rest) {
      if (rest.find(({ kind }) => kind === item.kind) !== item) continue
      const leftAfter = this.#ahead.without(left, item)
      const washes = needsWash(last ?? bowl, item) ? 1 : 0
      const own = inOne({ contacts: bitsIn(day & ~item.mask), washes })
      if (own + this.#ahead.least(leftAfter, item) > least) continue
      const others = rest.filter((one) => one !== item)
      const to = this.beginning(mask | (1 << item.rank), leftAfter, item, others, mixedMs + item.task.mixMs)
      next.push({ item, to })
    }
    return next
  }

  #lateness(next: Beginning['next'], bowl: Residue | null, atMs: number): Float64Array {
    const stepMs = this.#stepMs
    const fromMs = atMs + this.#leadMs
    const least = new Float64Array(BENCH_TIMES)
    if (next.length === 0) return least
    least.fill(Number.POSITIVE_INFINITY)
    for (const { item, to } of next) {
      const { earliestAtMs, mixMs, waitMs, benchMs, proofMs, dueAtMs } = item.task
      const washMs = needsWash(bowl, item) ? this.#problem.rules.washMs : 0
      const readyMs = Math.max(atMs + washMs, earliestAtMs) + mixMs + waitMs
      const isPassing = !this.#isInGroup(item)
      const lateMs = Math.max(0, readyMs + benchMs + proofMs - dueAtMs)
      const inTimeMs = dueAtMs - proofMs
      const { latenessMs, benchFromMs } = to
      for (let place = 0; place < BENCH_TIMES; place += 1) {
        const freeMs = fromMs + place * stepMs
        const endMs = isPassing ? freeMs : Math.max(readyMs, freeMs) + benchMs
        const after = Math.max(0, Math.min(Math.floor((endMs - benchFromMs) / stepMs), BENCH_TIMES - 1))
        const sumMs = (isPassing ? lateMs : Math.max(0, endMs - inTimeMs)) + (latenessMs[after] ?? 0)
        if (sumMs < (least[place] ?? 0)) least[place] = sumMs
      }
    }
    return least
  }

  #isInGroup({ isShaped, task }: Item): boolean {
    return isShaped && task.waitMs === this.#mostWaitMs
  }
}

function isEvenWait(items: readonly Item[]): boolean {
  const first = items.find(({ isShaped }) => isShaped)
  return items.every(({ isShaped, task }) => !isShaped || task.waitMs === first?.task.waitMs)
}

/** How long most of those that are shaped wait. */
function mostWait(items: readonly Item[]): number {
  const waits = items.filter(({ isShaped }) => isShaped).map(({ task }) => task.waitMs as number)
  const count = (waitMs: number) => waits.filter((one) => one === waitMs).length
  return waits.reduce((most, one) => (count(one) > count(most) ? one : most), waits[0] ?? 0)
}
