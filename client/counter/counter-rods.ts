import type { State, Stock } from '../../shared-core/day/state.ts'
import { rods } from '../../shared-core/stock/left.ts'
import type { Ahead, RodAhead } from '../../shared-core/stock/prospect.ts'
import { withProspects } from '../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { Basis } from '../words/counter.ts'

/** A rod as a seller reads it: what its number rests on is a count or pieces that came for sale, never a sale. */
export interface CounterRod extends Omit<RodAhead, 'known'> {
  readonly basis: Basis
}

/** The rods of the rack, in the set-up's order; empty without a set-up. */
export function counterRods(state: State, nowMs: EpochMs, ahead: Ahead): readonly CounterRod[] {
  const all = rods(state, nowMs).map(({ known: _, ...rod }) => ({
    ...rod,
    basis: basisOf(state.stock.get(rod.varietyId), nowMs),
  }))
  return withProspects(all, ahead)
}

/** A count younger than this is of now: nothing else is likely to have happened since. */
const JUST_NOW_MS = 60_000

/**
 * What the number for sale rests on. A load that still cools is no part of it; one that came for sale after the last
 * count is the newer knowledge.
 */
export function basisOf(stock: Stock | undefined, nowMs: EpochMs): Basis {
  if (stock === undefined) return { how: 'nothing' }
  const { counted, lots } = stock
  const readyMs = lots.map((lot) => lot.readyAtMs).filter((atMs) => atMs <= nowMs)
  const newestMs = readyMs.reduce<EpochMs | null>(
    (newest, atMs) => (newest === null || atMs > newest ? atMs : newest),
    null,
  )
  if (newestMs !== null && (counted === null || newestMs > counted.atMs)) return { how: 'baked', atMs: newestMs }
  if (counted === null) return { how: 'nothing' }
  return { how: 'counted', atMs: counted.atMs, isNow: nowMs - counted.atMs < JUST_NOW_MS }
}
