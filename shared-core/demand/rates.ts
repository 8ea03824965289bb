import jstat from 'jstat'

/** A gamma that is nearer to certain than this differs from a point by less than a piece in a thousand. */
const CERTAIN = 1e6
/** Rates may lie further apart where each one's Poisson is wide: 4 · √(mean / k), between these. Measured. */
const PER_SPREAD = 4
const FEWEST = 8
const MOST = 48
/** Below 0.006 jstat's quantile gives NaN; below this the series' first term is right to a thousandth. */
const SHAPE_LEAST = 0.01

/**
 * A gamma rate of mean 1 as equally likely values: the mean of each of n equal parts of it, so that their mean is 1 too.
 * Poissons of these rates, mixed, meet the chances of the negative binomial within 0.013 (means up to 120, k from 0.3 to
 * 60; tests/core/demand/run-out.test.ts).
 *
 *   value of part j = n · (P(k + 1, q_j) − P(k + 1, q_(j−1))),   q_j the quantile j / n of Gamma(k, 1)
 *
 * since x · density of Gamma(k) is k · density of Gamma(k + 1).
 * @param shape k above 0; Infinity is a rate that is known
 * @param pieces expected of a rate of 1
 */
export function equallyLikelyRates(shape: number, pieces: number): readonly number[] {
  if (shape >= CERTAIN) return [1]
  const count = Math.min(MOST, Math.max(FEWEST, Math.ceil(PER_SPREAD * Math.sqrt(pieces / shape))))
  const rates: number[] = []
  let below = 0
  for (let part = 1; part <= count; part += 1) {
    const upTo = part === count ? 1 : jstat.lowRegGamma(shape + 1, gammaQuantile(part / count, shape))
    rates.push(count * Math.max(0, upTo - below))
    below = upTo
  }
  return rates
}

/** P(k, x) is x^k / Γ(k + 1) where k and x are small: where few pieces go by the dozen, and little of the day is left. */
function gammaQuantile(part: number, shape: number): number {
  if (shape >= SHAPE_LEAST) return jstat.gammapinv(part, shape)
  return Math.exp((Math.log(part) + jstat.gammaln(shape + 1)) / shape)
}
