import type { CareKind } from '../day/said.ts'
import type { State } from '../day/state.ts'
import type { KettleCare } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { later } from '../units.ts'
import { boiledIn } from './touches.ts'

/** What the kettle's water needs, by what has been boiled in it. */
export interface KettleCareNow {
  /** Those that the shop wants to be reminded of, in the order of `KETTLE_CARES`. */
  readonly reminders: readonly CareReminder[]
  /** When the water boils again after cold water went in, if nobody says so sooner; null while it boils. */
  readonly boilsAgainAtMs: EpochMs | null
}

export interface CareReminder {
  readonly care: KettleCare
  /** Pieces boiled since it was done, or since all of the water was changed; since ever where neither was. */
  readonly boiled: number
  /** Pieces from one to the next, by the set-up. */
  readonly every: number
  readonly isDue: boolean
  /** When it was done last; null: never yet, or not since the water was changed. */
  readonly atMs: EpochMs | null
}

/** In the order in which they are told: the most frequent first. */
export const KETTLE_CARES: readonly KettleCare[] = ['topUp', 'skim', 'malt', 'change']

/** @returns no reminders without a set-up */
export function kettleCare(state: State, nowMs: EpochMs): KettleCareNow {
  const { shop } = state
  if (shop === null) return { reminders: [], boilsAgainAtMs: null }
  const reminders = KETTLE_CARES.flatMap((care) => {
    const every = shop.kettle.care[care]
    return every === null ? [] : [reminder(state, care, every)]
  })
  return { reminders, boilsAgainAtMs: boilsAgainAt(state, nowMs) }
}

/**
 * When the kettle can take the next dip after cold water went in; null while it boils. "Boiling" said since then ends
 * it, and so does the time that the set-up gives for it: nobody has to tap it.
 */
export function boilsAgainAt(state: State, nowMs: EpochMs): EpochMs | null {
  const { shop, cares } = state
  if (shop === null) return null
  const cold = COLD_WATER.reduce((latestMs, kind) => Math.max(latestMs, cares.get(kind)?.atMs ?? 0), 0) as EpochMs
  if (cold === 0 || (cares.get('boiling')?.atMs ?? -1) >= cold) return null
  const atMs = later(cold, shop.kettle.recoverMs)
  return atMs > nowMs ? atMs : null
}

const COLD_WATER: readonly CareKind[] = ['topUp', 'change']

function reminder(state: State, care: KettleCare, every: number): CareReminder {
  const last = state.cares.get(care) ?? null
  const change = state.cares.get('change') ?? null
  const isSinceChange = last !== null && (change === null || last.atMs >= change.atMs)
  const from = isSinceChange ? last : change
  const boiled = Math.max(0, boiledIn(state.touches) - boiledIn(from?.touches ?? []))
  return { care, boiled, every, isDue: boiled >= every, atMs: isSinceChange ? last.atMs : null }
}
