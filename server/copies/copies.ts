import type { SafeCopies } from '../../shared-core/live/devices.ts'
import type { HealthReason } from '../../shared-core/live/health.ts'
import { healthReason } from '../../shared-core/live/health.ts'

/** The copies as the rest of the server sees them. */
export interface Copies {
  standing(): SafeCopies
  /** Why somebody should look at them. */
  reasons(): readonly HealthReason[]
  /** To be called about once a second. */
  tick(): void
  /** Nobody taps: time for the day's archive. @param date the shop's, YYYY-MM-DD */
  lull(date: string): void
  /** With the last entries in the copy, where its folder takes them in reasonable time. */
  stop(): Promise<void>
}

/** A copy follows within seconds; this is a drive that was pulled out, or one that takes nothing. */
const COPY_OLD_MS = 10 * 60_000
/** One missed day may be one on which the computer was off. */
const ARCHIVE_OLD_DAYS = 2
/** As for the shop's own disk: copying needs some room itself. */
const FREE_MB_MIN = 500
const DAY_MS = 86_400_000

export interface CopiesNow {
  readonly nowMs: number
  /** When this server began to keep copies: before, none can be asked for. */
  readonly startedAtMs: number
  /** On the disk of the copies; null when it cannot be asked, or is the shop's own. */
  readonly freeMb: number | null
}

/** What is wrong with the copies. A warning, never more: the shop itself goes on. */
export function copiesReasons(
  { copy, archives, trouble }: SafeCopies,
  { nowMs, startedAtMs, freeMb }: CopiesNow,
): readonly HealthReason[] {
  const reasons: HealthReason[] = []
  if (trouble !== null) reasons.push(healthReason('copy-trouble', 'warning', { why: trouble }))
  const copyAgeMs = nowMs - (copy?.atMs ?? startedAtMs)
  if (copyAgeMs > COPY_OLD_MS) {
    const minutes = Math.floor(copyAgeMs / 60_000)
    reasons.push(copy === null ? healthReason('no-copy', 'warning') : healthReason('copy-old', 'warning', { minutes }))
  }
  const days = Math.floor((nowMs - (archives[0]?.atMs ?? startedAtMs)) / DAY_MS)
  if (days >= ARCHIVE_OLD_DAYS) reasons.push(healthReason('no-archive', 'warning', { days }))
  if (freeMb !== null && freeMb < FREE_MB_MIN)
    reasons.push(healthReason('copies-disk-nearly-full', 'warning', { freeMb }))
  return reasons
}

/** Of a journal that has none: the demo's, made anew each time. */
export const NO_COPIES: SafeCopies = { folder: '', isSameDrive: false, copy: null, archives: [], trouble: null }
