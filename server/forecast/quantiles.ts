import type { Demand } from '../../shared-core/demand/demand.ts'
import { negativeBinomial, quantile } from '../../shared-core/demand/pieces.ts'

export const LEVELS = [0.1, 0.5, 0.8, 0.9] as const

/** The quantiles of a demand at `LEVELS`: whole pieces, in order. Of an item that was never seen, none. */
export function quantilesOf(demand: Pick<Demand, 'mean' | 'dispersion'> | undefined): readonly number[] {
  if (demand === undefined) return LEVELS.map(() => 0)
  const pieces = negativeBinomial(demand.mean, demand.dispersion)
  return LEVELS.map((level) => quantile(pieces, level))
}
