import type { EpochMs } from '../../shared-core/units.ts'
import type { Words } from '../words/words.ts'

/** From an hour on, a clock time says more than a count of minutes. */
export const FAR_MS = 60 * 60_000

/** When something that nothing makes late should be done: "in 8 min", "at 8:20" when it is far, "now". */
export function whenText(atMs: EpochMs, nowMs: EpochMs, { times }: Words): string {
  if (atMs - nowMs > FAR_MS) return times.at(atMs)
  return times.when({ atMs, status: atMs > nowMs ? 'coming' : 'due' }, nowMs)
}
