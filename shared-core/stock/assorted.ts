import type { Line, State } from '../day/state.ts'
import { piecesOf } from '../line/lines.ts'
import { inUse } from '../shop/in-order.ts'
import type { EpochMs } from '../units.ts'
import { rods } from './left.ts'

/**
 * A mixed dozen in one touch: of what there is plenty of, in shares of it, and of many kinds. Each piece comes from the
 * rod that has most for each one already taken from it (D'Hondt), so that no low rod is emptied while a full one stands
 * by. Regular sizes as long as there are any: a dozen of minis is another thing. Where all rods are bare the rest is
 * spread over the set-up's varieties, as a sale is never blocked.
 * @returns together exactly `pieces`, in the set-up's order; empty without varieties
 * Source: D'Hondt's method as in Balinski and Young, Fair Representation, 2nd ed., appendix A (Jefferson's method).
 * @example 40 sesame, 20 poppy, 6 of them // 4 sesame, 2 poppy
 */
export function assorted(state: State, nowMs: EpochMs, pieces: number): readonly Line[] {
  const { shop } = state
  if (shop === null) return []
  const varieties = inUse(shop.varieties)
  const likely = new Map(rods(state, nowMs).map((rod) => [rod.varietyId, rod.likely]))
  const all = varieties.map(({ id, size }) => ({ varietyId: id, size, there: likely.get(id) ?? 0, taken: 0 }))
  const regular = all.filter(({ size }) => size === 'regular')
  const others = all.filter(({ size }) => size !== 'regular')
  let left = takeFrom(regular, pieces)
  left = takeFrom(others, left)
  const bare = regular.length > 0 ? regular : others
  for (let n = 0; left > 0 && bare.length > 0; n += 1, left -= 1) {
    const one = bare[n % bare.length]
    if (one !== undefined) one.taken += 1
  }
  const lines = all.map(({ varietyId, taken }) => ({ varietyId, pieces: taken })).filter((line) => line.pieces > 0)
  return piecesOf(lines) === 0 ? [] : lines
}

export interface Taking {
  readonly there: number
  taken: number
}

/** Takes so many of what there is most of, the first of equal ones first. @returns how many are short */
export function takeFrom(rodsThere: readonly Taking[], pieces: number): number {
  for (let left = pieces; left > 0; left -= 1) {
    let best: Taking | null = null
    for (const rod of rodsThere) {
      if (rod.taken >= rod.there) continue
      if (best === null || rod.there * (best.taken + 1) > best.there * (rod.taken + 1)) best = rod
    }
    if (best === null) return left
    best.taken += 1
  }
  return 0
}
