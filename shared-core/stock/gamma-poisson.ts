/** What is known of a rate: a gamma distribution of a shape and of an exposure, its mean their quotient. */
export interface Gamma {
  readonly shape: number
  readonly exposure: number
}

/**
 * A rate after more of it was seen: the conjugate update of a gamma prior by Poisson counts.
 *
 *   rate ~ Gamma(α, β),  y | rate ~ Poisson(rate · x)   ⇒   rate | y ~ Gamma(α + y, β + x)
 *
 * @param seen y events over an exposure of x, in the prior's units
 * Source: Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.6.
 * @example updated({ shape: 3, exposure: 5 }, { events: 3, exposure: 2 }) // { shape: 6, exposure: 7 }, mean 0.857
 */
export function updated(prior: Gamma, seen: { readonly events: number; readonly exposure: number }): Gamma {
  return { shape: prior.shape + seen.events, exposure: prior.exposure + seen.exposure }
}

/**
 * How many events there will be over a further exposure: negative binomial.
 *
 *   mean = α·x / β        variance = mean · (1 + x / β)
 *
 * Source: as above, section 2.6, the predictive distribution.
 */
export function foreseen({ shape, exposure }: Gamma, further: number): { mean: number; variance: number } {
  if (exposure <= 0) return { mean: 0, variance: 0 }
  const mean = (shape * further) / exposure
  return { mean, variance: mean * (1 + further / exposure) }
}
