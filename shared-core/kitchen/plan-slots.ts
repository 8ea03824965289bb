import type { SlotStart, SlotsGiven, SlotsPlan } from './slots.ts'
import { SlotsDecoder } from './slots-decode.ts'
import { bestOrder } from './slots-search.ts'
import { readSlots } from './slots-units.ts'

/**
 * Which thing goes into which places of the oven when: fewest left out at `stopMs`, then least total lateness of the
 * orders, then the least sum of their completion times. An order is complete with its last part. Things of a complete
 * order that would lie and wait for the last one go in so much later, where that takes nothing from others: an order
 * comes out together.
 *
 * Nothing is broken off and nothing that is in is moved. The search is a fixed number of tries from a constant seed, so
 * the same given makes the same plan.
 * @param tries orders looked at at most; fewer where nothing is late and nothing could be sooner
 */
export function planSlots(given: SlotsGiven, tries: number = TRIES): SlotsPlan {
  const problem = readSlots(given)
  const decoder = new SlotsDecoder(problem)
  const order = bestOrder(decoder, tries)
  const starts: SlotStart[] = []
  decoder.put(order, 0, false, (unit, at, places) => {
    const part = problem.units[unit]?.parts[at]
    const shelf = problem.firstPlace.findIndex((first, shelfAt) => {
      const next = problem.firstPlace[shelfAt + 1] ?? first
      return (places[0] ?? 0) >= first && (places[0] ?? 0) < next
    })
    const { id: shelfId = '' } = given.shelves[shelf] ?? {}
    if (part !== undefined)
      starts.push({
        partId: part.id,
        shelfId,
        places: places.map((p) => p - (problem.firstPlace[shelf] ?? 0)),
        atMs: 0,
        endMs: unit,
      })
  })
  const timed = starts.map((start) => {
    const unit = problem.units[start.endMs]
    const bakeMs = unit?.parts.find(({ id }) => id === start.partId)?.bakeMs ?? 0
    const atMs = given.nowMs + (decoder.startMs[start.endMs] ?? 0)
    return { ...start, atMs, endMs: atMs + bakeMs }
  })
  const left = problem.units.flatMap(({ parts }, unit) => (Number.isNaN(decoder.startMs[unit]) ? parts : []))
  return {
    starts: timed.sort((one, other) => one.atMs - other.atMs || (one.partId < other.partId ? -1 : 1)),
    tooLate: [...left, ...problem.misfits].map(({ id }) => id),
    complete: given.orders.flatMap(({ id }, at) => {
      const atMs = decoder.completeMs(at)
      return Number.isNaN(atMs) || problem.misfits.some(({ orderId }) => orderId === id)
        ? []
        : [{ orderId: id, atMs: given.nowMs + atMs }]
    }),
    latenessMs: decoder.lateMs,
  }
}

/** Within 1 % of searches a hundred times as long on sixty things, in a quarter of the time that a person notices. */
const TRIES = 3_000
