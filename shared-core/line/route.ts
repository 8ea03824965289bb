import type { Batch, State, Until } from '../day/state.ts'
import { untilOf } from '../ferment/until-of.ts'
import type { BatchStage, Dough, LineAct } from '../shop/shop.ts'
import { BATCH_STAGES } from '../shop/stages.ts'
import type { EpochMs } from '../units.ts'

/** The act that brings pieces into a stage; shaping and chilling are the dough room's. */
const ACT_INTO: { readonly [stage in BatchStage]: LineAct | null } = {
  proof: null,
  chill: null,
  rack: 'pull',
  kettle: 'dip',
  boards: 'lift',
  oven: 'load',
}
export type PresumableAct = 'pull' | 'dip' | 'lift' | 'board'

/** Stages that nothing may stand in overnight. */
export function isOnTheLine(stage: BatchStage): boolean {
  return stage === 'kettle' || stage === 'boards' || stage === 'oven'
}

export function isBefore(stage: BatchStage, other: BatchStage): boolean {
  return BATCH_STAGES.indexOf(stage) < BATCH_STAGES.indexOf(other)
}

/** The acts of a dough's route between where a batch stands and where it is now said to go, both ends left out. */
export function actsBetween(dough: Dough, from: BatchStage, to: BatchStage): readonly PresumableAct[] {
  return dough.route
    .filter((stage) => isBefore(from, stage) && isBefore(stage, to))
    .flatMap((stage) => ACT_INTO[stage] ?? [])
    .filter((act): act is PresumableAct => act === 'pull' || act === 'dip' || act === 'lift')
}

/**
 * Whose window closes first is used first, by the clocks of proof and chill; then who has stood longest; then by id, so
 * that the order is total.
 */
export function byWindow(state: State) {
  const known = new Map<Batch, number>()
  const latest = (batch: Batch) => {
    const latestAtMs = known.get(batch) ?? untilOf(state, batch)?.latestAtMs ?? Number.MAX_SAFE_INTEGER
    known.set(batch, latestAtMs)
    return latestAtMs
  }
  return (one: Batch, other: Batch): number =>
    latest(one) - latest(other) || one.sinceMs - other.sinceMs || (one.id < other.id ? -1 : 1)
}

/** Whether an instant lies before or after what a window allows. Shown and recorded, never blocked. */
export function outOfTime(until: Until | null, atMs: EpochMs): readonly ('too-early' | 'too-late')[] {
  if (until === null) return []
  return atMs < until.earliestAtMs ? ['too-early'] : atMs > until.latestAtMs ? ['too-late'] : []
}
