import type { Line } from '../day/state.ts'
import type { VarietyId } from '../ids.ts'
import { piecesOf } from '../line/lines.ts'
import type { Book, Wanted } from './book.ts'
import { isFree } from './earliest.ts'
import { pieceAt, roomFrom } from './headroom.ts'
import { mixedOf } from './mixed-of.ts'
import type { OrderLine } from './order.ts'

/** What of it may go at once, and what is left of its lines. What is sliced or bagged does not go at once. */
export interface PartNow {
  readonly now: readonly Line[]
  readonly rest: readonly OrderLine[]
}

/** Lines by name first, then mixed ones of what there is most of. */
export function partNow(book: Book, { lines }: { readonly lines: readonly OrderLine[] }): PartNow {
  const now: Line[] = []
  const left = new Map<OrderLine, number>(lines.map((line) => [line, line.pieces]))
  const atOnce = lines.filter(({ sliced, bagged }) => !(sliced || bagged))
  for (const line of atOnce) {
    const { varietyId } = line
    if (varietyId === null) continue
    const pieces = mostOf(line.pieces, (n) =>
      isFree(book, [...named(now), ...named([{ varietyId, pieces: n }])], book.nowMs),
    )
    if (pieces > 0) now.push({ varietyId, pieces })
    left.set(line, line.pieces - pieces)
  }
  for (const line of atOnce) {
    if (line.varietyId !== null) continue
    const filled = (n: number) => mixedOf(book.shop, line, n, roomLess(book, now))
    const pieces = mostOf(line.pieces, (n) => {
      const some = filled(n)
      return piecesOf(some) === n && isFree(book, [...named(now), ...named(some)], book.nowMs)
    })
    now.push(...filled(pieces))
    left.set(line, line.pieces - pieces)
  }
  const rest = lines.flatMap((line) => {
    const pieces = left.get(line) ?? 0
    return pieces > 0 ? [{ ...line, pieces, dozens: 0 }] : []
  })
  return { now: summed(now), rest }
}

/** The largest number up to `most` of which something holds that holds of all smaller ones. */
function mostOf(most: number, holds: (n: number) => boolean): number {
  if (holds(most)) return most
  let [low, high] = [0, most]
  while (low + 1 < high) {
    const middle = (low + high) >> 1
    if (holds(middle)) low = middle
    else high = middle
  }
  return low
}

function named(lines: readonly Line[]): readonly Wanted[] {
  return lines.map((line) => ({ ...line, without: [], beforeMs: 0 }))
}

function roomLess({ room, nowMs }: Book, taken: readonly Line[]): Map<VarietyId, number> {
  const at = pieceAt(room.fromMs, nowMs)
  const there = new Map(room.varieties.map((id, of) => [id, roomFrom(room.free[of] ?? new Int32Array(0))[at] ?? 0]))
  for (const { varietyId, pieces } of taken) there.set(varietyId, (there.get(varietyId) ?? 0) - pieces)
  return there
}

function summed(lines: readonly Line[]): readonly Line[] {
  const sums = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of lines) sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  return [...sums].map(([varietyId, pieces]) => ({ varietyId, pieces }))
}
