import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'

/**
 * A clock that runs so many times as fast from now on: an hour of the demo's morning in six minutes, say. Everything that
 * asks the server for the time gets this one, screens included, so that nothing but the pace is another.
 * @example fastClock(now, 10) // 6:47:00 now, 6:48:40 ten seconds later
 */
export function fastClock(now: () => EpochMs, speed: number): () => EpochMs {
  if (speed === 1) return now
  const fromMs = now()
  return () => epochMs(fromMs + (now() - fromMs) * speed)
}
