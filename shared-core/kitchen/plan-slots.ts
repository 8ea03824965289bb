import type { SlotStart, SlotsGiven, SlotsPlan } from './slots.ts'
import { SlotsDecoder } from './slots-decode.ts'
import { bestOrder } from './slots-search.ts'
import type { SlotsProblem } from './slots-units.ts'
import { readSlots } from './slots-units.ts'

/** Within 1 % of searches a hundred times as long on sixty things, in a quarter of the time that a person notices. */
const TRIES = 5_000

/**
 * Which thing goes into which places of the oven when: fewest left out at `stopMs`, then least total lateness of the
 * orders, then the least sum of their completion times. An order is complete with its last part.
 *
 * Nothing is broken off and nothing that is in is moved. The search is a fixed number of tries from a constant seed, so
 * the same given makes the same plan.
 * @param tries orders looked at at most; fewer where nothing is late and nothing could be sooner
 */
export function planSlots(given: SlotsGiven, tries: number = TRIES): SlotsPlan {
  const problem = readSlots(given)
  const decoder = new SlotsDecoder(problem)
  const order = bestOrder(decoder, tries)
  const starts = startsOf(decoder, order)
  const left = problem.units.flatMap(({ parts }, unit) => (Number.isNaN(decoder.startMs[unit]) ? parts : []))
  const tooLate = [...left, ...problem.misfits]
  const never = new Set(tooLate.map(({ orderId }) => orderId))
  const complete = given.orders.flatMap(({ id }, at) =>
    never.has(id)
      ? []
      : [{ orderId: id, atMs: given.nowMs + decoder.completeMs(at), dueMs: given.orders[at]?.dueMs ?? 0 }],
  )
  return {
    starts,
    tooLate: tooLate.map(({ id }) => id),
    complete: complete.map(({ orderId, atMs }) => ({ orderId, atMs })),
    latenessMs: complete.reduce((sum, { atMs, dueMs }) => sum + Math.max(0, atMs - dueMs), 0),
  }
}

function startsOf(decoder: SlotsDecoder, order: Int32Array): readonly SlotStart[] {
  const { units, given, firstPlace } = decoder.problem
  const found: { readonly unit: number; readonly at: number; readonly places: readonly number[] }[] = []
  decoder.tell(order, (unit, at, places) => {
    found.push({ unit, at, places })
  })
  return found
    .flatMap(({ unit, at, places }) => {
      const part = units[unit]?.parts[at]
      if (part === undefined) return []
      const shelf = shelfOf(decoder.problem, places[0] ?? 0)
      const atMs = given.nowMs + (decoder.startMs[unit] ?? 0)
      const own = places.map((place) => place - (firstPlace[shelf] ?? 0))
      return [
        { partId: part.id, shelfId: given.shelves[shelf]?.id ?? '', places: own, atMs, endMs: atMs + part.bakeMs },
      ]
    })
    .sort((one, other) => one.atMs - other.atMs || (one.partId < other.partId ? -1 : 1))
}

function shelfOf({ firstPlace }: SlotsProblem, place: number): number {
  return firstPlace.findIndex((first, at) => place >= first && place < (firstPlace[at + 1] ?? first))
}
