import { EventHeap } from './event-heap.ts'
import type { SlotStart } from './slots.ts'

/** One item on its way: its parts that are not begun, as soon as they could be. */
export interface Chain {
  readonly parts: readonly ChainPart[]
  /** When its order should be complete: with the last of its items, or when somebody comes for it. Infinity: it never is. */
  readonly targetMs: number
}

export interface ChainPart {
  readonly key: string
  /** Index of the station; null: in the oven. */
  readonly station: number | null
  readonly soonestMs: number
  readonly takesMs: number
}

/** So long a thing may lie and wait for the rest of its order. Common practice, no source. */
const LIES_MS = 60_000

/**
 * When to begin each part so that an order comes together: what is quickly made begins later than it could, by so much
 * that it ends a minute before the rest, and its hands are free for others until then. Nothing ends later than the order
 * does anyway. At the oven a thing moves only as far as its places stay empty in the plan.
 * @param hands by station: how many
 * @param plan the oven's, with the soonest starts
 * @returns by key; what never can begin is left out
 */
export function beginTogether(
  chains: readonly Chain[],
  hands: readonly number[],
  plan: { readonly starts: readonly SlotStart[]; readonly handlingMs: number },
): ReadonlyMap<string, number> {
  const begins = new Map<string, number>()
  const untilMs = hands.map((count) => Array<number>(count).fill(Number.POSITIVE_INFINITY))
  const ovenMs = emptyUntil(plan)
  const heap = new EventHeap()
  const parts: { readonly chain: Chain; readonly at: number; readonly byMs: number }[] = []
  const push = (chain: Chain, at: number, byMs: number) => {
    heap.push(-byMs, parts.length)
    parts.push({ chain, at, byMs })
  }
  for (const chain of chains) {
    const last = chain.parts[chain.parts.length - 1]
    if (last === undefined || !Number.isFinite(last.soonestMs)) continue
    const soonestMs = last.soonestMs + last.takesMs
    // Where another item of the order never can be made, nobody waits for it.
    const byMs = Number.isFinite(chain.targetMs) ? Math.max(soonestMs, chain.targetMs - LIES_MS) : soonestMs
    push(chain, chain.parts.length - 1, byMs)
  }
  // The last to end first: what it leaves of hands is there for what ends before.
  while (heap.size > 0) {
    const next = parts[heap.pop()]
    const part = next?.chain.parts[next.at]
    if (next === undefined || part === undefined) continue
    const limitMs =
      part.station === null
        ? (ovenMs.get(part.key) ?? next.byMs)
        : takeHand(untilMs[part.station] ?? [], next.byMs, part)
    const beginMs = Math.max(part.soonestMs, Math.min(next.byMs, limitMs) - part.takesMs)
    begins.set(part.key, beginMs)
    if (next.at > 0) push(next.chain, next.at - 1, beginMs)
  }
  return begins
}

/** The hand that is free the longest; it is taken from the part's begin on. @returns until when it is free */
function takeHand(untilMs: number[], byMs: number, { soonestMs, takesMs }: ChainPart): number {
  let best = 0
  for (let hand = 1; hand < untilMs.length; hand += 1) if ((untilMs[hand] ?? 0) > (untilMs[best] ?? 0)) best = hand
  const limitMs = untilMs[best] ?? byMs
  if (untilMs.length > 0) untilMs[best] = Math.max(soonestMs, Math.min(byMs, limitMs) - takesMs)
  return limitMs
}

/** Until when the places of each thing stay empty after it, as planned. */
function emptyUntil({ starts, handlingMs }: { readonly starts: readonly SlotStart[]; readonly handlingMs: number }) {
  const nextMs = new Map<string, number>()
  const until = new Map<string, number>()
  for (const { partId, shelfId, places, atMs } of [...starts].sort((one, other) => other.atMs - one.atMs)) {
    const keys = places.map((place) => `${shelfId} ${place}`)
    until.set(partId, Math.min(...keys.map((key) => (nextMs.get(key) ?? Number.POSITIVE_INFINITY) - handlingMs)))
    for (const key of keys) nextMs.set(key, atMs)
  }
  return until
}
