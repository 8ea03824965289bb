import jstat from 'jstat'
import { assert } from '../support.ts'

/**
 * How many pieces will be asked for: a distribution over whole pieces, from 0 on.
 *
 * Why not jstat's negative binomial: against scipy, its incomplete beta function stops at 3e-7 of a fraction (off by up to
 * 5e-8), and its `negbin` gives NaN for a dispersion under 1 and Infinity for a large one. The probabilities follow from
 * p(0) by their ratios, as they are defined, and their running sum agrees to 1e-12. Where p(0) is too small for a
 * double, at means from about 700 on, jstat has the word: there its error is far below one piece.
 */
export interface Pieces {
  readonly mean: number
  readonly variance: number
  /** P(demand ≤ n), n any number. */
  cdf(n: number): number
}

/** A sum of probabilities may miss a part that it equals by its last digits (references: 2/3 out of six sixths). */
const SAME_PART = 1e-12
/** exp(−700) is about the smallest double that still has all its digits. */
const LEAST_EXPONENT = -700

/**
 * Negative binomial by mean and dispersion k: variance = mean + mean²/k. Poisson where k is Infinity.
 *
 *   p(0) = (k / (k + mean))^k,   p(n) / p(n − 1) = (a + b/n),   a = mean / (k + mean),   b = (k − 1)·a
 *
 * Source: Klugman, Panjer & Willmot, Loss Models, the (a, b, 0) class.
 * @throws AssertionError unless mean ≥ 0 and k > 0
 * @example quantile(negativeBinomial(100, 20), 0.8) // 120
 */
export function negativeBinomial(mean: number, dispersion: number): Pieces {
  assert(mean >= 0 && Number.isFinite(mean), `a mean of pieces is 0 or more: ${mean}`)
  assert(dispersion > 0, `a dispersion is above 0: ${dispersion}`)
  if (mean === 0) return { mean: 0, variance: 0, cdf: (n) => (n >= 0 ? 1 : 0) }
  const part = dispersion === Number.POSITIVE_INFINITY ? 0 : mean / (dispersion + mean)
  // Beyond a part of 1e-9 the logarithm's series has only its first term left in a double.
  const exponent = part < 1e-9 ? -mean : dispersion * Math.log1p(-part)
  const cdf =
    exponent < LEAST_EXPONENT
      ? byLibrary(mean, dispersion, part)
      : bySum(Math.exp(exponent), part, part < 1e-9 ? mean : (dispersion - 1) * part)
  return { mean, variance: mean + (part === 0 ? 0 : (mean * mean) / dispersion), cdf }
}

/** Negative binomial by mean and variance; Poisson where the variance is no larger than the mean. */
export function byMoments(mean: number, variance: number): Pieces {
  if (mean === 0) return negativeBinomial(0, 1)
  return negativeBinomial(mean, variance > mean ? (mean * mean) / (variance - mean) : Number.POSITIVE_INFINITY)
}

/**
 * The smallest whole n with P(demand ≤ n) ≥ part.
 * @param part 0 to 1; for 1, where a double says so
 * @example quantile(negativeBinomial(12, Infinity), 0.9) // 17
 */
export function quantile(pieces: Pieces, part: number): number {
  assert(part >= 0 && part <= 1, `a part lies between 0 and 1: ${part}`)
  const reached = (n: number) => pieces.cdf(n) >= part - SAME_PART
  if (reached(0)) return 0
  let below = 0
  let high = Math.max(1, Math.ceil(pieces.mean + Math.sqrt(pieces.variance)))
  while (!reached(high)) {
    below = high
    high *= 2
  }
  while (high - below > 1) {
    const middle = Math.floor((below + high) / 2)
    if (reached(middle)) high = middle
    else below = middle
  }
  return high
}

/**
 * Pieces sold of so many: E[min(demand, stock)] = Σ P(demand > n), n from 0 to stock − 1.
 * @param stock whole pieces, 0 or more
 */
export function expectedSold(pieces: Pieces, stock: number): number {
  let sold = 0
  for (let n = 0; n < stock; n += 1) sold += 1 - pieces.cdf(n)
  return sold
}

/** A distribution from the chance of each number of pieces, from 0 on; what is missing to 1 is beyond the last. */
export function fromChances(chances: ArrayLike<number>): Pieces {
  const sums: number[] = []
  let sum = 0
  let mean = 0
  let squares = 0
  for (let n = 0; n < chances.length; n += 1) {
    const chance = chances[n] ?? 0
    sum += chance
    mean += n * chance
    squares += n * n * chance
    sums.push(Math.min(1, sum))
  }
  const cdf = (n: number) => (n < 0 ? 0 : n >= sums.length - 1 ? 1 : (sums[Math.floor(n)] ?? 1))
  return { mean, variance: Math.max(0, squares - mean * mean), cdf }
}

/** The running sum of probabilities, made as far as somebody asks. */
function bySum(first: number, a: number, b: number): (n: number) => number {
  const sums = [first]
  let chance = first
  let sum = first
  let isWhole = false
  return (asked) => {
    if (!(asked >= 0)) return 0
    const n = Math.floor(asked)
    for (let next = sums.length; next <= n && !isWhole; next += 1) {
      chance *= a + b / next
      // Past the last digit of the sum nothing changes any more.
      isWhole = sum > 0.5 && sum + chance === sum
      sum = isWhole ? 1 : Math.min(1, sum + chance)
      sums.push(sum)
    }
    return sums[n] ?? 1
  }
}

function byLibrary(mean: number, dispersion: number, part: number): (n: number) => number {
  return (asked) => {
    const n = Math.floor(asked)
    if (!(n >= 0)) return 0
    return part < 1e-9 ? 1 - jstat.lowRegGamma(n + 1, mean) : jstat.ibeta(1 - part, dispersion, n + 1)
  }
}
