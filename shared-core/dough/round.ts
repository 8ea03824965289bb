/** A line lighter than so many steps is weighed on a finer scale: half a step of it would be more than half a percent. */
const STEPS_OF_A_COARSE_LINE = 100
const FINER = 10
/** Finer than this no scale of a bakery shows. Common practice, no source. */
const FINEST_MILLIGRAMS = 100

/**
 * Weights rounded so that a scale can show them, and their total is kept.
 *
 * Lines of 100 steps and more are rounded to whole steps by largest remainders: each lies one step from its exact weight
 * at most, and together they are exactly what is left of the exact total after the small lines, rounded to the step. Small
 * lines (yeast, salt of a small mix) are rounded by themselves to a tenth of the step, again and again until they have 100
 * of those or a tenth of a gram is reached: half a percent off at most, where a whole step could be all of the yeast.
 *
 *   |Σ rounded − Σ exact| ≤ step / 2
 *
 * for up to ten small lines. Where all lines are small, the total is off by half of a fine step for each line at most.
 * Source of the method: largest remainders, as in apportionment (Hamilton's method), from memory.
 * @param exact not negative @param step in the same unit, at least 1 @returns whole numbers, in the same order
 * @example roundedToScale([8_938_547.5, 5_094_972.1, 178_771], 5_000) // [8_940_000, 5_095_000, 179_000]
 */
export function roundedToScale(exact: readonly number[], step: number): number[] {
  const isCoarse = (weight: number) => weight >= STEPS_OF_A_COARSE_LINE * step
  const rounded = exact.map((weight) => (isCoarse(weight) ? 0 : nearest(weight, fineStep(weight, step))))
  const small = rounded.reduce((sum, weight) => sum + weight, 0)
  const total = exact.reduce((sum, weight) => sum + weight, 0)
  const coarse = exact.flatMap((weight, at) => (isCoarse(weight) ? [{ at, weight }] : []))
  const shares = coarse.map(({ at, weight }) => ({ at, whole: Math.floor(weight / step), rest: weight % step }))
  const wanted = Math.round((total - small) / step)
  const missing = wanted - shares.reduce((sum, { whole }) => sum + whole, 0)
  for (const { at, whole } of shares) rounded[at] = whole * step
  const byRest = [...shares].sort((one, other) => other.rest - one.rest || one.at - other.at)
  const next = missing > 0 ? byRest : byRest.reverse()
  for (let n = 0; n < Math.abs(missing) && next.length > 0; n += 1) {
    const at = next[n % next.length]?.at ?? 0
    rounded[at] = (rounded[at] ?? 0) + Math.sign(missing) * step
  }
  return rounded
}

function nearest(weight: number, step: number): number {
  return Math.round(weight / step) * step
}

function fineStep(weight: number, step: number): number {
  let fine = step
  while (weight < STEPS_OF_A_COARSE_LINE * fine && fine > FINEST_MILLIGRAMS)
    fine = Math.max(FINEST_MILLIGRAMS, Math.round(fine / FINER))
  return fine
}
