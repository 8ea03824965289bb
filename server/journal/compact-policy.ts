import { DateTime } from 'luxon'
import { FOLD_VERSION } from '../../shared-core/day/state.ts'
import type { Journal } from './journal.ts'

/** Younger entries stay: past days of some weeks are looked at daily, and a day is taken back or reopened from there. */
export const STAYS_DAYS = 60
const DAY_MS = 86_400_000

/**
 * The last entry that may be moved into an archive: recorded before an instant, at least 60 days old, and before the
 * newest snapshot of this fold, so that a start reads no archive.
 * @returns its seq; 0 when none may be
 */
export function lastToMove(journal: Journal, beforeMs: number, nowMs: number): number {
  const snapshot = journal.newestSnapshot(FOLD_VERSION)
  if (snapshot === null) return 0
  const untilMs = Math.min(beforeMs, nowMs - STAYS_DAYS * DAY_MS)
  // `recordedAtMs` never goes back: halved until the first entry that stays is found.
  let [low, high] = [0, snapshot.seq - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    const [entry] = journal.entriesAfter(middle - 1, 1)
    if (entry !== undefined && entry.recordedAtMs < untilMs) low = middle
    else high = middle - 1
  }
  return low
}

/**
 * The archive's file, after the last day in it, or the year where it ends with one.
 * @param taken names of the journal's archives
 * @example archiveName('2026-01-01', []) // entries-to-2025.sqlite
 */
export function archiveName(beforeDate: string, taken: readonly string[]): string {
  const last = DateTime.fromISO(beforeDate, { zone: 'UTC' }).minus({ days: 1 }).toISODate() ?? beforeDate
  const stem = `entries-to-${last.endsWith('-12-31') ? last.slice(0, 4) : last}`
  for (let n = 1; ; n += 1) {
    const name = `${stem}${n === 1 ? '' : `-${n}`}.sqlite`
    if (!taken.includes(name)) return name
  }
}
