import type { Counted } from '../day/state.ts'

/**
 * What a count says together with what was expected. A sweep in half-dozens says that the rod holds so many within
 * three; what was expected says where in there. The whole number nearest to the mean of
 *
 *   weight(k) = (1 + z² / 3)⁻²,   z = (k − expected) / doubt,   k from counted − within to counted + within
 *
 * a bell with long tails (Student's, three degrees of freedom): what lies far outside the interval was expected wrongly,
 * and then pulls but little. A doubt smaller than the distance to the interval was too small, and counts as that.
 * So rounding to half-dozens biases no number, and a rod that was known stays as it was known.
 * Why not the nearer end of the interval: where nothing was known, it would be off by three each time.
 * @param expected mean before the count, from 0 up  @param doubt its standard deviation
 * @example keptWithin({ mean: 22, knownDoubt: 0 }, { pieces: 24, within: 3 }) // 22
 * @example keptWithin({ mean: 60, knownDoubt: 0 }, { pieces: 24, within: 3 }) // 24: it was known wrongly
 */
export function keptWithin(
  { mean, knownDoubt }: { readonly mean: number; readonly knownDoubt: number },
  { pieces, within }: Pick<Counted, 'pieces' | 'within'>,
): number {
  if (within === 0) return pieces
  const least = Math.max(0, pieces - within)
  const most = pieces + within
  const doubt = Math.max(knownDoubt, least - mean, mean - most)
  if (doubt < SURE) return Math.min(most, Math.max(least, Math.round(mean)))
  let sum = 0
  let weights = 0
  for (let k = least; k <= most; k += 1) {
    const z = (k - mean) / doubt
    const root = 1 + (z * z) / 3
    sum += k / (root * root)
    weights += 1 / (root * root)
  }
  return Math.round(sum / weights)
}

/** A doubt under half a piece is none. */
const SURE = 0.5
