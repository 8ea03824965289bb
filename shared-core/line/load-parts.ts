import type { OverLimit } from '../day/answers.ts'
import type { Case, Decision } from '../day/decision.ts'
import { refuse } from '../day/decision.ts'
import type { Take } from '../day/events.ts'
import type { Batch, Line, Load, State, Until } from '../day/state.ts'
import type { BatchId, DoughId, LoadId, ShelfId, VarietyId } from '../ids.ts'
import { batchId } from '../ids.ts'
import type { Shelf } from '../shop/shop.ts'
import { loadWindow, untilFrom, windowOf } from '../shop/windows.ts'
import { assert } from '../support.ts'
import type { DurationMs, EpochMs } from '../units.ts'
import { durationMs } from '../units.ts'
import { boardsNeeded, boardsNow } from './boards.ts'
import { overShelf } from './floor.ts'
import type { Want } from './gather.ts'
import { piecesOf } from './lines.ts'
import { standing } from './standing.ts'

/** Pieces of a load while they bake: they stay where they are until an out takes them. */
export function inOven({ newId }: Case, want: Want, load: LoadId, sinceMs: EpochMs): Batch {
  return { id: batchId(newId()), ...want, stage: 'oven', loadId: load, sinceMs, until: null, presumed: false }
}

/** What comes back out of a load lies on boards, as the variety that it was; nothing when there are no pieces. */
export function putBack(oneCase: Case, batch: Batch, pieces: number, atMs: EpochMs): readonly Batch[] {
  return pieces === 0 ? [] : [standing(oneCase, { ...batch, pieces }, 'boards', atMs)]
}

/** Pieces in the oven have a variety: loading says it. */
export function varietyOf(batch: Batch): VarietyId {
  assert(batch.varietyId !== null, `plain dough in the oven: ${batch.id}`)
  return batch.varietyId
}

/** From the oven to for sale; nothing when the shop gives no window for it. */
export function coolMsOf({ shop }: Case, batch: Batch): DurationMs {
  return windowOf(shop, 'cool', batch.doughId, batch.varietyId)?.targetMs ?? durationMs(0)
}

export function timesOf({ shop }: Case, lines: readonly Line[], atMs: EpochMs): Pick<Load, 'boards' | 'flip' | 'out'> {
  const ids = lines.map((line) => line.varietyId)
  return {
    boards: boardsNeeded(shop, lines),
    flip: untilFrom(loadWindow(shop, 'firstSide', ids), atMs),
    out: untilFrom(loadWindow(shop, 'bake', ids), atMs),
  }
}

export function overLimits(oneCase: Case, shelf: Shelf, lines: readonly Line[]): readonly OverLimit[] {
  const { shop, state, context } = oneCase
  const shelfFull = overShelf(state, shop, shelf, lines)
  const boarded = lines.reduce((sum, line) => sum + boardedPieces(state, line), 0)
  const short =
    boardsNeeded(shop, lines) - Math.ceil(boarded / shop.boards.pieces) > boardsNow(state, context.nowMs).free
  return [...(shelfFull ? (['shelf'] as const) : []), ...(short ? (['boards'] as const) : [])]
}

/** Pieces of a line that lie on boards already and so need none of the free ones. */
function boardedPieces(state: State, line: Line): number {
  const on = [...state.batches.values()].filter(
    (batch) => batch.stage === 'boards' && (batch.varietyId ?? line.varietyId) === line.varietyId,
  )
  return Math.min(line.pieces, piecesOf(on))
}

export function takenRefusal({ state, shop }: Case, shelfId: ShelfId): Decision | null {
  if (shop.oven.kind === 'hearth') return null
  const load = [...state.loads.values()].find((one) => one.shelfId === shelfId)
  return load === undefined ? null : refuse('already-loaded', { shelfId, atMs: load.loadedAtMs })
}

export function batchesOf(state: State, id: LoadId): readonly Batch[] {
  return [...state.batches.values()].filter((batch) => batch.loadId === id)
}

export function wholly(batch: Batch): Take {
  return { batchId: batch.id, pieces: batch.pieces }
}

export function takeLines(inside: readonly Batch[], lines: readonly Line[]): readonly Take[] | null {
  const takes: Take[] = []
  for (const line of lines) {
    let short = line.pieces
    for (const batch of inside) {
      const pieces = batch.varietyId === line.varietyId ? Math.min(short, batch.pieces) : 0
      if (pieces > 0) takes.push({ batchId: batch.id, pieces })
      short -= pieces
    }
    if (short > 0) return null
  }
  return takes
}

export function takeFromPool(
  pool: Map<BatchId, number>,
  inside: readonly Batch[],
  dough: DoughId,
  pieces: number,
): number {
  let short = pieces
  for (const batch of inside) {
    const got = batch.doughId === dough ? Math.min(short, pool.get(batch.id) ?? 0) : 0
    pool.set(batch.id, (pool.get(batch.id) ?? 0) - got)
    short -= got
  }
  return pieces - short
}

export function outOfTime(until: Until | null, atMs: EpochMs): readonly OverLimit[] {
  if (until === null) return []
  return atMs < until.earliestAtMs ? ['too-early'] : atMs > until.latestAtMs ? ['too-late'] : []
}
