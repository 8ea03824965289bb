import type { Act } from '../../shared-core/day/commands.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import type { AmountsPurpose, CounterWords } from '../words/counter.ts'
import type { Hand } from './hand.ts'
import { linesOf, piecesInHand } from './hand.ts'

/** How many of a variety, as far as that has been chosen; null: not yet. */
export interface Chosen {
  readonly varietyId: VarietyId
  readonly pieces: number | null
}

/** The varieties in hand, of none of which a number is chosen yet: what was touched only says which. */
export function nothingChosen(hand: Hand): readonly Chosen[] {
  return hand.map(({ varietyId }) => ({ varietyId, pieces: null }))
}

export function withChosen(lines: readonly Chosen[], varietyId: VarietyId, pieces: number): readonly Chosen[] {
  return lines.map((line) => (line.varietyId === varietyId ? { varietyId, pieces } : line))
}

/** The lines of which a number was chosen, none being a number too. */
export function chosenLines(lines: readonly Chosen[]): Hand {
  return lines.flatMap(({ varietyId, pieces }) => (pieces === null ? [] : [{ varietyId, pieces }]))
}

/** The number with other singles, its half-dozens kept. @example withSingles(27, 0) // 24 */
export function withSingles(pieces: number | null, singles: number): number {
  const before = pieces ?? 0
  return before - (before % PIECES_PER_RING) + singles
}

/** Two rows of four; arrows take two places where that is not enough. */
const LINES_MOST = 8
const LINES_BESIDE_ARROWS = 6

/** The lines of one page. A page that does not exist counts as the nearest. */
export function linesPage<Item>(
  lines: readonly Item[],
  wanted: number,
): { readonly items: readonly Item[]; readonly page: number; readonly pages: number } {
  if (lines.length <= LINES_MOST) return { items: lines, page: 0, pages: 1 }
  const pages = Math.ceil(lines.length / LINES_BESIDE_ARROWS)
  const page = Math.min(pages - 1, Math.max(0, wanted))
  return { items: lines.slice(page * LINES_BESIDE_ARROWS, (page + 1) * LINES_BESIDE_ARROWS), page, pages }
}

export interface AmountsKey {
  readonly id: 'sold' | 'keep' | 'counted' | 'wasted' | 'kitchen' | 'given'
  readonly label: string
  /** What its touch does, in this order. */
  readonly acts: readonly Act[]
}

/**
 * The keys that take what was chosen; without a number while nothing is. A count takes lines of nothing too: none there
 * is a count.
 * @param sells whether sales are tapped here
 */
export function actKeys(
  purpose: Exclude<AmountsPurpose, 'unnamed'>,
  hand: Hand,
  { counter }: CounterWords,
  sells: boolean,
): readonly AmountsKey[] {
  const { amounts } = counter
  const pieces = hand.length === 0 ? null : piecesInHand(hand)
  const lines = linesOf(hand)
  switch (purpose) {
    case 'keep':
      return [{ id: 'keep', label: amounts.keep(pieces), acts: [{ type: 'keep', lines }] }]
    case 'count':
      return [{ id: 'counted', label: amounts.counted(pieces), acts: countActs(hand) }]
    case 'other': {
      const removed = (fate: 'wasted' | 'kitchen' | 'given') =>
        lines.map((line) => ({ type: 'remove', ...line, fate }) as const)
      const sold: AmountsKey = { id: 'sold', label: amounts.sold(pieces), acts: [{ type: 'sell', lines }] }
      return [
        ...(sells ? [sold] : []),
        { id: 'wasted', label: amounts.wasted(pieces), acts: removed('wasted') },
        { id: 'kitchen', label: amounts.kitchen(pieces), acts: removed('kitchen') },
        { id: 'given', label: amounts.given(pieces), acts: removed('given') },
      ]
    }
  }
}

/** One rod is asked back when it is far off; several are a sweep, each counted to the piece. */
function countActs(hand: Hand): readonly Act[] {
  const [only] = hand
  if (only === undefined) return []
  if (hand.length === 1) return [{ type: 'count', ...only }]
  return [{ type: 'sweep', counts: hand.map((line) => ({ ...line, within: 0 })) }]
}
