import type { Line } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import type { Book, Wanted } from './book.ts'
import { mixedWanted } from './book.ts'
import { pieceAt, roomFrom } from './headroom.ts'
import { mixedFlow } from './mixed-flow.ts'

/**
 * The earliest instant at which all of it may be taken. Later never takes more from anybody than sooner, so that it is
 * searched for by halves among the instants at which something becomes possible.
 * @param before pieces that leave now besides
 * @returns null: none before the close
 */
export function earliestOf(book: Book, wanted: readonly Wanted[], before: readonly Line[] = []): number | null {
  const times = candidates(book, wanted)
  let [low, high] = [0, times.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (isFree(book, wanted, times[middle] ?? 0, before)) high = middle
    else low = middle + 1
  }
  return times[low] ?? null
}

function candidates({ room, nowMs, closesAtMs }: Book, wanted: readonly Wanted[]): readonly number[] {
  if (nowMs > closesAtMs) return []
  const shifts = new Set(wanted.map(({ beforeMs }) => beforeMs))
  const times = new Set([nowMs])
  for (const fromMs of room.fromMs)
    for (const shift of shifts) if (fromMs + shift > nowMs && fromMs + shift <= closesAtMs) times.add(fromMs + shift)
  return [...times].sort((a, b) => a - b)
}

/** Whether all of it may be fetched at an instant with nothing taken from orders, walk-ins and what stays out. */
export function isFree(book: Book, wanted: readonly Wanted[], atMs: number, before: readonly Line[] = []): boolean {
  const { room, mixed, mixedServed, nowMs } = book
  const free = room.varieties.map((_, at) => Int32Array.from(room.free[at] ?? []))
  const take = (varietyId: VarietyId, pieces: number, takenAtMs: number): boolean => {
    const row = free[room.varieties.indexOf(varietyId)]
    const from = pieceAt(room.fromMs, takenAtMs)
    if (row === undefined || from < 0) return pieces === 0
    let isEnough = true
    for (let at = from; at < row.length; at += 1) {
      const left = (row[at] ?? 0) - pieces
      row[at] = left
      if (left < 0) isEnough = false
    }
    return isEnough
  }
  for (const { varietyId, pieces } of before) if (!take(varietyId, pieces, nowMs)) return false
  for (const { varietyId, pieces, beforeMs } of wanted)
    if (varietyId !== null && !take(varietyId, pieces, atMs - beforeMs)) return false
  const own = wanted.filter(({ varietyId }) => varietyId === null)
  if (own.length === 0 && mixed.length === 0) return true
  const ownMixed = own.map((line) => mixedWanted(book.shop, room, line, atMs - line.beforeMs))
  if (own.some(({ beforeMs }) => pieceAt(room.fromMs, atMs - beforeMs) < 0)) return false
  const served = mixedFlow(free.map(roomFrom), [...mixed, ...ownMixed])
  const sum = (some: readonly number[]) => some.reduce((all, one) => all + one, 0)
  return (
    sum(served.slice(0, mixed.length)) >= mixedServed &&
    sum(served.slice(mixed.length)) >= own.reduce((all, { pieces }) => all + pieces, 0)
  )
}
