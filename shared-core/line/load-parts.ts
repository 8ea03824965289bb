import type { OverLimit } from '../day/answers.ts'
import type { Case, Decision } from '../day/decision.ts'
import { happen, raise, refuse } from '../day/decision.ts'
import type { Take } from '../day/events.ts'
import { shelfMark } from '../day/marks.ts'
import type { Batch, Line, Load, State } from '../day/state.ts'
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
import { isShelfOver } from './shelf-over.ts'
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

/** What a filling of a shelf exceeds at an instant. `replaces`: the load whose contents or place are put right. */
export function overLimits(
  oneCase: Case,
  { shelf, lines, atMs, replaces }: { shelf: Shelf; lines: readonly Line[]; atMs: EpochMs; replaces: Load | null },
): readonly OverLimit[] {
  const { shop, state } = oneCase
  const shelfFull = overShelf(state, shop, shelf, lines, replaces?.id ?? null)
  const boarded = lines.reduce((sum, line) => sum + boardedPieces(state, line), 0)
  const has = Math.ceil(boarded / shop.boards.pieces) + (replaces?.phase === 'first-side' ? replaces.boards : 0)
  const needs = replaces?.phase === 'second-side' ? 0 : boardsNeeded(shop, lines)
  const short = needs - has > boardsNow(state, atMs).free
  return [...(shelfFull ? (['shelf'] as const) : []), ...(short ? (['boards'] as const) : [])]
}

/** Asks dry hands about a shelf that holds more than it can: more likely the contents are wrong. */
export function raiseOverShelf(
  oneCase: Case,
  { shelf, lines, atMs, over }: { shelf: Shelf; lines: readonly Line[]; atMs: EpochMs; over: readonly OverLimit[] },
): void {
  if (!over.includes('shelf')) return
  raise(oneCase, atMs, { kind: 'over', limit: 'shelf', shelfId: shelf.id, pieces: piecesOf(lines), most: shelf.pieces })
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

/** By id: a screen that was given the state whole holds its batches in another order than the server. */
/** A load on a shelf that was over for today: people know more, and it takes bagels again. */
export function reopenShelf(oneCase: Case, shelfId: ShelfId, atMs: EpochMs): void {
  if (!isShelfOver(oneCase.state, shelfId)) return
  happen(oneCase, atMs, { type: 'marked', mark: { kind: 'shelf-open', id: shelfMark(shelfId), shelfId, atMs } })
}

export function batchesOf(state: State, id: LoadId): readonly Batch[] {
  return [...state.batches.values()].filter((batch) => batch.loadId === id).sort(byId)
}

export function byId(one: Batch, other: Batch): number {
  return one.id < other.id ? -1 : 1
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
