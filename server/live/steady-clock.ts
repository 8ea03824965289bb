import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

/**
 * The server's time: the machine's clock, but never going back. When that clock is set back, time goes on at its pace
 * from where it was; screens estimate this very time, so a tap is never judged by another. When it is set forward, time
 * follows.
 * @param startMs what has been recorded already: a restart does not go back behind it either
 * @param wall milliseconds since 1970, as the machine has it; may jump
 * @param monotonic milliseconds of any origin; never jumps
 */
export function steadyClock(startMs: EpochMs, wall: () => number, monotonic: () => number): () => EpochMs {
  let lastMs: number = startMs
  let readMs = monotonic()
  return () => {
    const nowMs = monotonic()
    lastMs = Math.max(wall(), lastMs + (nowMs - readMs))
    readMs = nowMs
    return epochMs(Math.floor(lastMs))
  }
}
