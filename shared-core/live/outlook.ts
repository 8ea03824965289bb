import type { VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'

/**
 * What the rest of today will probably bring. Advice: reckoned on the server, told to all screens, latest only, outside
 * the fold and its hash. Instants and whole numbers, ready to be shown.
 */
export interface Outlook {
  /** The day that it is of. */
  readonly date: string
  /** When what it rests on stood so. */
  readonly atMs: EpochMs
  readonly closeAtMs: EpochMs
  /** From when the oven must be empty of bagels, today's slip in it; null: the shop bakes until it closes. */
  readonly changeoverAtMs: EpochMs | null
  /** The last load goes in by then; null: as above, or no more is baked today. */
  readonly lastLoadInAtMs: EpochMs | null
  /** In the set-up's order. */
  readonly varieties: readonly VarietyOutlook[]
}

export interface VarietyOutlook {
  readonly varietyId: VarietyId
  /** How sure: from typed guesses alone, from few days of sales, or from many. */
  readonly basis: 'guess' | 'few' | 'many'
  /** Pieces that will still be asked for before the close. */
  readonly rest: Range
  /**
   * There is none for the first time by these instants with 10, 50 and 90 % chance, with what is on the way as it comes;
   * null: not before the close.
   * Of a variety that is gone now all three are `atMs` where nothing is on the way.
   */
  readonly gone: { readonly t10Ms: EpochMs | null; readonly t50Ms: EpochMs | null; readonly t90Ms: EpochMs | null }
  /** When more comes; null: nothing is on the way. */
  readonly moreAtMs: EpochMs | null
  /** When what is for sale now is gone with 50 % chance; null: not before more comes, or nothing is on the way. */
  readonly shortAtMs: EpochMs | null
  /** Chance in whole percent to be gone before more comes; null: nothing is on the way. */
  readonly beforeMorePercent: number | null
  /** Chance in whole percent to be gone before the close, with all that is on the way. */
  readonly beforeClosePercent: number
  /** Expected at the close: pieces left, and pieces asked for in vain. */
  readonly leftAtClose: number
  readonly lost: number
  /** Null: no changeover today, or it is over. */
  readonly atChangeover: AtChangeover | null
}

/** Whole pieces, not fewer with 10, 50 and 90 % chance. */
export interface Range {
  readonly q10: number
  readonly q50: number
  readonly q90: number
}

export interface AtChangeover {
  /** For sale when no more is baked. */
  readonly left: Range
  /** Chance in whole percent that this lasts to the close. */
  readonly lastsPercent: number
  /** Pieces that are worth putting into the last loads, besides what is planned. */
  readonly more: number
}

/** Older than this an outlook is not shown: what it rests on has changed. */
export const OUTLOOK_AGE_MS_MAX = 10 * 60_000

/** The outlook as far as it may still be shown. @returns null for one of another time */
export function freshOutlook(outlook: Outlook | null, nowMs: EpochMs): Outlook | null {
  return outlook === null || nowMs - outlook.atMs > OUTLOOK_AGE_MS_MAX ? null : outlook
}
