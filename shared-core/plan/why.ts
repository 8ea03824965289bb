import type { Amount } from './how-many.ts'

/** One reason of a number of pieces. Over all reasons of a number the pieces sum up to it. */
export type Why =
  /** What is usually asked for; typed guesses where there are no sales. */
  | { readonly code: 'usual'; readonly pieces: number }
  /** What the weekday does to it, and what is special about the day. */
  | { readonly code: 'weekday' | 'special'; readonly pieces: number; readonly factor: number }
  /** More than is likely, or less, as too few and too many do not cost the same. */
  | ({ readonly code: 'sure'; readonly pieces: number; readonly isAssumed: boolean } & Weighed)
  | { readonly code: 'orders'; readonly pieces: number }
  /** Chilled and still inside its window that day. */
  | { readonly code: 'carried'; readonly pieces: number }
  /** Whole trays, or boards. */
  | { readonly code: 'unit'; readonly pieces: number; readonly unit: number }
  /** What is still asked for today, what is there for it, and what is on the way. */
  | { readonly code: 'rest' | 'there' | 'onTheWay'; readonly pieces: number }
  /** No more dough is there. */
  | { readonly code: 'dough'; readonly pieces: number }

/** What one too few and one too many cost, in whole cents, and of a hundred such days how many it is enough for. */
export interface Weighed {
  readonly underCents: number
  readonly overCents: number
  readonly coveredPercent: number
}

export function weighedOf({ underCents, overCents, covered }: Amount): Weighed {
  return {
    underCents: Math.round(underCents),
    overCents: Math.round(overCents),
    coveredPercent: Math.round(covered * 100),
  }
}

/**
 * Reasons with pieces in fractions, made whole so that they sum up to the whole number that they explain; those that come
 * to nothing are left out.
 * @param rest the reason that takes what the others do not explain
 */
export function summedUp(total: number, parts: readonly Why[], rest: (pieces: number) => Why): readonly Why[] {
  let upTo = 0
  let whole = 0
  const rounded = parts.map((part) => {
    upTo += part.pieces
    const pieces = Math.round(upTo) - whole
    whole += pieces
    return { ...part, pieces }
  })
  return [...rounded, rest(total - whole)].filter(({ pieces }) => pieces !== 0)
}
