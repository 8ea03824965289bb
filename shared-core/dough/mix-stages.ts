import type { Until } from '../day/state.ts'
import type { Formula } from '../shop/formula.ts'
import type { DwellWindow } from '../shop/shop.ts'
import { untilFrom } from '../shop/windows.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import { durationMs, spanMs } from '../units.ts'
import type { MixStage } from './mix.ts'

/** In the order in which a mix goes through them. */
export const MIX_STAGES = [
  'planned',
  'mixing',
  'rest',
  'bulk',
  'bulkChill',
  'bench',
  'ended',
] as const satisfies readonly MixStage[]

export function isMixBefore(stage: MixStage, other: MixStage): boolean {
  return MIX_STAGES.indexOf(stage) < MIX_STAGES.indexOf(other)
}

/** A dough that mixes on warms and breaks down; one that rests on ferments (both common practice, no source). */
const OVER_MIXED_AFTER_MS = spanMs(3, 'min')
const RESTED_TOO_LONG_AFTER_MS = spanMs(30, 'min')

/** Whether mixes of a formula go through a stage. */
export function hasStage({ bulk }: Formula, stage: MixStage): boolean {
  if (stage === 'bulk') return bulk !== null
  return stage !== 'bulkChill' || bulk?.chill != null
}

/** When a stage that began at an instant may, should and must end; null where the formula gives no time. */
export function mixUntil(formula: Formula, stage: MixStage, sinceMs: EpochMs): Until | null {
  switch (stage) {
    case 'mixing':
      return untilFrom(exactly(formula.mixMs, OVER_MIXED_AFTER_MS), sinceMs)
    case 'rest':
      return formula.restMs === 0 ? null : untilFrom(exactly(formula.restMs, RESTED_TOO_LONG_AFTER_MS), sinceMs)
    case 'bulk':
      return untilFrom(formula.bulk?.window ?? null, sinceMs)
    case 'bulkChill':
      return untilFrom(formula.bulk?.chill ?? null, sinceMs)
    default:
      return null
  }
}

function exactly(forMs: DurationMs, slackMs: DurationMs): DwellWindow {
  return { earliestMs: forMs, targetMs: forMs, latestMs: durationMs(forMs + slackMs), unit: 'min' }
}
