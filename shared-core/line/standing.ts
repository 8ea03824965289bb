import type { Case } from '../day/decision.ts'
import type { Batch } from '../day/state.ts'
import { batchId } from '../ids.ts'
import type { BatchStage } from '../shop/shop.ts'
import { untilFrom, windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import type { Want } from './gather.ts'

/** A new batch at a stage, with the window that its dough or variety has there. */
export function standing(oneCase: Case, want: Want, stage: Exclude<BatchStage, 'oven'>, sinceMs: EpochMs): Batch {
  const { doughId, varietyId, pieces } = want
  const until = untilFrom(windowOf(oneCase.shop, stage, doughId, varietyId), sinceMs)
  return {
    id: batchId(oneCase.newId()),
    doughId,
    varietyId,
    pieces,
    stage,
    loadId: null,
    sinceMs,
    until,
    presumed: false,
  }
}
