import type { State } from '../../shared-core/day/state.ts'
import type { EpochMs } from '../../shared-core/units.ts'

/** Below this a countdown is read in seconds and its ring is seen to move. */
const SOON_MS = 60_000

/** Whether something on the line is due within a minute: its ring then empties in quarters of a second. */
export function isCounting(state: State, nowMs: EpochMs): boolean {
  const isSoon = (dueAtMs: number | undefined): boolean =>
    dueAtMs !== undefined && dueAtMs > nowMs && dueAtMs - nowMs <= SOON_MS
  for (const batch of state.batches.values()) {
    if (batch.stage === 'kettle' && isSoon(batch.until?.targetAtMs)) return true
  }
  for (const load of state.loads.values()) {
    const next = load.phase === 'first-side' ? (load.flip ?? load.out) : load.out
    if (isSoon(next?.targetAtMs)) return true
  }
  return false
}
