/** Parts that are weighed against each other. */
export const PARTS = [0, 0.1, 0.2, 0.35, 0.5, 0.75, 1] as const
/** Before anything was seen: a little is likelier than much. Common sense, no source. */
const BEFORE = [2, 2, 2, 1, 0.5, 0.2, 0.1]
/** Errors beyond so many standard deviations count by their size, no more by its square: one odd day decides nothing. */
const USUAL_ERROR = 1.5
/** What an error counts as evidence: items of a day go together, so that a day says less than so many items would. */
const COUNTS = 0.3

/**
 * Which of some parts foretells best, learnt day by day: each part's errors (`errorOf`) are summed, and it weighs
 * prior · exp(−sum · COUNTS / 2), as a normal likelihood has it. The mean over parts moves slowly from the prior, and no
 * part is ruled out for good, as sums are forgotten.
 */
export class Weighing {
  readonly #errors = new Float64Array(PARTS.length)

  /**
   * @param error of a part, summed over what the day has to say
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
      const weight = (BEFORE[place] ?? 0) * Math.exp((COUNTS * (least - (this.#errors[place] ?? 0))) / 2)
      weights += weight
      sum += weight * part
    }
    return sum / weights
  }
}

/** Of an error in standard deviations, its square, and in the tails its size. Source: Huber, Robust Statistics (1981). */
export function errorOf(deviation: number): number {
  const size = Math.abs(deviation)
  return size < USUAL_ERROR ? size * size : USUAL_ERROR * (2 * size - USUAL_ERROR)
}
