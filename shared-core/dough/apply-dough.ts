import type { EventOf } from '../day/events.ts'
import type { Folding } from '../day/folding.ts'
import { put } from '../day/recorder.ts'
import { must } from '../support.ts'
import type { Mix, OnHand } from './mix.ts'
import { withReading } from './places.ts'

export function applyWantedSet({ state, undo }: Folding, { wanted }: EventOf<'wantedSet'>): void {
  put(state, undo, 'wanted', wanted.date, wanted.lines.length === 0 ? null : wanted)
}

/** Those of the same day that nobody had begun go, unless they are among the new ones. */
export function applyMixesPlanned({ state, undo }: Folding, { date, mixes }: EventOf<'mixesPlanned'>): void {
  const stay = new Set(mixes.map(({ id }) => id))
  for (const { id, stage, bakeDate } of [...state.mixes.values()]) {
    if (stage === 'planned' && bakeDate === date && !stay.has(id)) put(state, undo, 'mixes', id, null)
  }
  for (const mix of mixes) put(state, undo, 'mixes', mix.id, mix)
}

export function applyMixesOrdered(folding: Folding, { mixes }: EventOf<'mixesOrdered'>): void {
  for (const { mixId, order, startAtMs } of mixes) change(folding, mixId, () => ({ order, startAtMs }))
}

export function applyMixDropped({ state, undo }: Folding, { mixId }: EventOf<'mixDropped'>): void {
  put(state, undo, 'mixes', mixId, null)
}

export function applyLineWeighed(folding: Folding, { mixId, line, weighedAtMs }: EventOf<'lineWeighed'>): void {
  change(folding, mixId, ({ lines }) => ({
    lines: lines.map((one) => (one.key === line ? { ...one, weighedAtMs } : one)),
  }))
}

export function applyMixRead(folding: Folding, { mixId, temps, water, friction }: EventOf<'mixRead'>): void {
  change(folding, mixId, () => ({ temps, water }))
  if (friction !== null) put(folding.state, folding.undo, 'frictions', friction.id, friction)
}

export function applyMixMoved(folding: Folding, { mixId, stage, until, begun, atMs }: EventOf<'mixMoved'>): void {
  const beginning = begun === null ? {} : { mixedAtMs: atMs, ...begun }
  change(folding, mixId, () => ({ stage, until, sinceMs: atMs, ...beginning }))
}

export function applyMixFolded(folding: Folding, { mixId, folds }: EventOf<'mixFolded'>): void {
  change(folding, mixId, () => ({ folds }))
}

export function applyMixEnded(folding: Folding, event: EventOf<'mixEnded'>): void {
  change(folding, event.mixId, ({ lostMilligrams, spoiltMilligrams }) => ({
    stage: 'ended',
    sinceMs: event.atMs,
    until: null,
    lostMilligrams: lostMilligrams + event.lostMilligrams,
    spoiltMilligrams: spoiltMilligrams + event.spoiltMilligrams,
  }))
}

/** Pieces out of a mix. */
export function takeFromMix(folding: Folding, from: EventOf<'piecesShaped'>['from']): void {
  if (from === undefined) return
  change(folding, from.mixId, ({ shapedMilligrams, unexplainedMilligrams }) => ({
    shapedMilligrams: shapedMilligrams + from.milligrams,
    unexplainedMilligrams: unexplainedMilligrams + from.unexplainedMilligrams,
  }))
}

export function applyBatchPlaced({ state, undo }: Folding, { batchId, place }: EventOf<'batchPlaced'>): void {
  const { place: _before, ...batch } = must(state.batches, batchId)
  put(state, undo, 'batches', batchId, place === null ? batch : { ...batch, place })
}

/** Integers, and + − × ÷ only: the same on every engine. */
export function applyPlaceRead({ state, undo }: Folding, { place, read, atMs }: EventOf<'placeRead'>): void {
  put(state, undo, 'readings', place, withReading(state.readings.get(place), { place, atMs, read }))
}

export function applyOnHandSet(folding: Folding, { onHand }: EventOf<'onHandSet'>): void {
  for (const one of onHand) putOnHand(folding, one)
}

/** Nothing, and never counted: nobody knows. */
export function putOnHand({ state, undo }: Folding, onHand: OnHand): void {
  const isKnown = onHand.countedAtMs !== null || onHand.milligrams !== 0
  put(state, undo, 'onHand', onHand.ingredientId, isKnown ? onHand : null)
}

export function applyBuildDropped({ state, undo }: Folding, { buildId }: EventOf<'buildDropped'>): void {
  put(state, undo, 'builds', buildId, { ...must(state.builds, buildId), dropped: true })
}

function change({ state, undo }: Folding, id: Mix['id'], how: (mix: Mix) => Partial<Mix>): void {
  const mix = must(state.mixes, id)
  put(state, undo, 'mixes', id, { ...mix, ...how(mix) })
}
