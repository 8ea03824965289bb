import type { Demand } from './demand.ts'

/** How far rates differ from what was expected, and what a part of the day can tell of it. */
export interface Differing {
  /** Variance of a whole day's rate over what was expected of it, chance and purchase sizes left out. */
  readonly spread: number
  /** The part of it, 0 to 1, that one stretch of the day shares with another. */
  readonly part: number
  /** Pieces by which sales come, at least 1: the twelve of a dozen are one customer. */
  readonly lump: number
}

/** What is known of a rate over what was expected, in mean 1 before: a gamma of that shape around `factor`. */
export interface Told {
  readonly factor: number
  readonly shape: number
}

/**
 * What a rate is over what was expected, after `seen` pieces where `expected` were.
 *
 *   prior Gamma(a, a), a = 1 / (part · spread);   each seen piece counts as 1 / d events,
 *   d = lump + expected · (1 − part) · spread;    posterior mean (a + seen / d) / (a + expected / d)
 *
 * With part = 1 and single pieces it is the gamma–Poisson update. Otherwise what a stretch of the day has of its own makes
 * its evidence less: however much is seen, no more than `part` of its surplus is believed. It never falls with `seen`.
 * Source: gamma–Poisson as in Gelman et al., Bayesian Data Analysis, section 2.6; the discount is ours.
 * @example told({ spread: 0.25, part: 1, lump: 1 }, 8, 4) // { factor: 1.5, shape: 12 }
 */
export function told({ spread, part, lump }: Differing, seen: number, expected: number): Told {
  const shared = part * spread
  if (shared <= 0) return { factor: 1, shape: Number.POSITIVE_INFINITY }
  const before = 1 / shared
  const pieces = lump + expected * (1 - part) * spread
  const shape = before + seen / pieces
  return { factor: shape / (before + expected / pieces), shape }
}

type DayTotal = Pick<Demand, 'mean' | 'dispersion'>

/** An item's spread is what its dispersion has beyond the sizes of purchases: 1/k − (lump − 1) / mean. */
export function differingOf({ mean, dispersion }: DayTotal, part: number, lump: number): Differing {
  return { spread: Math.max(0, 1 / dispersion - byLumps(mean, dispersion, lump)), part, lump }
}

/**
 * The dispersion of what is left: what is still not known of the rate that it shares with what has gone, what it has of
 * its own, and the sizes of its purchases, of which there are fewer. For a whole day that has told nothing it is k.
 */
export function restDispersion(
  { mean, dispersion }: DayTotal,
  { spread, part, lump }: Differing,
  shape: number,
  left: number,
): number {
  const lumps = byLumps(mean, dispersion, lump) / Math.max(left, 1e-6)
  return 1 / (1 / shape + (1 - part) * spread + lumps)
}

function byLumps(mean: number, dispersion: number, lump: number): number {
  return mean > 0 ? Math.min(1 / dispersion, (lump - 1) / mean) : 0
}
