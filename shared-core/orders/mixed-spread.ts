import type { Line } from '../day/state.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { inUse } from '../shop/in-order.ts'
import type { Shop } from '../shop/shop.ts'
import { mixedOf } from './mixed-of.ts'
import type { OrderedLine } from './ordered-on.ts'
import { fits } from './spoken-for.ts'

/** What is there beyond what is asked for, and what a day asks for, by variety. */
export interface SpreadBy {
  /** Lessened by what is taken. */
  readonly spare: Map<VarietyId, number>
  readonly means: ReadonlyMap<string, number>
}

/**
 * The pieces that mixed lines will probably be of: first what there is more of than will be asked for, then in the shares in
 * which varieties are asked for, as those are baked most (D'Hondt's method, as `stock/assorted.ts`). Only regular sizes, and
 * of what nobody knows anything of as much of each.
 * @returns lines by variety; those of a mixed line that nothing fits are left out
 */
export function spreadMixed(shop: Shop, lines: readonly OrderedLine[], { spare, means }: SpreadBy): readonly Line[] {
  return lines.flatMap((line): readonly Line[] => {
    if (line.varietyId !== null) return [{ varietyId: line.varietyId, pieces: line.pieces }]
    const there = mixedOf(shop, line, line.pieces, spare)
    const open = line.pieces - there.reduce((sum, { pieces }) => sum + pieces, 0)
    return [...there, ...byShares(shop, line, open, means)]
  })
}

function byShares(shop: Shop, line: OrderedLine, pieces: number, means: SpreadBy['means']): readonly Line[] {
  if (pieces === 0) return []
  const some = inUse(shop.varieties).filter(({ id, size }) => size === 'regular' && fits(line, id))
  const known = some.map(({ id }) => ({ id, share: means.get(id) ?? 0, taken: 0 })).filter(({ share }) => share > 0)
  const all = known.length > 0 ? known : some.map(({ id }) => ({ id, share: 1, taken: 0 }))
  for (let left = all.length === 0 ? 0 : pieces; left > 0; left -= 1) {
    const best = all.reduce((most, one) => (one.share * (most.taken + 1) > most.share * (one.taken + 1) ? one : most))
    best.taken += 1
  }
  return all.filter(({ taken }) => taken > 0).map(({ id, taken }) => ({ varietyId: id, pieces: taken }))
}

/** Pieces of a dough; `varietyId` null: plain dough. */
export interface DoughOrdered {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
}

/**
 * The dough of what is ordered, where nobody knows yet what will be asked for: mixed lines in equal shares.
 * @param known what a day asks for, by variety, where that is known
 */
export function doughOrdered(
  shop: Shop,
  lines: readonly OrderedLine[],
  known: ReadonlyMap<string, number> = new Map(),
): readonly DoughOrdered[] {
  const sums = new Map<VarietyId, number>()
  for (const { varietyId, pieces } of spreadMixed(shop, lines, { spare: new Map(), means: known }))
    sums.set(varietyId, (sums.get(varietyId) ?? 0) + pieces)
  return [...sums].flatMap(([varietyId, pieces]) => {
    const doughId = shop.varieties.get(varietyId)?.doughId
    return doughId === undefined ? [] : [{ doughId, varietyId, pieces }]
  })
}
