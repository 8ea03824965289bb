import type { VarietyId } from '../ids.ts'
import type { SupplyFrom } from './supply.ts'

/** What is given away and what comes, in plain numbers. */
export interface RoomGiven {
  readonly supply: readonly { readonly varietyId: VarietyId; readonly pieces: number; readonly readyAtMs: number }[]
  /** Pieces by name that are taken at an instant, whenever there are none then: as soon as there are. */
  readonly taken: readonly { readonly varietyId: VarietyId; readonly pieces: number; readonly atMs: number }[]
  /** Left to walk-ins from now until an instant, parts of pieces too, never falling. */
  readonly walkIns: (varietyId: VarietyId, atMs: number) => number
  readonly rods: SupplyFrom['rods']
  /** Pieces of each variety that stay out whatever is expected. */
  readonly least: number
  readonly nowMs: number
  readonly closesAtMs: number
}

/**
 * How many pieces of each variety are nobody's, over time. Time is cut at each instant at which more is ready; in between
 * things only leave, so that the end of each piece of time is its lowest:
 *
 *   free(i) = ready − taken − left to walk-ins − least        room(i) = min { free(j) : j ≥ i }, not below 0
 *
 * each until the end of piece i, in whole pieces. Walk-ins who find none have gone: later pieces owe them nothing.
 */
export interface Room {
  /** Beginnings of the pieces of time, in order; the first is the earliest of all. */
  readonly fromMs: readonly number[]
  readonly varieties: readonly VarietyId[]
  /** By variety, by piece of time. */
  readonly free: readonly Int32Array[]
}

export function roomOf(given: RoomGiven): Room {
  const { supply, nowMs } = given
  const fromMs = [...new Set([nowMs, ...supply.map(({ readyAtMs }) => readyAtMs)])].sort((a, b) => a - b)
  const varieties = [...new Set([...supply, ...given.taken].map(({ varietyId }) => varietyId))].sort()
  const place = new Map(varieties.map((id, at) => [id, at]))
  const change = varieties.map(() => new Int32Array(fromMs.length))
  const add = (id: VarietyId, at: number, pieces: number) => {
    const row = change[place.get(id) ?? -1]
    if (row !== undefined) row[at] = (row[at] ?? 0) + pieces
  }
  for (const { varietyId, pieces, readyAtMs } of supply) add(varietyId, pieceAt(fromMs, readyAtMs), pieces)
  for (const { varietyId, pieces, atMs } of given.taken) add(varietyId, Math.max(0, pieceAt(fromMs, atMs)), -pieces)
  const free = varieties.map((id, at) => lessWalkIns(given, id, fromMs, change[at] ?? new Int32Array(0)))
  return { fromMs, varieties, free }
}

/** The piece of time that an instant lies in; −1: before all. */
export function pieceAt(fromMs: readonly number[], atMs: number): number {
  let [low, high] = [0, fromMs.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((fromMs[middle] ?? 0) <= atMs) low = middle + 1
    else high = middle
  }
  return low - 1
}

function lessWalkIns(given: RoomGiven, id: VarietyId, fromMs: readonly number[], change: Int32Array): Int32Array {
  const free = new Int32Array(fromMs.length)
  let sum = 0
  let went = 0
  let asked = 0
  for (let at = 0; at < fromMs.length; at += 1) {
    sum += change[at] ?? 0
    const untilMs = Math.min(fromMs[at + 1] ?? given.closesAtMs, given.closesAtMs)
    const by = untilMs <= given.nowMs ? 0 : given.walkIns(id, untilMs)
    went += Math.max(0, Math.min(by - asked, sum - went))
    asked = by
    free[at] = sum - wholePieces(went, given.rods) - given.least
  }
  return free
}

/**
 * Half a piece that somebody may want is a whole one before anything is promised. What is looked at again and again is rounded
 * down: else each look would find a piece more than the promise had left, and call an order at risk that is not.
 */
export function wholePieces(pieces: number, how: SupplyFrom['rods']): number {
  return how === 'careful' ? Math.ceil(pieces - ROUNDING) : Math.floor(pieces + ROUNDING)
}

/** Sums of floats that should be whole are not always. */
const ROUNDING = 1e-9

/** By piece of time, what may be taken in it so that nothing goes under then or later. */
export function roomFrom(free: Int32Array): Int32Array {
  const room = new Int32Array(free.length)
  let least = Number.MAX_SAFE_INTEGER
  for (let at = free.length - 1; at >= 0; at -= 1) {
    least = Math.min(least, free[at] ?? 0)
    room[at] = Math.max(0, least)
  }
  return room
}
