import type { Act } from '../../shared-core/day/commands.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import type { LeftFate } from '../words/counter-jobs.ts'
import type { CounterRod } from './counter-rods.ts'

/** What is left of a variety, and what becomes of it. */
export interface LeftRod {
  readonly varietyId: VarietyId
  readonly name: string
  /** Today's, cooling ones included. */
  readonly fresh: number
  readonly dayOld: number
  readonly fate: LeftFate
}

export type Fates = ReadonlyMap<VarietyId, LeftFate>

/** What is left, in the set-up's order; day-old unless somebody chose otherwise, as the close itself would have it. */
export function leftRods(rods: readonly CounterRod[], fates: Fates): readonly LeftRod[] {
  return rods
    .map(({ varietyId, name, forSale, cooling, dayOld }) => ({
      varietyId,
      name,
      fresh: forSale + cooling,
      dayOld,
      fate: fates.get(varietyId) ?? 'dayOld',
    }))
    .filter((rod) => piecesLeft(rod) > 0)
}

export function piecesLeft({ fresh, dayOld }: Pick<LeftRod, 'fresh' | 'dayOld'>): number {
  return fresh + dayOld
}

const FATES: readonly LeftFate[] = ['dayOld', 'given', 'wasted']

/** One touch further. @example nextFate('dayOld') // 'given' */
export function nextFate(fate: LeftFate): LeftFate {
  return FATES[(FATES.indexOf(fate) + 1) % FATES.length] ?? 'dayOld'
}

export function allTo(left: readonly LeftRod[], fate: LeftFate): Fates {
  return new Map(left.map((rod) => [rod.varietyId, fate]))
}

/** Pieces by fate, those with none left out. */
export function fateSums(left: readonly LeftRod[]): readonly { readonly fate: LeftFate; readonly pieces: number }[] {
  return FATES.map((fate) => ({
    fate,
    pieces: left.reduce((sum, rod) => (rod.fate === fate ? sum + piecesLeft(rod) : sum), 0),
  })).filter(({ pieces }) => pieces > 0)
}

/**
 * What a close sends, in order: what is given away or wasted leaves the rods first, and what then is left the close
 * itself makes day-old.
 */
export function closeActs(left: readonly LeftRod[], label: string, crewHours: number): readonly Act[] {
  const gone = left.flatMap(({ varietyId, fresh, dayOld, fate }): readonly Act[] => {
    if (fate === 'dayOld') return []
    return [
      ...(fresh > 0 ? [{ type: 'remove', varietyId, pieces: fresh, fate } as const] : []),
      ...(dayOld > 0 ? [{ type: 'dayOldOut', varietyId, pieces: dayOld, fate } as const] : []),
    ]
  })
  const crew = crewHours === 0 ? {} : { crewMinutes: crewHours * 60 }
  return [...gone, { type: 'closeDay', label, ...crew }]
}
