import type { DividerChecks, WeighedSample } from './mix.ts'
import { tOf } from './student-t.ts'

/**
 * What pieces weighed at the divider say: their mean and spread against the scaled weight, and whether it drifts from
 * sample to sample. All of it is a view of what was weighed; it stops nobody.
 */
export interface DividerFigures {
  readonly pieces: number
  readonly samples: number
  /** Of the newest sample: what a piece should weigh. */
  readonly scaledMilligrams: number
  /** Means of a piece's weight less the scaled weight of its sample. */
  readonly offMilligrams: number
  /** Half of the interval in which the true mean difference lies with 95 %; null with fewer than two pieces. */
  readonly offWithinMilligrams: number | null
  /** Standard deviation within samples (n − samples), so that a divider that was set anew is not spread; null: too few. */
  readonly spreadMilligrams: number | null
  /** Milligrams an hour, from sample to sample; null: fewer than `DRIFT_SAMPLES`, or all at one time. */
  readonly driftMilligramsPerHour: number | null
  readonly codes: readonly DividerCode[]
}

/**
 * `tooFew`: say nothing yet. `onWeight`: nothing to say. `heavy`, `light`: surely off, and by more than a hundredth.
 * `spread`: pieces differ much. `risingWeight`, `fallingWeight`: drift that is more than chance.
 */
export type DividerCode = 'tooFew' | 'onWeight' | 'heavy' | 'light' | 'spread' | 'risingWeight' | 'fallingWeight'

/** A mean of fewer pieces says too little. Common practice, no source. */
const PIECES_LEAST = 5
/** A hundredth of the scaled weight off is worth a turn of the screw. Common practice, no source. */
const OFF_SHARE = 0.01
/** A standard deviation of so much of the scaled weight: one piece in three is further off. Common practice, no source. */
const SPREAD_SHARE = 0.02
export const DRIFT_SAMPLES = 3
const HOUR_MS = 3_600_000
/** Two-sided 5 % of the normal distribution. */
const CHANCE = 1.96

export function dividerFigures({ samples }: Pick<DividerChecks, 'samples'>): DividerFigures | null {
  const newest = samples[samples.length - 1]
  if (newest === undefined) return null
  const offs = offsOf(samples)
  const offMilligrams = meanOf(offs.map(({ off }) => off))
  const spread = spreadWithin(samples)
  const within =
    offs.length < 2 || spread === null ? null : (tOf(offs.length - samples.length) * spread) / Math.sqrt(offs.length)
  const figures = {
    pieces: offs.length,
    samples: samples.length,
    scaledMilligrams: newest.scaledMilligrams,
    offMilligrams,
    offWithinMilligrams: within,
    spreadMilligrams: spread,
    driftMilligramsPerHour: samples.length < DRIFT_SAMPLES ? null : slope(offs),
  }
  return { ...figures, codes: codesOf(figures, offs) }
}

interface Off {
  readonly atMs: number
  readonly off: number
}

function codesOf(figures: Omit<DividerFigures, 'codes'>, offs: readonly Off[]): DividerCode[] {
  const { pieces, scaledMilligrams, offMilligrams, offWithinMilligrams, spreadMilligrams, driftMilligramsPerHour } =
    figures
  if (pieces < PIECES_LEAST || offWithinMilligrams === null || spreadMilligrams === null) return ['tooFew']
  const codes: DividerCode[] = []
  const isOff = Math.abs(offMilligrams) > Math.max(offWithinMilligrams, scaledMilligrams * OFF_SHARE)
  if (isOff) codes.push(offMilligrams > 0 ? 'heavy' : 'light')
  if (spreadMilligrams > scaledMilligrams * SPREAD_SHARE) codes.push('spread')
  if (driftMilligramsPerHour !== null && driftMilligramsPerHour !== 0 && Math.abs(kendallZ(offs)) > CHANCE)
    codes.push(driftMilligramsPerHour > 0 ? 'risingWeight' : 'fallingWeight')
  return codes.length === 0 ? ['onWeight'] : codes
}

function offsOf(samples: readonly WeighedSample[]): Off[] {
  return samples.flatMap(({ atMs, scaledMilligrams, milligrams }) =>
    milligrams.map((weight) => ({ atMs, off: weight - scaledMilligrams })),
  )
}

/** Pooled over samples: √(Σ(x − mean of its sample)² / (n − samples)); null where no sample has two pieces. */
function spreadWithin(samples: readonly WeighedSample[]): number | null {
  const freedom = samples.reduce((sum, { milligrams }) => sum + milligrams.length - 1, 0)
  if (freedom < 1) return null
  const squares = samples.reduce((sum, { milligrams }) => {
    const mean = meanOf(milligrams)
    return sum + milligrams.reduce((part, weight) => part + (weight - mean) * (weight - mean), 0)
  }, 0)
  return Math.sqrt(squares / freedom)
}

/**
 * The Theil–Sen slope: the median of the slopes of all pairs weighed at different times. One piece that was badly weighed
 * does not move it, as it would a least-squares line.
 * @returns milligrams an hour; null when all were weighed at one time
 * Source: Sen, P. K. (1968), Journal of the American Statistical Association 63:1379–1389.
 * @example slope of 0 g at 0 h, 1 g at 1 h, 2 g at 2 h, 9 g at 3 h // 2_000: the median of 1, 1, 1, 3, 4 and 7 is 2
 */
export function slope(offs: readonly Off[]): number | null {
  const slopes = pairsOf(offs).map(({ overMs, by }) => (by * HOUR_MS) / overMs)
  return slopes.length === 0 ? null : medianOf(slopes)
}

/**
 * Kendall's S of weight against time as a standard normal: how surely it drifts at all.
 *
 *   S = Σ sign(x_j − x_i) over pairs of different times     var = [n(n−1)(2n+5) − Σ t(t−1)(2t+5)] / 18     z = (S ∓ 1)/√var
 *
 * t: pieces of one time. Ties between weights are few at a scale's step and left out of var, which makes z smaller.
 * Source: Kendall, M. G. (1975), Rank Correlation Methods, 4th ed., chapter 4; Hollander and Wolfe, Nonparametric
 * Statistical Methods, section 8.1 (both from memory).
 */
export function kendallZ(offs: readonly Off[]): number {
  const s = pairsOf(offs).reduce((sum, { by }) => sum + Math.sign(by), 0)
  const term = (n: number) => n * (n - 1) * (2 * n + 5)
  const times = new Map<number, number>()
  for (const { atMs } of offs) times.set(atMs, (times.get(atMs) ?? 0) + 1)
  const variance = (term(offs.length) - [...times.values()].reduce((sum, t) => sum + term(t), 0)) / 18
  return variance <= 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance)
}

function pairsOf(offs: readonly Off[]): { readonly overMs: number; readonly by: number }[] {
  return offs.flatMap((one, place) =>
    offs
      .slice(place + 1)
      .filter(({ atMs }) => atMs !== one.atMs)
      .map(({ atMs, off }) => ({
        overMs: Math.abs(atMs - one.atMs),
        by: atMs > one.atMs ? off - one.off : one.off - off,
      })),
  )
}

function meanOf(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length
}

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = Math.floor(sorted.length / 2)
  const upper = sorted[middle] ?? 0
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? upper) + upper) / 2
}
