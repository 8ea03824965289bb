import type { Ruler } from '../day/ruler.ts'
import type { State } from '../day/state.ts'
import type { PortionId } from '../ids.ts'
import type { DueStatus } from '../line/act-due.ts'
import { dueStatus } from '../line/act-due.ts'
import { inUse } from '../shop/in-order.ts'
import type { EpochMs } from '../units.ts'
import { epochMs } from '../units.ts'

/** Portions to take out of the cooler before the second menu begins. */
export interface PortionPull {
  readonly portionId: PortionId
  readonly name: string
  readonly atMs: EpochMs
  /** From then on the second menu bakes without it. */
  readonly latestAtMs: EpochMs
  readonly status: DueStatus
  /** As counted; null: nobody has counted. */
  readonly portions: number | null
  readonly trays: number | null
}

/** Who counts portions so shortly before the pull or after it has them in hand: they are out. Common practice, no source. */
const COUNTED_EARLY_MS = 30 * 60_000

/**
 * The pulls that are still to be done today, soonest first: `pullMs` before the changeover ends, in whole trays. One is
 * done once its portions were counted, from half an hour before its time on; none is called for of which there is
 * nothing, and none once the second menu bakes.
 */
export function portionPulls(state: State, ruler: Ruler | null, nowMs: EpochMs): readonly PortionPull[] {
  const { shop } = state
  const toMs = ruler?.changeover?.toMs
  if (shop === null || state.day === null || toMs === undefined || nowMs >= toMs) return []
  return inUse(shop.portions)
    .flatMap(({ id, name, pullMs, trayPortions }): PortionPull[] => {
      if (pullMs === null) return []
      const atMs = epochMs(Math.max(0, toMs - pullMs))
      const counted = state.portions.get(id)
      const isDone = counted !== undefined && counted.countedAtMs >= atMs - COUNTED_EARLY_MS
      if (isDone || counted?.portions === 0) return []
      const portions = counted?.portions ?? null
      const trays = portions === null ? null : Math.ceil(portions / Math.max(1, trayPortions))
      return [{ portionId: id, name, atMs, latestAtMs: toMs, status: dueStatus(atMs, toMs, nowMs), portions, trays }]
    })
    .sort((one, other) => one.atMs - other.atMs || (one.portionId < other.portionId ? -1 : 1))
}
