import type { Batch, Line, State } from '../day/state.ts'
import type { BatchId, DoughId, VarietyId } from '../ids.ts'
import type { Shop } from '../shop/shop.ts'
import { must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import type { ExpectedLoad } from './fill.ts'
import { piecesOf } from './lines.ts'
import { byWindow } from './route.ts'

/**
 * Which pieces on boards and in the kettle go into which planned load. It follows the way in which a load tap gathers
 * them: pieces already of the variety before plain dough, the boards before the kettle, the oldest window first; the
 * soonest load first. From it follow what the pieces in the kettle become, and what must still be dipped.
 */
export interface Allotment {
  readonly expected: ExpectedLoad
  readonly parts: readonly Part[]
  /** What is neither on boards nor in the kettle, by what must be brought. */
  readonly short: readonly Short[]
}

export interface Part {
  readonly batch: Batch
  readonly varietyId: VarietyId
  readonly pieces: number
}

/** Pieces still to be brought to the kettle. `varietyId` only where the mixer decided it; else what they become is in `lines`. */
export interface Short {
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly lines: readonly Line[]
}

export function allot(state: State, shop: Shop, expected: readonly ExpectedLoad[]): readonly Allotment[] {
  const pool = [...state.batches.values()]
    .filter((batch) => batch.stage === 'boards' || batch.stage === 'kettle')
    .sort(byWindow(state))
    .sort((one, other) => stageFirst(one) - stageFirst(other))
    .map((batch) => ({ batch, left: batch.pieces }))
  return expected.map((one) => allotOne(one, pool, shop))
}

/** What the pieces of each batch on boards or in the kettle become, by the planned loads; pieces left over are not named. */
export function becoming(allotments: readonly Allotment[]): ReadonlyMap<BatchId, readonly Line[]> {
  const becomes = new Map<BatchId, Line[]>()
  for (const { batch, varietyId, pieces } of allotments.flatMap((one) => one.parts)) {
    const lines = becomes.get(batch.id) ?? []
    const same = lines.findIndex((line) => line.varietyId === varietyId)
    if (same < 0) lines.push({ varietyId, pieces })
    else lines[same] = { varietyId, pieces: pieces + (lines[same]?.pieces ?? 0) }
    becomes.set(batch.id, lines)
  }
  return becomes
}

/** When the last of its pieces is or will be on boards; null when they wait for nothing that the board knows. */
export function boardedAt({ parts }: Allotment): EpochMs | null {
  return parts.reduce<EpochMs | null>((latest, { batch }) => {
    const atMs = batch.stage === 'kettle' ? (batch.until?.targetAtMs ?? batch.sinceMs) : batch.sinceMs
    return latest === null || atMs > latest ? atMs : latest
  }, null)
}

/** Until when its pieces on boards may wait; null when none of them has a limit. */
export function boardsLatest({ parts }: Allotment): EpochMs | null {
  return parts.reduce<EpochMs | null>((soonest, { batch }) => {
    const atMs = batch.stage === 'boards' ? (batch.until?.latestAtMs ?? null) : null
    return atMs !== null && (soonest === null || atMs < soonest) ? atMs : soonest
  }, null)
}

interface Pooled {
  readonly batch: Batch
  left: number
}

function stageFirst(batch: Batch): number {
  return batch.stage === 'boards' ? 0 : 1
}

function allotOne(expected: ExpectedLoad, pool: readonly Pooled[], shop: Shop): Allotment {
  const parts: Part[] = []
  const missing = new Map<VarietyId, number>()
  const wants = expected.planned.lines.map((line) => ({
    ...line,
    doughId: must(shop.varieties, line.varietyId).doughId,
  }))
  for (const varietySaid of [true, false]) {
    for (const want of wants) {
      let short = missing.get(want.varietyId) ?? want.pieces
      for (const pooled of pool) {
        const pieces = Math.min(short, pooled.left)
        if (pieces === 0 || !fits(pooled.batch, want, varietySaid)) continue
        pooled.left -= pieces
        short -= pieces
        parts.push({ batch: pooled.batch, varietyId: want.varietyId, pieces })
      }
      missing.set(want.varietyId, short)
    }
  }
  return { expected, parts, short: shortOf(missing, shop) }
}

function fits(batch: Batch, want: { varietyId: VarietyId; doughId: DoughId }, varietySaid: boolean): boolean {
  if (varietySaid) return batch.varietyId === want.varietyId
  return batch.varietyId === null && batch.doughId === want.doughId
}

function shortOf(missing: ReadonlyMap<VarietyId, number>, shop: Shop): readonly Short[] {
  const groups = new Map<string, Omit<Short, 'pieces' | 'lines'> & { lines: Line[] }>()
  for (const [varietyId, pieces] of missing) {
    if (pieces === 0) continue
    const { doughId, decidedAt } = must(shop.varieties, varietyId)
    const atMixer = decidedAt === 'mixer' ? varietyId : null
    const key = `${doughId} ${atMixer ?? ''}`
    const group = groups.get(key) ?? { doughId, varietyId: atMixer, lines: [] }
    group.lines.push({ varietyId, pieces })
    groups.set(key, group)
  }
  return [...groups.values()].map((group) => ({ ...group, pieces: piecesOf(group.lines) }))
}
