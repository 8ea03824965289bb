import type { Batch, State, Until } from '../../../shared-core/day/state.ts'
import { buildsLeft } from '../../../shared-core/dough/builds-left.ts'
import type { Build, Mix } from '../../../shared-core/dough/mix.ts'
import { untilOf } from '../../../shared-core/ferment/until-of.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import { epochMs } from '../../../shared-core/units.ts'

/** Something that is mixed, proofs, chills or ripens; the batches of one mix at one stage are one thing. */
export interface ClockRow {
  readonly key: string
  readonly what:
    | { readonly mix: Mix }
    | { readonly batches: readonly Batch[] }
    | { readonly build: Build; readonly leftMilligrams: number }
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
      const { id, sinceMs, until } = mix
      return { key: id, what: { mix }, sinceMs, until, status: statusOf(until, nowMs) }
    })
  const groups = new Map<string, Batch[]>()
  for (const batch of state.batches.values()) {
    if (!BEFORE_THE_KETTLE.includes(batch.stage)) continue
    const key =
      batch.mixId === undefined ? batch.id : [batch.mixId, batch.stage, batch.doughId, batch.varietyId].join(' ')
    groups.set(key, [...(groups.get(key) ?? []), batch])
  }
  const batches = [...groups].map(([key, all]) => rowOf(state, key, all, nowMs))
  return [...mixes, ...batches, ...builds(state, nowMs)].sort(
    (one, other) => latest(one) - latest(other) || (one.key < other.key ? -1 : 1),
  )
}

/** Pre-ferments and soakers of which something is left; a culture that was fed too. */
function builds(state: State, nowMs: EpochMs): ClockRow[] {
  return [...buildsLeft(state)].flatMap(([id, leftMilligrams]): ClockRow[] => {
    const build = state.builds.get(id)
    if (build === undefined || leftMilligrams === 0) return []
    const { madeAtMs: sinceMs, ready: until } = build
    return [{ key: id, what: { build, leftMilligrams }, sinceMs, until, status: statusOf(until, nowMs) }]
  })
}

function rowOf(state: State, key: string, all: readonly Batch[], nowMs: EpochMs): ClockRow {
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
  return { key, what: { batches: all }, sinceMs, until, status: statusOf(until, nowMs) }
}

export function statusOf(until: Until | null, nowMs: EpochMs): ClockRow['status'] {
  if (until === null) return 'none'
  if (nowMs < until.earliestAtMs) return 'early'
  return nowMs <= until.latestAtMs ? 'ready' : 'late'
}

function latest({ until }: ClockRow): number {
  return until?.latestAtMs ?? Number.MAX_SAFE_INTEGER
}
