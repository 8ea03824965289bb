import type { Act } from '../../shared-core/day/commands.ts'
import type { Counted, State } from '../../shared-core/day/state.ts'
import type { VarietyId } from '../../shared-core/ids.ts'
import { sweepFor } from '../../shared-core/stock/sweep.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { PIECES_PER_RING } from '../parts/rod-stack.ts'
import type { CounterWords } from '../words/counter.ts'
import type { CounterRod } from './counter-rods.ts'

/** A rod of a sweep: not yet looked at, left out, or counted. */
export type Looked = 'waiting' | 'skipped' | { readonly pieces: number; readonly within: number }

export interface SweepRod {
  readonly varietyId: VarietyId
  readonly looked: Looked
}

/** More are no sweep any more, they are a stocktake. */
export const SWEEP_RODS_MOST = 6
/** A count by half-dozens is right to within half of one. */
export const HALF_DOZEN_WITHIN = 3

/** The rods whose count is worth a look; when none is in doubt and somebody wants to count, those known least. */
export function rodsToCount(state: State, rods: readonly CounterRod[], nowMs: EpochMs): readonly VarietyId[] {
  const { varietyIds } = sweepFor(state, nowMs, SWEEP_RODS_MOST)
  if (varietyIds.length > 0) return varietyIds
  return rods
    .filter((rod) => rod.forSale > 0 || rod.soldToday > 0)
    .sort((one, other) => other.within - one.within || other.soldToday - one.soldToday)
    .slice(0, SWEEP_RODS_MOST)
    .map((rod) => rod.varietyId)
}

export function startSweep(varietyIds: readonly VarietyId[]): readonly SweepRod[] {
  return varietyIds.map((varietyId) => ({ varietyId, looked: 'waiting' }))
}

export function withLooked(rods: readonly SweepRod[], varietyId: VarietyId, looked: Looked): readonly SweepRod[] {
  return rods.map((rod) => (rod.varietyId === varietyId ? { varietyId, looked } : rod))
}

/** The rod to look at next, after the one just done; null when all are through. */
export function nextToLook(rods: readonly SweepRod[], after: VarietyId | null): VarietyId | null {
  const start = rods.findIndex((rod) => rod.varietyId === after) + 1
  const round = [...rods.slice(start), ...rods.slice(0, start)]
  return round.find((rod) => rod.looked === 'waiting')?.varietyId ?? null
}

export function countsOf(rods: readonly SweepRod[]): readonly Counted[] {
  return rods.flatMap(({ varietyId, looked }) =>
    looked === 'waiting' || looked === 'skipped' ? [] : [{ varietyId, ...looked }],
  )
}

/** One command for the whole sweep. */
export function sweepAct(rods: readonly SweepRod[]): Act {
  return { type: 'sweep', counts: countsOf(rods) }
}

/** Numbers of half-dozens to touch besides none: eight in a row with the expected one among the first half. */
const HALVES_SHOWN = 8
const HALVES_BELOW = 3

/** @returns half-dozens, ascending, at least one @example halvesAround(24) // [1, 2, 3, 4, 5, 6, 7, 8] */
export function halvesAround(likely: number): readonly number[] {
  const first = Math.max(1, Math.round(likely / PIECES_PER_RING) - HALVES_BELOW)
  return Array.from({ length: HALVES_SHOWN }, (_, index) => first + index)
}

/** A touch of a number of half-dozens. None is none to the piece. */
export function halvesCounted(halves: number): Looked {
  return { pieces: halves * PIECES_PER_RING, within: halves === 0 ? 0 : HALF_DOZEN_WITHIN }
}

/** What stands on a rod's own key. */
export function lookedText(looked: Looked, { jobs: { sweep } }: CounterWords): string {
  if (looked === 'waiting') return '–'
  if (looked === 'skipped') return sweep.skipped
  return looked.within === 0 ? String(looked.pieces) : sweep.about(looked.pieces)
}

/** The page of rods that holds the one being looked at: a sweep has one, a close may have more. */
export function pageAround(rods: readonly SweepRod[], active: VarietyId | null): readonly SweepRod[] {
  const index = rods.findIndex((rod) => rod.varietyId === active)
  const page = Math.floor((index === -1 ? Math.max(0, rods.length - 1) : index) / SWEEP_RODS_MOST)
  return rods.slice(page * SWEEP_RODS_MOST, (page + 1) * SWEEP_RODS_MOST)
}
