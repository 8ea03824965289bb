import type { VarietyId } from '../ids.ts'

/**
 * How fast pieces of a variety leave without anybody saying so, learnt from what counts found. Older days weigh less:
 * all sums are halved at a close. `stock/learn.ts` adds to them, `stock/leak.ts` reads them.
 */
export interface Habit {
  readonly varietyId: VarietyId
  /** Pieces that counts found missing, signed. */
  readonly missing: number
  /** Pieces on record as sold over the same spans: of this variety, and of all. */
  readonly sold: number
  readonly shopSold: number
  /** The spans, as far as there was some and the shop was open: hours by their weight, then by how busy each span was. */
  readonly usualMs: number
  readonly busyMs: number
  /** How many counts could be compared with what was expected, and the sum of their (gap / doubt)² in hundredths. */
  readonly checks: number
  readonly squares: number
  /** By the hour of the day, in order. */
  readonly hours: readonly HabitHour[]
}

export interface HabitHour {
  /** 0 to 23 of the shop's day; 24 and more after midnight. */
  readonly hour: number
  /** Hundredths of pieces that were missing, and that would have been were all hours alike. */
  readonly missing: number
  readonly usual: number
}
