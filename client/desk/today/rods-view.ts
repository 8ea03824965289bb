import type { State } from '../../../shared-core/day/state.ts'
import type { VarietyId } from '../../../shared-core/ids.ts'
import type { Known } from '../../../shared-core/stock/left.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import type { Ahead, Prospect } from '../../../shared-core/stock/prospect.ts'
import { withProspects } from '../../../shared-core/stock/prospect.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** A rod in one glance. */
export interface BriefRod {
  readonly varietyId: VarietyId
  readonly name: string
  /** For sale, as well as it is known. */
  readonly pieces: number
  /** It is not known to the piece. */
  readonly isAbout: boolean
  readonly onTheWay: number
  readonly kept: number
  readonly cooling: number
  readonly dayOld: number
  /** What comes next. */
  readonly next: { readonly pieces: number; readonly atMs: EpochMs } | null
  readonly known: Exclude<Known, { readonly how: 'nothing' }> | null
  readonly goneSinceMs: EpochMs | null
  readonly ahead: Prospect
}

/** Rods of which there is or was something today; those that nobody has heard of yet say nothing. */
export function briefRods(state: State, nowMs: EpochMs, until: Ahead): readonly BriefRod[] {
  return withProspects(rods(state, nowMs), until).flatMap((rod) => {
    const { varietyId, name, likely, within, onTheWay, kept, cooling, dayOld, known, goneSinceMs, ahead } = rod
    const coming = onTheWay.reduce((sum, one) => sum + one.pieces, 0)
    const isSilent = known.how === 'nothing' && likely + coming + kept + dayOld === 0 && goneSinceMs === null
    if (isSilent) return []
    const next = onTheWay[0] ?? null
    return {
      varietyId,
      name,
      pieces: Math.max(0, likely),
      isAbout: within > 0,
      onTheWay: coming,
      kept,
      cooling,
      dayOld,
      next: next === null ? null : { pieces: next.pieces, atMs: next.readyAtMs },
      known: known.how === 'nothing' ? null : known,
      goneSinceMs,
      ahead,
    }
  })
}
