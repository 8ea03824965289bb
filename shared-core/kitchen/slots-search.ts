import { Chance } from '../plan/bake-off/chance.ts'
import type { SlotsDecoder } from './slots-decode.ts'
import { SlotMoves } from './slot-moves.ts'
import { firstOrders } from './slot-rules.ts'

/** The search draws from it: the same given makes the same plan. */
const SEED = 20_261_127
/** Lateness that a worse order may cost at first, as a share of what the best rule gives; found by trial. */
const WARMTH = 0.01
/** A millisecond of lateness is worth this much of the sum of completion times: it only breaks ties. */
const SUM_WEIGHT = 1e-6
/** One thing more that is made outweighs all lateness. */
const LEFT_OUT_MS = 1e11

/**
 * The order in which to put units in: the best of some dispatching rules, bettered by simulated annealing over moves of
 * units and of whole orders. (Kirkpatrick, Gelatt and Vecchi 1983.)
 * @returns units by index; the decoder has put them in
 */
export function bestOrder(decoder: SlotsDecoder, tries: number): Int32Array {
  let current: Int32Array = new Int32Array(0)
  let currentCost = Number.POSITIVE_INFINITY
  for (const order of firstOrders(decoder.problem)) {
    decoder.put(order, 0, Number.POSITIVE_INFINITY)
    const cost = costOf(decoder)
    if (cost < currentCost) {
      current = order
      currentCost = cost
    }
  }
  const best = Int32Array.from(current)
  let bestCost = currentCost
  decoder.keep(current, 0)
  if (current.length < 2 || bestCost <= leastCost(decoder)) return best
  const moves = new SlotMoves(decoder.problem, new Chance(SEED))
  const chance = new Chance(SEED + 1)
  const candidate = Int32Array.from(current)
  for (let attempt = 0; attempt < tries; attempt += 1) {
    const from = moves.change(candidate)
    const leeway = WARMTH * bestCost * (1 - attempt / tries) * chance.part()
    const isWhole = decoder.put(candidate, from, currentCost + leeway)
    const cost = costOf(decoder)
    if (isWhole && cost <= currentCost + leeway) {
      current.set(candidate)
      currentCost = cost
      decoder.keep(current, from)
      if (cost < bestCost) {
        best.set(current)
        bestCost = cost
      }
    } else candidate.set(current)
  }
  return best
}

export function costOf({ lateMs, sumMs, leftOut }: SlotsDecoder): number {
  return leftOut * LEFT_OUT_MS + lateMs + SUM_WEIGHT * sumMs
}

/** What no order can be better than: each thing goes in as if it were alone. */
function leastCost({ problem }: SlotsDecoder): number {
  let lateMs = 0
  let sumMs = 0
  for (const { dueMs, otherMs, units } of problem.orders) {
    let atMs = otherMs
    for (const index of units) {
      const unit = problem.units[index]
      const soonest = Math.min(...problem.freeMs)
      for (const { bakeMs, afterMs } of unit?.parts ?? [])
        atMs = Math.max(atMs, Math.max(unit?.readyMs ?? 0, soonest) + bakeMs + afterMs)
    }
    lateMs += Math.max(0, atMs - dueMs)
    sumMs += atMs
  }
  return lateMs + SUM_WEIGHT * sumMs
}
