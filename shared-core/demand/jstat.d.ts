/** What is used of jstat, which brings no types. */
declare module 'jstat' {
  const jstat: {
    /** Regularized incomplete beta function I_x(a, b). */
    readonly ibeta: (x: number, a: number, b: number) => number
    /** Lower regularized incomplete gamma function P(a, x). */
    readonly lowRegGamma: (a: number, x: number) => number
    /** The x at which `lowRegGamma(a, x)` is that share. */
    readonly gammapinv: (share: number, a: number) => number
    /** Logarithm of Γ. */
    readonly gammaln: (x: number) => number
    readonly normal: { readonly cdf: (x: number, mean: number, deviation: number) => number }
    readonly studentt: { readonly inv: (share: number, freedom: number) => number }
  }
  export default jstat
}
