const DAY_MS = 86_400_000

/**
 * The label of a business day that opens now: the local date, or the next free one when that day was closed already
 * (who shapes tomorrow's dough after close works for tomorrow).
 * @param localDate YYYY-MM-DD @param lastLabel label of the day closed last, or null
 * @example labelOf('2026-11-24', '2026-11-24') // '2026-11-25'
 */
export function labelOf(localDate: string, lastLabel: string | null): string {
  return lastLabel === null || localDate > lastLabel ? localDate : dayAfter(lastLabel)
}

function dayAfter(date: string): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + DAY_MS).toISOString().slice(0, 10)
}
