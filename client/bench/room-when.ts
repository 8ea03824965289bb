import type { RoomAct } from '../../shared-core/dough/room-acts.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import type { TimeWords } from '../words/words.ts'

/** When an act of the dough room is due; of trays in the cooler, how long their window is open yet or has been over. */
export function roomWhen(act: RoomAct, nowMs: EpochMs, times: TimeWords): string {
  if (act.kind !== 'use' || act.latestAtMs === null) return times.when(act, nowMs)
  const leftMs = act.latestAtMs - nowMs
  return leftMs < 0 ? times.late(-leftMs) : times.within(leftMs)
}
