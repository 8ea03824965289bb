import { DateTime } from 'luxon'

/** What is kept of the daily archives: a week of days, then the newest of each week and month. */
export const DAYS_KEPT = 7
export const WEEKS_KEPT = 5
export const MONTHS_KEPT = 12

/**
 * Which archives may go. Kept is the newest good one of each of the last 7 days, 5 weeks (ISO 8601, from Monday) and 12
 * months that have a good one: a shop that was shut for a month keeps what it had. One that is not good counts for
 * nothing, so it pushes none out; it goes once a good one of its own day or a later one is there.
 *
 * Dates are the shop's, so that neither zones nor clocks that are set have a part in it.
 * @param archives each with the date on which it was made, YYYY-MM-DD, in any order
 * @returns those that may go, oldest first
 * @example outdated([{ date: '2026-11-26', isGood: true }]) // []
 */
export function outdated<One extends { readonly date: string; readonly isGood: boolean }>(
  archives: readonly One[],
): readonly One[] {
  const sorted = [...archives].sort((one, other) => (one.date < other.date ? -1 : one.date > other.date ? 1 : 0))
  const good = sorted.filter(({ isGood }) => isGood).reverse()
  const kept = new Set<One>()
  for (const [periodOf, most] of RULES) {
    const seen = new Set<string>()
    for (const one of good) {
      const period = periodOf(one.date)
      if (seen.has(period)) continue
      if (seen.size === most) break
      seen.add(period)
      kept.add(one)
    }
  }
  const newestGood = good[0]?.date ?? ''
  return sorted.filter((one) => (one.isGood ? !kept.has(one) : one.date <= newestGood))
}

const RULES: readonly (readonly [(date: string) => string, number])[] = [
  [(date) => date, DAYS_KEPT],
  [(date) => DateTime.fromISO(date, { zone: 'utc' }).toFormat("kkkk-'W'WW"), WEEKS_KEPT],
  [(date) => date.slice(0, 7), MONTHS_KEPT],
]
