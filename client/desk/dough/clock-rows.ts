import type { Batch, State, Until } from '../../../shared-core/day/state.ts'
import type { Mix, MixStage } from '../../../shared-core/dough/mix.ts'
import { untilOf } from '../../../shared-core/ferment/until-of.ts'
import type { EpochMs } from '../../../shared-core/units.ts'

/** Something that is mixed, proofs or chills. */
export interface ClockRow {
  readonly key: string
  readonly what: { readonly mix: Mix } | { readonly batch: Batch }
  readonly stage: MixStage | Batch['stage']
  readonly sinceMs: EpochMs
  readonly until: Until | null
  readonly status: 'early' | 'ready' | 'late' | 'none'
}

const BEFORE_THE_KETTLE: readonly Batch['stage'][] = ['proof', 'chill', 'rack']

/** What is late first, then what must be used or moved first; what has no window last. */
export function clockRows(state: State, nowMs: EpochMs): readonly ClockRow[] {
  const mixes = [...state.mixes.values()]
    .filter(({ stage }) => stage !== 'planned' && stage !== 'ended')
    .map((mix) => row(mix.id, { mix }, mix, mix.until))
  const batches = [...state.batches.values()]
    .filter(({ stage }) => BEFORE_THE_KETTLE.includes(stage))
    .map((batch) => row(batch.id, { batch }, batch, untilOf(state, batch)))
  return [...mixes, ...batches].sort((one, other) => latest(one) - latest(other) || (one.key < other.key ? -1 : 1))

  function row(
    key: string,
    what: ClockRow['what'],
    { stage, sinceMs }: Pick<ClockRow, 'stage' | 'sinceMs'>,
    until: Until | null,
  ): ClockRow {
    return { key, what, stage, sinceMs, until, status: statusOf(until, nowMs) }
  }
}

export function statusOf(until: Until | null, nowMs: EpochMs): ClockRow['status'] {
  if (until === null) return 'none'
  if (nowMs < until.earliestAtMs) return 'early'
  return nowMs <= until.latestAtMs ? 'ready' : 'late'
}

function latest({ until }: ClockRow): number {
  return until?.latestAtMs ?? Number.MAX_SAFE_INTEGER
}
