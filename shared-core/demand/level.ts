/**
 * An item's pieces on a usual day on the menu, weekdays and special days taken out:
 *
 *   long = (Σ long-decayed pieces + g·guess) / (Σ long-decayed days + g),
 *   level = (Σ decayed pieces + 4·long) / (Σ decayed days + 4),
 *
 * so that recent days count most and what is known of long ago holds it. A single speed does nearly as well on open data,
 * but another one each time: half after 8 days on the training days, after 15 on the later ones. Two hold both.
 */
export interface Level {
  pieces: number
  days: number
  longPieces: number
  longDays: number
}

/** What is known without sales: pieces a day, and how many days' sales they are worth. */
export interface Prior {
  readonly pieces: number
  readonly days: number
}

/** Open days on the menu after which a day counts half. Measured on training days: 5 to 8, and 40 to 120, do alike. */
const KEEP = 0.5 ** (1 / 6)
const KEEP_LONG = 0.5 ** (1 / 60)
const LONG_WORTH_DAYS = 4

export function newLevel(): Level {
  return { pieces: 0, days: 0, longPieces: 0, longDays: 0 }
}

export function levelOf({ pieces, days, longPieces, longDays }: Level, prior: Prior): number {
  const long = (longPieces + prior.days * prior.pieces) / (longDays + prior.days)
  return (pieces + LONG_WORTH_DAYS * long) / (days + LONG_WORTH_DAYS)
}

/**
 * Takes in a day.
 * @param pieces asked for @param factor weekday × special day, around 1
 * @param share how likely the item was on the menu: a day off it is not forgotten for
 */
export function learnLevel(level: Level, pieces: number, factor: number, share: number): void {
  const keep = KEEP ** share
  const keepLong = KEEP_LONG ** share
  level.pieces = level.pieces * keep + share * pieces
  level.days = level.days * keep + share * factor
  level.longPieces = level.longPieces * keepLong + share * pieces
  level.longDays = level.longDays * keepLong + share * factor
}
