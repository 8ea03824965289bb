import type { Batch, State } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import type { DoughId, VarietyId } from '../ids.ts'
import { earliestBoilMs } from '../line/float-hold.ts'
import { byWindow, isBefore } from '../line/route.ts'
import type { Shop } from '../shop/shop.ts'
import { windowOf } from '../shop/windows.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** Pieces of dough before the kettle that stand together. */
export interface DoughLot {
  readonly doughId: DoughId
  /** Said at the mixer (raisins in the dough); null: plain dough. */
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly stage: 'proof' | 'chill' | 'rack'
  /** Not into the kettle before it, by proof, chill, rack and float test. */
  readonly boilFromMs: EpochMs
  /** Where it stands it may stand so long; null: no window says. */
  readonly latestAtMs: EpochMs | null
}

/** Whose window closes first stands first. */
export function doughLots(state: State, shop: Shop, nowMs: EpochMs): readonly DoughLot[] {
  return [...state.batches.values()].sort(byWindow(state)).flatMap((batch) => {
    const { stage, doughId, varietyId, pieces } = batch
    if (stage !== 'proof' && stage !== 'chill' && stage !== 'rack') return []
    const boilFromMs = boilFrom(state, shop, batch, nowMs)
    return [{ doughId, varietyId, pieces, stage, boilFromMs, latestAtMs: untilOf(state, batch)?.latestAtMs ?? null }]
  })
}

/** Where it stands to its earliest end, then the earliest of each stage that is still before the kettle. */
function boilFrom(state: State, shop: Shop, batch: Batch, nowMs: EpochMs): EpochMs {
  const { stage, doughId, varietyId } = batch
  const route = shop.doughs.get(doughId)?.route ?? []
  let atMs: number = Math.max(untilOf(state, batch)?.earliestAtMs ?? nowMs, nowMs)
  for (const next of ['chill', 'rack'] as const)
    if (isBefore(stage, next) && route.includes(next)) atMs += windowOf(shop, next, doughId, varietyId)?.earliestMs ?? 0
  return epochMs(Math.max(atMs, earliestBoilMs(state, doughId, nowMs) ?? 0))
}
