import type { Line, State, Until } from '../day/state.ts'
import type { BatchId, DoughId, PlannedId, VarietyId } from '../ids.ts'
import type { EpochMs } from '../units.ts'
import { needsAhead } from './dips.ts'
import type { LookAhead } from './look-ahead.ts'
import { lookAhead } from './look-ahead.ts'

/** What the kettle holds, what to do with it after the lift, and what it holds next. */
export interface KettleNow {
  readonly in: readonly InKettle[]
  /** The next dip of the planned loads, whether or not somebody taps dips; null when none is planned. */
  readonly next: NextDip | null
}

export interface InKettle {
  readonly batchId: BatchId
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly sinceMs: EpochMs
  readonly until: Until | null
  /** What its pieces become by the planned loads; what is left over is not named. */
  readonly becomes: readonly Line[]
}

export interface NextDip {
  /** The load that it is for. */
  readonly plannedId: PlannedId
  readonly doughId: DoughId
  readonly varietyId: VarietyId | null
  readonly pieces: number
  readonly becomes: readonly Line[]
  readonly atMs: EpochMs
  /** Kettle-fulls that the load still needs, this one included. */
  readonly dipsLeft: number
}

export function kettleNow(state: State, nowMs: EpochMs): KettleNow {
  const ahead = lookAhead(state, nowMs)
  return ahead === null ? { in: [], next: null } : { in: inKettle(ahead), next: nextDip(ahead) }
}

function inKettle({ state, becomes }: LookAhead): readonly InKettle[] {
  return [...state.batches.values()]
    .filter((batch) => batch.stage === 'kettle')
    .sort((one, other) => one.sinceMs - other.sinceMs || (one.id < other.id ? -1 : 1))
    .map(({ id, doughId, varietyId, pieces, sinceMs, until }) => {
      return { batchId: id, doughId, varietyId, pieces, sinceMs, until, becomes: becomes.get(id) ?? [] }
    })
}

function nextDip({ state, shop, allotments, nowMs }: LookAhead): NextDip | null {
  const next = needsAhead(state, shop, allotments, nowMs).find((need) => need.boiled)
  if (next === undefined) return null
  const { expected, doughId, varietyId, pieces, lines, atMs, dipsLeft } = next
  return { plannedId: expected.planned.id, doughId, varietyId, pieces, becomes: lines, atMs, dipsLeft }
}
