import type { Batch, State, Until } from '../../../shared-core/day/state.ts'
import type { Mix, MixStage } from '../../../shared-core/dough/mix.ts'
import { untilOf } from '../../../shared-core/ferment/until-of.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

/** Something that is mixed, proofs or chills; the batches of one mix at one stage are one thing. */
export interface ClockRow {
  readonly key: string
  readonly what: { readonly mix: Mix } | { readonly batches: readonly Batch[] }
  readonly stage: MixStage | Batch['stage']
  /** Of the first. */
  readonly sinceMs: EpochMs
  /** When the first is ready, and when the first is past its window. */
  readonly until: Until | null
  readonly status: 'early' | 'ready' | 'late' | 'none'
}

const BEFORE_THE_KETTLE: readonly Batch['stage'][] = ['proof', 'chill', 'rack']

/** What is late first, then what must be used or moved first; what has no window last. */
export function clockRows(state: State, nowMs: EpochMs): readonly ClockRow[] {
  const mixes = [...state.mixes.values()]
    .filter(({ stage }) => stage !== 'planned' && stage !== 'ended')
    .map((mix): ClockRow => {
      const { id, stage, sinceMs, until } = mix
      return { key: id, what: { mix }, stage, sinceMs, until, status: statusOf(until, nowMs) }
    })
  const groups = new Map<string, Batch[]>()
  for (const batch of state.batches.values()) {
    if (!BEFORE_THE_KETTLE.includes(batch.stage)) continue
    const key =
      batch.mixId === undefined ? batch.id : [batch.mixId, batch.stage, batch.doughId, batch.varietyId].join(' ')
    groups.set(key, [...(groups.get(key) ?? []), batch])
  }
  const batches = [...groups].flatMap(([key, all]) => rowOf(state, key, all, nowMs))
  return [...mixes, ...batches].sort((one, other) => latest(one) - latest(other) || (one.key < other.key ? -1 : 1))
}

function rowOf(state: State, key: string, all: readonly Batch[], nowMs: EpochMs): ClockRow[] {
  const [first] = all
  if (first === undefined) return []
  const untils = all.flatMap((batch) => untilOf(state, batch) ?? [])
  const soonest = (of: keyof Until) => epochMs(Math.min(...untils.map((until) => until[of])))
  const until =
    untils.length === 0
      ? null
      : {
          earliestAtMs: soonest('earliestAtMs'),
          targetAtMs: soonest('targetAtMs'),
          latestAtMs: soonest('latestAtMs'),
        }
  const sinceMs = epochMs(Math.min(...all.map((batch) => batch.sinceMs)))
  return [{ key, what: { batches: all }, stage: first.stage, sinceMs, until, status: statusOf(until, nowMs) }]
}

export function statusOf(until: Until | null, nowMs: EpochMs): ClockRow['status'] {
  if (until === null) return 'none'
  if (nowMs < until.earliestAtMs) return 'early'
  return nowMs <= until.latestAtMs ? 'ready' : 'late'
}

function latest({ until }: ClockRow): number {
  return until?.latestAtMs ?? Number.MAX_SAFE_INTEGER
}
