import type { EventOf, Presumed, Take } from '../day/events.ts'
import type { Folding } from '../day/folding.ts'
import { book, touch } from '../day/folding.ts'
import { put } from '../day/recorder.ts'
import type { Account, Batch, Load } from '../day/state.ts'
import type { LoadId } from '../ids.ts'
import { addLot } from '../stock/apply-stock.ts'
import { assert, must } from '../support.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'
import { boardKey, kettleKey, stoneKey } from './touches.ts'

/** Pieces that join the account: shaped, carried in, or found. */
export function applyPieces(folding: Folding, batch: Batch, column: keyof Account, pieces: number): void {
  putBatches(folding, [batch])
  book(folding, batch.doughId, column, pieces)
}

export function applyBatchMoved(folding: Folding, event: EventOf<'batchMoved'>): void {
  takeFromBatches(folding, event.takes)
  putBatches(folding, [event.put])
  touchKettle(folding, event.presumed)
  if (event.put.stage === 'kettle') touch(folding, kettleKey(event.put.doughId), event.put.pieces)
}

export function applyBatchWasted(folding: Folding, event: EventOf<'batchWasted'>): void {
  takeFromBatches(folding, [event.take])
  book(folding, event.doughId, 'wasted', event.take.pieces)
}

export function applyLoaded(folding: Folding, event: EventOf<'loaded'>): void {
  takeFromBatches(folding, event.takes)
  putBatches(folding, event.puts)
  putLoad(folding, event.load, event.atMs)
  touchKettle(folding, event.presumed)
  touchByLoad(folding, event.load, [], event.puts)
}

/**
 * What a load was turns out to be something else: what it was is counted, and what it was not is counted off. Once it is
 * flipped its pieces lie on the stone.
 */
function touchByLoad(folding: Folding, load: Load, takes: readonly Take[], puts: readonly Batch[]): void {
  const keys = load.phase === 'second-side' ? [boardKey, stoneKey] : [boardKey]
  for (const { batchId, pieces } of takes)
    touchBy(folding, load, must(folding.state.batches, batchId), { keys, pieces: -pieces })
  for (const put of puts) touchBy(folding, load, put, { keys, pieces: put.pieces })
}

type KeyOf = typeof boardKey

function touchBy(
  folding: Folding,
  { id }: Load,
  { varietyId, loadId }: Batch,
  { keys, pieces }: { readonly keys: readonly KeyOf[]; readonly pieces: number },
): void {
  if (varietyId === null || loadId !== id) return
  for (const key of keys) touch(folding, key(varietyId), pieces)
}

/** Flipped off the boards onto the stone; a flip that was none is counted off again. */
function touchStone(folding: Folding, loadId: LoadId, sign: 1 | -1): void {
  for (const { varietyId, loadId: of, pieces } of folding.state.batches.values())
    if (of === loadId && varietyId !== null) touch(folding, stoneKey(varietyId), sign * pieces)
}

/** Pieces that were boiled and nobody tapped it. */
function touchKettle(folding: Folding, presumed: readonly Presumed[]): void {
  for (const { act, doughId, pieces } of presumed) if (act === 'dip') touch(folding, kettleKey(doughId), pieces)
}

export function applyLoadChanged(folding: Folding, event: EventOf<'loadChanged'>): void {
  touchByLoad(folding, event.load, event.takes, event.puts)
  takeFromBatches(folding, event.takes)
  putBatches(folding, event.puts)
  touchKettle(folding, event.presumed)
  // Nobody was at the door for this: what baked there was only put right.
  put(folding.state, folding.undo, 'loads', event.load.id, event.load)
}

export function applyFlipped(folding: Folding, event: EventOf<'flipped'>): void {
  const load = must(folding.state.loads, event.loadId)
  const { boardsWetAtMs, atMs } = event
  putLoad(folding, { ...load, phase: 'second-side', flippedAtMs: atMs, boardsWetAtMs }, atMs)
  touchStone(folding, load.id, 1)
}

export function applyOut(folding: Folding, event: EventOf<'out'>): void {
  const { state, undo } = folding
  const load = must(state.loads, event.loadId)
  takeFromBatches(folding, event.takes)
  for (const lot of event.lots) addLot(folding, lot)
  if (!event.last) return
  put(state, undo, 'loads', load.id, null)
  const use = state.shelves.get(load.shelfId)
  // On a hearth an earlier load's boards may still be drying.
  const drying =
    use !== undefined && use.boardsWetAtMs > event.atMs ? use : { boardsFreed: 0, boardsWetAtMs: event.boardsWetAtMs }
  put(state, undo, 'shelves', load.shelfId, {
    touchedAtMs: event.atMs,
    boardsFreed: drying.boardsFreed + load.boards,
    boardsWetAtMs: epochMs(Math.max(drying.boardsWetAtMs, event.boardsWetAtMs)),
  })
}

export function applyLoadMoved(folding: Folding, event: EventOf<'loadMoved'>): void {
  const { state, undo } = folding
  const from = state.shelves.get(event.fromShelfId)
  if (from !== undefined) put(state, undo, 'shelves', event.fromShelfId, { ...from, touchedAtMs: event.atMs })
  const before = must(state.loads, event.load.id)
  if (before.phase !== event.load.phase) touchStone(folding, before.id, before.phase === 'first-side' ? 1 : -1)
  putLoad(folding, event.load, event.atMs)
}

export function applyLoadUndone(folding: Folding, event: EventOf<'loadUndone'>): void {
  touchByLoad(folding, must(folding.state.loads, event.loadId), event.takes, [])
  takeFromBatches(folding, event.takes)
  putBatches(folding, event.puts)
  put(folding.state, folding.undo, 'loads', event.loadId, null)
}

/** A load and the touch of its shelf: the door of a rotating oven stands where it was touched last. */
function putLoad({ state, undo }: Folding, load: Load, atMs: EpochMs): void {
  put(state, undo, 'loads', load.id, load)
  const use = state.shelves.get(load.shelfId) ?? { boardsFreed: 0, boardsWetAtMs: atMs, touchedAtMs: atMs }
  // A late offline tap does not turn the door back.
  const touchedAtMs = atMs > use.touchedAtMs ? atMs : use.touchedAtMs
  put(state, undo, 'shelves', load.shelfId, { ...use, touchedAtMs })
}

function putBatches({ state, undo }: Folding, batches: readonly Batch[]): void {
  for (const batch of batches) put(state, undo, 'batches', batch.id, batch)
}

function takeFromBatches({ state, undo }: Folding, takes: readonly Take[]): void {
  for (const take of takes) {
    const batch = must(state.batches, take.batchId)
    assert(take.pieces > 0 && take.pieces <= batch.pieces, `take ${take.pieces} of ${batch.pieces} in ${batch.id}`)
    const pieces = batch.pieces - take.pieces
    put(state, undo, 'batches', batch.id, pieces === 0 ? null : { ...batch, pieces })
  }
}
