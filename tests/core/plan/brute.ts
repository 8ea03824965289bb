import type { Pieces } from '../../../shared-core/demand/pieces.ts'
import { fromChances, quantile } from '../../../shared-core/demand/pieces.ts'
import type { Worth } from '../../../shared-core/plan/worth.ts'

/** Expected money by going through every demand, sharing no code with the plan's own reckoning. Cents. */

/** Chances of 0, 1, 2, … as far as they matter. */
export function chancesOf(demand: Pieces, upTo: number): number[] {
  return Array.from({ length: upTo + 1 }, (_, n) => demand.cdf(n) - demand.cdf(n - 1))
}

/** What pieces bring that serve so much demand, the use that is worth most first; each use asks for its exact part. */
export function broughtIn({ uses }: Worth, asked: number, pieces: number): number {
  let there = pieces
  let cents = 0
  for (const { part, worthCents } of uses) {
    const served = Math.min(there, asked * part)
    cents += served * worthCents
    there -= served
  }
  return cents
}

export interface Sold {
  readonly demand: readonly number[]
  readonly worth: Worth
  readonly pieces: number
}

/** Two varieties whose left pieces share what a day sells of day-old ones; the dearer ones sell first. */
export function profitOfTwo(one: Sold, other: Sold, dayOldSells: number): number {
  let cents = -one.worth.costCents * one.pieces - other.worth.costCents * other.pieces
  for (const [d, chance] of one.demand.entries()) {
    for (const [e, too] of other.demand.entries()) {
      const left = Math.max(0, one.pieces - d) + Math.max(0, other.pieces - e)
      const sold = broughtIn(one.worth, d, one.pieces) + broughtIn(other.worth, e, other.pieces)
      cents += chance * too * (sold + one.worth.dayOldCents * Math.min(left, dayOldSells))
    }
  }
  return cents
}

export const NOBODY: Sold = {
  demand: [1],
  worth: { uses: [], costCents: 0, dayOldCents: 0, isAssumed: false },
  pieces: 0,
}

/** The exact distribution of a sum of demands that know nothing of each other, by folding them into each other. */
export function summed(parts: readonly Pieces[]): Pieces {
  const chances = parts.map((part) => chancesOf(part, quantile(part, 1))).reduce(folded, [1])
  const total = (of: (part: Pieces) => number) => parts.reduce((sum, part) => sum + of(part), 0)
  return { ...fromChances(chances), mean: total(({ mean }) => mean), variance: total(({ variance }) => variance) }
}

function folded(left: readonly number[], right: readonly number[]): number[] {
  const sum = new Array<number>(left.length + right.length - 1).fill(0)
  for (const [i, one] of left.entries())
    for (const [j, other] of right.entries()) sum[i + j] = (sum[i + j] ?? 0) + one * other
  return sum
}
