// Checked by the compiler alone (`npm run check`): every line under a mark must be an error, or the mark is one.
import type { BatchId, CommandId, LoadId, VarietyId } from '../../shared-core/ids.ts'
import { batchId, derivedId, doughId } from '../../shared-core/ids.ts'
import type { DurationMs, EpochMs } from '../../shared-core/units.ts'
import { clampMs, durationMs, epochMs, later, spanMs } from '../../shared-core/units.ts'

export function instantsAndSpansDoNotMix(atMs: EpochMs, byMs: DurationMs): readonly EpochMs[] {
  // @ts-expect-error a span cannot stand where an instant is wanted
  later(byMs, byMs)
  // @ts-expect-error an instant cannot stand where a span is wanted
  later(atMs, atMs)
  // @ts-expect-error a plain number is no instant
  later(1_000, byMs)
  // @ts-expect-error a sum of the two is a plain number until it is checked
  const sum: EpochMs = atMs + byMs
  // @ts-expect-error a difference of instants is not by itself a span
  const difference: DurationMs = atMs - atMs
  // @ts-expect-error one of the bounds is a span
  clampMs(atMs, atMs, byMs)
  // @ts-expect-error days are not among the units: a shop's day has no fixed length
  spanMs(1, 'd')
  return [later(epochMs(0), durationMs(difference)), later(atMs, spanMs(3.5, 'min')), sum]
}

export function idsOfDifferentKindsDoNotMix(load: LoadId, command: CommandId): BatchId {
  // @ts-expect-error a load's id is no batch's
  const batch: BatchId = load
  // @ts-expect-error a dough's id is no variety's
  const variety: VarietyId = doughId('plain')
  // @ts-expect-error only a command makes ids of new things
  derivedId(load, 1)
  // @ts-expect-error any text is no id
  const typed: BatchId = 'b1'
  return batchId(derivedId(command, 1) + batch + variety + typed)
}
