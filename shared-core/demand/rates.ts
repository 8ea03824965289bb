import jstat from 'jstat'

/** A gamma that is nearer to certain than this differs from a point by less than a piece in a thousand. */
const CERTAIN = 1e6

/**
 * A gamma rate of mean 1 as equally likely values: the mean of each of so many equal parts of it. Their mean is 1 as the
 * gamma's is; with 16, chances of a negative binomial are met within a few thousandths (tests/core/demand/run-out.test.ts).
 *
 *   value of part j = n · (P(k + 1, q_j) − P(k + 1, q_(j−1))),   q_j the quantile j / n of Gamma(k, 1)
 *
 * since x · density of Gamma(k) is k · density of Gamma(k + 1).
 * @param shape k above 0; Infinity is a rate that is known
 */
export function equallyLikelyRates(shape: number, count: number): readonly number[] {
  if (shape >= CERTAIN) return [1]
  const rates: number[] = []
  let below = 0
  for (let part = 1; part <= count; part += 1) {
    const upTo = part === count ? 1 : jstat.lowRegGamma(shape + 1, jstat.gammapinv(part / count, shape))
    rates.push(count * Math.max(0, upTo - below))
    below = upTo
  }
  return rates
}
