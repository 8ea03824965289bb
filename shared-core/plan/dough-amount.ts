import type { Pieces } from '../demand/pieces.ts'
import type { Amount } from './how-many.ts'
import { fewest, roundedToUnit } from './how-many.ts'
import type { Worth } from './worth.ts'
import { worthOfOneMore } from './worth.ts'

/** How much dough of one kind, in pieces of it, a day or more ahead. */
export interface DoughAsked {
  /** Of all varieties together that the dough becomes on the line. */
  readonly demand: Pieces
  readonly worth: Worth
  /** What the next day that it still may be boiled on asks for; null: what is left over then is lost. */
  readonly next: Pieces | null
}

/**
 * A piece that is carried over costs a tenth of itself: room in the cooler, trays, a day older. Common practice, no
 * source; small beside a lost sale, so dough is planned for most days, and not nothing, or it would be for all.
 */
const CARRY_PART = 0.1

/**
 * Pieces of dough to have, for the counter: the newsvendor's answer where too much is not day-old but carried over.
 *
 *   one more earns   Σ (worth − worth of the next use)·P(part·D > n)  −  cost
 *                    + Σ P(D = n − l)·(cost·P(next day asks for more than l) − carrying), l from 0 to n
 *
 * A piece that is left over saves the next day's, as far as the next day asks for it inside the dough's window; else it
 * is lost.
 */
export function howMuchDough(asked: DoughAsked): Amount {
  const exact = fewest((n) => earns(asked, n), 0)
  const { demand, worth } = asked
  const covered = demand.cdf(exact)
  const short = 1 - covered
  const value = carriedValue(asked, exact)
  return {
    pieces: exact,
    exact,
    underCents:
      (short > 1e-9 ? worthAt(asked, exact) / short : (worth.uses[worth.uses.length - 1]?.worthCents ?? 0)) -
      worth.costCents,
    overCents: worth.costCents - (covered > 1e-9 ? value / covered : 0),
    covered,
  }
}

/**
 * The same so that what must still be made comes in whole trays: both ways tried, the better kept.
 * @param there pieces that need not be made, less what is ordered
 * @returns pieces for the counter
 */
export function inTrays(asked: DoughAsked, amount: Amount, there: number, tray: number): number {
  const toMake = Math.max(0, amount.pieces - there)
  // Below one tray a whole one or none: half a tray is not mixed for.
  const made =
    toMake < tray ? trayOrNone(asked, toMake, there, tray) : roundedToUnit(toMake, tray, (n) => earns(asked, n + there))
  return toMake === 0 ? amount.pieces : Math.max(0, made + there)
}

function trayOrNone(asked: DoughAsked, toMake: number, there: number, tray: number): number {
  if (toMake === 0) return 0
  let gain = 0
  for (let n = there; n < there + tray; n += 1) gain += earns(asked, n)
  return gain > 0 ? tray : 0
}

function earns(asked: DoughAsked, n: number): number {
  return n < 0 ? Number.POSITIVE_INFINITY : worthAt(asked, n) + carriedValue(asked, n) - asked.worth.costCents
}

function worthAt({ demand, worth }: DoughAsked, n: number): number {
  return worthOfOneMore(worth, (part) => 1 - demand.cdf(n / part + 1e-9))
}

/** What the piece after the n-th brings by being carried over, times the chance that it is. */
function carriedValue({ demand, worth, next }: DoughAsked, n: number): number {
  if (next === null) return 0
  let cents = 0
  for (let left = 0; left <= n; left += 1) {
    const chance = demand.cdf(n - left) - demand.cdf(n - left - 1)
    if (chance > 0) cents += chance * worth.costCents * (1 - next.cdf(left) - CARRY_PART)
  }
  return cents
}
