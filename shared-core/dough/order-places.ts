import { must } from '../support.ts'
import { epochMs } from '../units.ts'
import type { OrderCost, OrderPlace } from './order.ts'
import type { Line } from './order-line.ts'
import { lineAfter } from './order-line.ts'
import type { Item, Problem } from './order-problem.ts'
import { allergensIn, needsWash } from './order-problem.ts'

/** What an order costs, with every step of every mix. */
export function costOf(problem: Problem, order: readonly Item[]): OrderCost {
  const { line, mixed, shaped } = played(problem, order)
  const latest = latestStarts(problem, order, mixed, shaped)
  const places = order.map((item): OrderPlace => {
    const { startMs, isWashed, contactMask } = must(mixed, item)
    const { benchMs, coolerMs } = must(shaped, item)
    return {
      id: item.id,
      startAtMs: epochMs(startMs),
      latestAtMs: epochMs(must(latest, item)),
      mixedAtMs: epochMs(startMs + item.task.mixMs),
      benchAtMs: epochMs(benchMs),
      shapedAtMs: epochMs(benchMs + item.task.benchMs),
      coolerAtMs: epochMs(coolerMs),
      latenessMs: Math.max(0, coolerMs - item.task.dueAtMs),
      isWashedBefore: isWashed,
      contacts: allergensIn(contactMask),
    }
  })
  return { contacts: line.contacts, washes: line.washes, latenessMs: line.latenessMs, places }
}

interface Mixed {
  readonly startMs: number
  readonly isWashed: boolean
  readonly contactMask: number
}
interface Shaped {
  readonly benchMs: number
  readonly coolerMs: number
}
interface Played {
  readonly line: Line
  readonly mixed: ReadonlyMap<Item, Mixed>
  readonly shaped: ReadonlyMap<Item, Shaped>
}

function played(problem: Problem, order: readonly Item[], notBefore?: Map<Item, number>): Played {
  const mixed = new Map<Item, Mixed>()
  const shaped = new Map<Item, Shaped>()
  const teller = {
    mixed: (item: Item, startMs: number, isWashed: boolean, contactMask: number) =>
      mixed.set(item, { startMs, isWashed, contactMask }),
    shaped: (item: Item, benchMs: number, coolerMs: number) => shaped.set(item, { benchMs, coolerMs }),
  }
  return { line: lineAfter(problem, order, teller, notBefore), mixed, shaped }
}

/** Shares of the slack that are tried where all of it is too much: proof space can be taken by another meanwhile. */
const SHARES = [1, 0.75, 0.5, 0.25]

/**
 * How late each mix could begin, all of them so late, and none later in the cooler than it is (or than is in time).
 *
 * Worked back from the cooler: the last at the bench must be there a proof and a shaping before its time, the one before it
 * a shaping earlier, and so on through bulk and rest to the mixer. Proof space is not worked back but tried.
 */
function latestStarts(
  problem: Problem,
  order: readonly Item[],
  mixed: Played['mixed'],
  shaped: Played['shaped'],
): Map<Item, number> {
  const goal = (item: Item) => Math.max(item.task.dueAtMs, must(shaped, item).coolerMs)
  const ready = readyBy(order, shaped, goal)
  const starts = new Map<Item, number>()
  let after: { readonly item: Item; readonly startMs: number } | null = null
  for (const item of [...order].reverse()) {
    const byBench = must(ready, item) - item.task.waitMs - item.task.mixMs
    const wash: number = after !== null && needsWash(item, after.item) ? problem.rules.washMs : 0
    const byMixer: number = after === null ? byBench : after.startMs - wash - item.task.mixMs
    after = { item, startMs: Math.max(Math.min(byBench, byMixer), must(mixed, item).startMs) }
    starts.set(item, after.startMs)
  }
  for (const share of SHARES) {
    const some = new Map(
      [...starts].map(([item, atMs]) => {
        const { startMs } = must(mixed, item)
        return [item, startMs + Math.floor((atMs - startMs) * share)]
      }),
    )
    const then = played(problem, order, some)
    if (order.every((item) => must(then.shaped, item).coolerMs <= goal(item))) return some
  }
  return new Map(order.map((item) => [item, must(mixed, item).startMs]))
}

/** By when each must be ready for the bench, in the bench's own order. */
function readyBy(order: readonly Item[], shaped: Played['shaped'], goal: (item: Item) => number): Map<Item, number> {
  const ready = new Map<Item, number>()
  let nextMs = Number.POSITIVE_INFINITY
  const atBench = order.filter(({ isShaped }) => isShaped)
  const place = new Map(order.map((item, index) => [item, index]))
  const last = (a: Item, b: Item) =>
    must(shaped, b).benchMs - must(shaped, a).benchMs || must(place, b) - must(place, a)
  for (const item of atBench.sort(last)) {
    nextMs = Math.min(nextMs, goal(item) - item.task.proofMs) - item.task.benchMs
    ready.set(item, nextMs)
  }
  for (const item of order) if (!item.isShaped) ready.set(item, goal(item) - item.task.proofMs)
  return ready
}
