import type { Until } from '../../../shared-core/day/state.ts'
import type { EpochMs } from '../../../shared-core/units.ts'
import type { TimeWords } from '../../words/words.ts'
import type { ItemTone, RingView } from './room-parts.ts'

export interface RoomClock {
  readonly ring: RingView
  readonly tone: ItemTone
}

/** Nothing counts here. */
export const NO_CLOCK: RoomClock = { ring: { fraction: 0, state: 'idle' }, tone: 'plain' }

/**
 * A stage's countdown: it empties to its target, calls from then on, and is late after its latest time. What stands in it
 * is the time left; past the target, the time since.
 */
export function stageClock(sinceMs: EpochMs, until: Until | null, nowMs: EpochMs, times: TimeWords): RoomClock {
  if (until === null) return { ring: { fraction: 0, state: 'idle', label: times.span(nowMs - sinceMs) }, tone: 'plain' }
  const leftMs = until.targetAtMs - nowMs
  if (leftMs > 0) return { ring: running(leftMs, until.targetAtMs - sinceMs, times), tone: 'plain' }
  const tone = nowMs > until.latestAtMs ? 'late' : 'act'
  return { ring: { fraction: 0, state: tone, label: times.span(-leftMs) }, tone }
}

/** Of chilled pieces, so long before its end somebody had better plan for them. Common practice, no source. */
export const USE_SOON_MS = 6 * 3_600_000

/** Waiting counts down to the earliest boil; then nothing is to be done until the window nears its end. */
export function chillClock(sinceMs: EpochMs, until: Until | null, nowMs: EpochMs, times: TimeWords): RoomClock {
  if (until === null) return NO_CLOCK
  const { earliestAtMs, latestAtMs } = until
  if (nowMs > latestAtMs) {
    return { ring: { fraction: 0, state: 'late', label: times.span(nowMs - latestAtMs) }, tone: 'late' }
  }
  if (nowMs < earliestAtMs) {
    return { ring: running(earliestAtMs - nowMs, earliestAtMs - sinceMs, times), tone: 'plain' }
  }
  const leftMs = latestAtMs - nowMs
  if (leftMs <= USE_SOON_MS) return { ring: { fraction: 0, state: 'act', label: times.left(leftMs) }, tone: 'act' }
  return NO_CLOCK
}

function running(leftMs: number, ofMs: number, times: TimeWords): RingView {
  return { fraction: Math.min(1, leftMs / Math.max(1, ofMs)), state: 'running', label: times.left(leftMs) }
}
