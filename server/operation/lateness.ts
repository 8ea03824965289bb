import type { IntervalHistogram } from 'node:perf_hooks'
import { monitorEventLoopDelay } from 'node:perf_hooks'

/**
 * How late the server comes to its work at times: what a tap may wait when the computer is busy or too hot. Measured by
 * the engine's own monitor, a spell at a time, so that one bad minute is told for a minute and not for ever.
 */
export interface Lateness {
  /** To be called about once a second. */
  tick(nowMs: number): void
  /** Milliseconds that 99 % of the looks of the last whole spell stayed below. */
  readonly lateMs: number
  stop(): void
}

const RESOLUTION_MS = 20
const SPELL_MS = 60_000
const SHARE_PERCENT = 99

type Monitor = Pick<IntervalHistogram, 'enable' | 'disable' | 'reset' | 'percentile'>

export function watchLateness(
  beganMs: number,
  monitor: Monitor = monitorEventLoopDelay({ resolution: RESOLUTION_MS }),
): Lateness {
  monitor.enable()
  let spellBeganMs = beganMs
  let lateMs = 0
  return {
    tick(nowMs) {
      if (nowMs - spellBeganMs < SPELL_MS) return
      // The monitor counts its own interval with it, in nanoseconds.
      lateMs = Math.max(0, Math.round(monitor.percentile(SHARE_PERCENT) / 1e6 - RESOLUTION_MS))
      monitor.reset()
      spellBeganMs = nowMs
    },
    get lateMs() {
      return lateMs
    },
    stop: () => monitor.disable(),
  }
}
