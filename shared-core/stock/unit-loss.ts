/**
 * The unit normal loss L(z) = φ(z) − z·(1 − Φ(z)): how far, on average, a standard normal number lies above z, counting
 * 0 where it lies below. Read off a table with straight lines between its places: `exp` differs in the last bit between
 * engines, and what a count books is decided on the server and guessed on a screen by this same function.
 * @param z any; below 0 it is L(−z) − z
 * @returns right to within 0.004
 * Source: Silver, Pyke and Thomas, Inventory and Production Management in Supply Chains, 4th ed., appendix III (G_u(k)).
 * @example unitLoss(0) // 0.3989, i.e. 1 / √(2π)
 */
export function unitLoss(z: number): number {
  if (z < 0) return unitLoss(-z) - z
  const place = z / STEP
  const below = Math.floor(place)
  const here = LOSS[below] ?? 0
  const next = LOSS[below + 1] ?? 0
  return here + (next - here) * (place - below)
}

/**
 * The mean of a normal number of which what is below 0 counts as 0: what is left on a rod when more may have been asked
 * for than there was.
 *
 *   E[max(0, mean + sd·Z)] = mean + sd·L(mean / sd)
 */
export function meanAboveNone(mean: number, sd: number): number {
  if (sd <= 0) return Math.max(0, mean)
  return mean + sd * unitLoss(mean / sd)
}

const STEP = 0.25
/** L at 0, 0.25, 0.5 and so on; 0 from 3.5. Computed in double precision from φ and Φ. */
const LOSS = [
  0.398942, 0.286345, 0.197797, 0.131167, 0.083315, 0.050587, 0.029307, 0.016174, 0.008491, 0.004235, 0.002004,
  0.000899, 0.000382, 0.000154,
] as const
