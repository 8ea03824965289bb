import { DAY_MIXES_MAX } from '../day/dough-limits.ts'
import type { Mixer } from '../shop/shop.ts'
import { milligrams } from '../shop/weight.ts'
import type { FormulaNeed } from './day-plan.ts'
import type { MixPieces } from './mix.ts'

export interface FlourSplit {
  /** Flour of each mix, milligrams; they sum exactly to what was split and differ by one milligram at most. */
  readonly mixes: readonly number[]
  readonly fits: FormulaNeed['fits']
  readonly mixer: FormulaNeed['mixer']
}

/**
 * Splits flour evenly into as few mixes as the mixer's most allows.
 *
 *   mixes = ⌈flour / most⌉
 *
 * Where even so each is below the mixer's least, no other number helps: fewer are above its most, more are smaller still.
 * It is split all the same and said, as a baker may mix less by hand or add to it.
 * More mixes than a day may have are not made either: whoever typed 50 g instead of 50 kg sees that nothing fits.
 * @param flourMilligrams all flour of the formula, pre-ferments' included, as it all ends in the bowl
 * @param mixer null: nobody has said what it holds, so it is one mix
 * @example splitFlour(50_000_000, 10 kg to 25 kg) // two of 25_000_000, fits
 */
export function splitFlour(flourMilligrams: number, mixer: Pick<Mixer, 'leastFlour' | 'mostFlour'> | null): FlourSplit {
  if (flourMilligrams <= 0) return { mixes: [], fits: 'fits', mixer: limitsOf(mixer) }
  const limits = limitsOf(mixer)
  if (limits === null) return { mixes: [flourMilligrams], fits: 'fits', mixer: null }
  const needed = Math.ceil(flourMilligrams / Math.max(1, limits.mostMilligrams))
  const count = Math.min(needed, DAY_MIXES_MAX)
  const each = Math.floor(flourMilligrams / count)
  const longer = flourMilligrams - each * count
  const mixes = Array.from({ length: count }, (_, n) => each + (n < longer ? 1 : 0))
  const isWithin = each >= limits.leastMilligrams && needed === count
  return { mixes, fits: isWithin ? 'fits' : count === 1 ? 'belowLeast' : 'unequal', mixer: limits }
}

function limitsOf(mixer: Pick<Mixer, 'leastFlour' | 'mostFlour'> | null): FlourSplit['mixer'] {
  return mixer === null
    ? null
    : { leastMilligrams: milligrams(mixer.leastFlour), mostMilligrams: milligrams(mixer.mostFlour) }
}

/**
 * Which pieces come of which mix: dough after dough, so that a small one is shaped of one mix. All pieces laid end to end by
 * weight are cut where the mixes end, at the nearest piece: a mix holds its pieces to within one piece.
 * @param mixes weights of any kind, of which the shares count
 * @returns for each mix its pieces; over all mixes they sum exactly to what was given
 * @example two equal mixes, 80 plain of 120 g and 20 minis of 60 g // 45 plain; 35 plain and 20 minis
 */
export function splitPieces(mixes: readonly number[], pieces: readonly MixPieces[]): MixPieces[][] {
  const total = mixes.reduce((sum, one) => sum + one, 0)
  const weight = pieces.reduce((sum, one) => sum + one.pieces * one.pieceMilligrams, 0)
  let upTo = 0
  const ends = mixes.map((one, n) => {
    upTo += one
    return n === mixes.length - 1 ? Number.POSITIVE_INFINITY : total === 0 ? 0 : (weight * upTo) / total
  })
  return ends.map((end, n) => {
    const from = ends[n - 1] ?? Number.NEGATIVE_INFINITY
    let begins = 0
    return pieces.flatMap((one) => {
      const first = begins
      begins += one.pieces * one.pieceMilligrams
      const within = piecesUpTo(end, first, one) - piecesUpTo(from, first, one)
      return within === 0 ? [] : [{ ...one, pieces: within }]
    })
  })
}

function piecesUpTo(end: number, first: number, { pieces, pieceMilligrams }: MixPieces): number {
  if (end === Number.POSITIVE_INFINITY) return pieces
  if (end <= first) return 0
  return Math.min(pieces, Math.round((end - first) / pieceMilligrams))
}
