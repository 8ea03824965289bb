import type { Take } from '../day/events.ts'
import type { Batch, State } from '../day/state.ts'
import { fermentedBy } from '../ferment/until-of.ts'
import type { BatchStage } from '../shop/shop.ts'
import type { EpochMs } from '../units.ts'
import { isBefore } from './route.ts'

/**
 * What pieces carry with them to another stage: how far they have fermented (of several batches the ripest, so that none
 * stands too long), the mix that all of them are of, and from proof to chill the place of their trays, which are rolled into
 * the cooler as they stand. In the kettle nothing ferments any more.
 */
export function carriedOn(
  state: State,
  batches: readonly Batch[],
  to: BatchStage,
  atMs: EpochMs,
): Pick<Batch, 'mixId' | 'place' | 'fermentedMs'> {
  const mixId = shared(batches, (batch) => batch.mixId)
  const isRolled = to === 'chill' && batches.every(({ stage }) => stage === 'proof')
  const place = isRolled ? shared(batches, (batch) => batch.place) : undefined
  const ferments = isBefore(to, 'kettle')
  const fermentedMs = ferments ? Math.max(0, ...batches.map((batch) => fermentedBy(state, batch, atMs))) : 0
  return {
    ...(mixId === undefined ? {} : { mixId }),
    ...(place === undefined ? {} : { place }),
    ...(fermentedMs === 0 ? {} : { fermentedMs }),
  }
}

/** The batches that pieces are taken from; those that are only now found were not there. */
export function taken(state: State, takes: readonly Take[]): readonly Batch[] {
  return takes.flatMap(({ batchId }) => state.batches.get(batchId) ?? [])
}

function shared<Value>(batches: readonly Batch[], of: (batch: Batch) => Value | undefined): Value | undefined {
  const [first] = batches
  const value = first === undefined ? undefined : of(first)
  return batches.every((batch) => of(batch) === value) ? value : undefined
}
