import type { OrderId } from '../../../shared-core/ids.ts'
import type { WaitingOrder } from '../../../shared-core/kitchen/queue.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { RingState } from '../../parts/ring.tsx'

/** Somebody who waits, as a ring on the rod. */
export interface WaitRing {
  readonly orderId: OrderId
  readonly mark: string
  readonly dueAtMs: EpochMs
  /** So long they have waited. */
  readonly waitsMs: number
  /** What is left of the time that they were told, 1 to 0. */
  readonly fraction: number
  /** `act`: it will not be ready in time as things stand; `late`: its time is over. */
  readonly state: RingState
  readonly hasAllergy: boolean
}

/** @param madeInMs what the counter tells those who wait; an order's own time counts where it was told another one */
export function ringsOf(waiting: readonly WaitingOrder[], nowMs: EpochMs, madeInMs: number): readonly WaitRing[] {
  return [...waiting]
    .sort((one, other) => one.dueAtMs - other.dueAtMs || (one.orderId < other.orderId ? -1 : 1))
    .map(({ orderId, mark, dueAtMs, takenAtMs, status, hasAllergy }) => {
      const toldMs = Math.max(1, dueAtMs > takenAtMs ? dueAtMs - takenAtMs : madeInMs)
      const fraction = Math.min(1, Math.max(0, (dueAtMs - nowMs) / toldMs))
      const state = status === 'late' ? 'late' : status === 'due' ? 'act' : 'running'
      return { orderId, mark, dueAtMs, waitsMs: Math.max(0, nowMs - takenAtMs), fraction, state, hasAllergy }
    })
}
