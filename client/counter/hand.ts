import type { Line } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'

/** What the seller has in hand for one customer: each touch of a rod is one piece, in the order of the touches. */
export type Hand = readonly Line[]

/** One piece more of a variety. */
export function touched(hand: Hand, varietyId: VarietyId): Hand {
  if (!hand.some((line) => line.varietyId === varietyId)) return [...hand, { varietyId, pieces: 1 }]
  return hand.map((line) => (line.varietyId === varietyId ? { ...line, pieces: line.pieces + 1 } : line))
}

/** One piece fewer of a variety, if there is one. */
export function letGo(hand: Hand, varietyId: VarietyId): Hand {
  return hand
    .map((line) => (line.varietyId === varietyId ? { ...line, pieces: line.pieces - 1 } : line))
    .filter((line) => line.pieces > 0)
}

export function piecesInHand(hand: Hand): number {
  return hand.reduce((sum, { pieces }) => sum + pieces, 0)
}

/**
 * What a sale of so many is: all that was touched, and the rest spread evenly over the touched varieties, those with
 * the fewest first, of equals the one touched first.
 * @returns null when nothing is in hand, or more than that is
 * @example Sesame 1, Poppy 1, spread to 13 // Sesame 7, Poppy 6
 * @example Sesame 8, Poppy 1, spread to 12 // Sesame 8, Poppy 4
 */
export function spreadTo(hand: Hand, pieces: number): Hand | null {
  const rest = pieces - piecesInHand(hand)
  if (hand.length === 0 || rest < 0) return null
  const counts = hand.map((line) => line.pieces)
  for (let left = rest; left > 0; left--) {
    const fewest = counts.indexOf(Math.min(...counts))
    counts[fewest] = (counts[fewest] ?? 0) + 1
  }
  return hand.map(({ varietyId }, index) => ({ varietyId, pieces: counts[index] ?? 0 }))
}

/** The lines that an act names: those with pieces. */
export function linesOf(hand: Hand): readonly Line[] {
  return hand.filter((line) => line.pieces > 0)
}
