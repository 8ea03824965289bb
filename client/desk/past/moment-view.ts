import type { Line, LoadPhase, State } from '../../../shared-core/day/state.ts'
import type { DoughId, ShelfId, VarietyId } from '../../../shared-core/ids.ts'
import { contentsByLoad } from '../../../shared-core/line/contents.ts'
import { shelvesInOrder } from '../../../shared-core/line/turn.ts'
import type { BatchStage } from '../../../shared-core/shop/shop.ts'
import { BATCH_STAGES } from '../../../shared-core/shop/stages.ts'
import { rods } from '../../../shared-core/stock/left.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** The shop at an instant of a past day. */
export interface MomentOfDay {
  readonly oven: readonly ShelfThen[]
  readonly line: readonly StandingThen[]
  readonly rods: readonly RodThen[]
}

export interface ShelfThen {
  readonly shelfId: ShelfId
  /** A hearth holds several. */
  readonly loads: readonly { readonly phase: LoadPhase; readonly sinceMs: EpochMs; readonly lines: readonly Line[] }[]
}

export interface StandingThen {
  readonly stage: BatchStage
  readonly pieces: number
  readonly what: readonly { readonly doughId: DoughId; readonly varietyId: VarietyId | null; readonly pieces: number }[]
}

export interface RodThen {
  readonly varietyId: VarietyId
  readonly name: string
  readonly forSale: number
  readonly cooling: number
  readonly kept: number
}

/** The shop as it was: what was in the oven, what stood before it, and what the rods held. */
export function momentOfDay(state: State, atMs: EpochMs): MomentOfDay {
  const { shop } = state
  if (shop === null) return { oven: [], line: [], rods: [] }
  const contents = contentsByLoad(state, shop)
  const loads = [...state.loads.values()].sort((one, other) => one.loadedAtMs - other.loadedAtMs)
  return {
    oven: shelvesInOrder(state, shop).map(({ id }) => ({
      shelfId: id,
      loads: loads
        .filter(({ shelfId }) => shelfId === id)
        .map((load) => ({ phase: load.phase, sinceMs: load.loadedAtMs, lines: contents.get(load.id) ?? [] })),
    })),
    line: BATCH_STAGES.filter((stage) => stage !== 'oven').flatMap((stage) => standingIn(state, stage)),
    rods: rods(state, atMs)
      .filter(({ forSale, cooling, kept, soldToday }) => forSale + cooling + kept + soldToday > 0)
      .map(({ varietyId, name, forSale, cooling, kept }) => ({ varietyId, name, forSale, cooling, kept })),
  }
}

function standingIn({ batches }: State, stage: BatchStage): readonly StandingThen[] {
  const sums = new Map<string, StandingThen['what'][number]>()
  for (const batch of batches.values()) {
    if (batch.stage !== stage) continue
    const { doughId, varietyId } = batch
    const key = `${doughId} ${varietyId}`
    sums.set(key, { doughId, varietyId, pieces: (sums.get(key)?.pieces ?? 0) + batch.pieces })
  }
  const what = [...sums].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, sum]) => sum)
  const pieces = what.reduce((sum, one) => sum + one.pieces, 0)
  return pieces === 0 ? [] : [{ stage, pieces, what }]
}
