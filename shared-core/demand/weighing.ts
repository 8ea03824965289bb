/** Parts that are weighed against each other. */
export const PARTS = [0, 0.1, 0.2, 0.35, 0.5, 0.75, 1] as const
/** Before anything was seen: a little is likelier than nothing, and than all. Common sense, no source. */
const BEFORE = [1, 2, 2, 1, 0.5, 0.25, 0.25]

/**
 * Which of some parts foretells best, learnt day by day: each part's squared errors, in units of the variance that was
 * expected, are summed, and it weighs prior · exp(−sum / 2) as a normal likelihood has it. The mean over parts moves
 * slowly from the prior, and no part is ruled out for good, as sums are forgotten.
 */
export class Weighing {
  readonly #errors = new Float64Array(PARTS.length)

  /**
   * @param error of a part: (what came − what it foretold)² / variance, summed
   * @param keep what the past weighs after it
   */
  learn(error: (part: number) => number, keep: number): void {
    for (const [place, part] of PARTS.entries()) {
      this.#errors[place] = (this.#errors[place] ?? 0) * keep + error(part)
    }
  }

  /** The mean part. */
  get part(): number {
    const least = Math.min(...this.#errors)
    let weights = 0
    let sum = 0
    for (const [place, part] of PARTS.entries()) {
      const weight = (BEFORE[place] ?? 0) * Math.exp((least - (this.#errors[place] ?? 0)) / 2)
      weights += weight
      sum += weight * part
    }
    return sum / weights
  }
}
