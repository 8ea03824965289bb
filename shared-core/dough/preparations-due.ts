import type { State } from '../day/state.ts'
import type { PreparationId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import type { NoonOf } from './dates.ts'

/** A pre-ferment or soaker to begin, or a culture to feed. */
export interface PreparationDue {
  readonly preparationId: PreparationId
  /** The day of boiling that it is for; null: the culture is fed. */
  readonly forDate: string | null
  /** Flour, water and the rest, without the seed: what mixes take of it, less what was made already. */
  readonly milligrams: number
  /** Of the ripe one that it is built from. */
  readonly seedMilligrams: number
  /** When it may be begun, should be, and must be, so that it is ripe for the earliest mix that uses it. */
  readonly begin: { readonly earliestAtMs: EpochMs; readonly targetAtMs: EpochMs; readonly latestAtMs: EpochMs }
  /** The earliest mix that uses it; null: the culture is fed. */
  readonly usedAtMs: EpochMs | null
  readonly status: 'coming' | 'due' | 'late'
}

/**
 * What must be made for the mixes of today, tomorrow and the day after, the soonest first.
 * @param localDate the shop's date now, YYYY-MM-DD
 */
export function preparationsDue(
  _state: State,
  _shop: Shop,
  _nowMs: EpochMs,
  _localDate: string,
  _noonOf: NoonOf,
): PreparationDue[] {
  return []
}
