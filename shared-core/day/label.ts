const DAY_MS = 86_400_000

/**
 * The label of a business day that opens now: the local date, or the next one when a day was closed on this date already
 * (who shapes tomorrow's dough after close works for tomorrow). A label may come twice, when a shop closes twice a day;
 * it never runs ahead of the calendar by more than a day.
 * @param localDate YYYY-MM-DD @param closedOn the local date of the last close, or null
 * @example labelOf('2026-11-24', '2026-11-24') // '2026-11-25'
 */
export function labelOf(localDate: string, closedOn: string | null): string {
  return localDate === closedOn ? dayAfter(localDate) : localDate
}

function dayAfter(date: string): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + DAY_MS).toISOString().slice(0, 10)
}
