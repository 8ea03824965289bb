const DAY_MS = 86_400_000
/** Every month has them. */
const SURE_DAYS = 28

/**
 * The label of a business day that opens now: the local date, or the next one when a day was closed on this date already
 * (who shapes tomorrow's dough after close works for tomorrow). A label may come twice, when a shop closes twice a day;
 * it never runs ahead of the calendar by more than a day.
 * @param localDate YYYY-MM-DD @param closedOn the date that the last close used up, or null
 * @example labelOf('2026-11-24', '2026-11-24') // '2026-11-25'
 */
export function labelOf(localDate: string, closedOn: string | null): string {
  return localDate === closedOn ? dateAfter(localDate, 1) : localDate
}

/**
 * The date that a close uses up, so that no other day opens with it: the day's own, also when it is closed after midnight
 * or days later; today, when tomorrow's day is over on it already.
 */
export function dateUsedUp(label: string, localDate: string): string {
  if (localDate < label) return localDate
  return label
}

/** The date so many days after another, or before it. @param date YYYY-MM-DD @example dateAfter('2026-11-30', 2) // '2026-12-02' */
export function dateAfter(date: string, days: number): string {
  // Within a month no calendar is needed, and plans of many days ask often.
  const day = Number(date.slice(8)) + days
  if (day >= 1 && day <= SURE_DAYS) return `${date.slice(0, 8)}${day < 10 ? '0' : ''}${day}`
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10)
}

/** Whether a text is a day of the calendar, as YYYY-MM-DD. @example isDate('2026-02-30') // false */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false
  const atMs = Date.parse(`${text}T00:00:00Z`)
  return Number.isFinite(atMs) && new Date(atMs).toISOString().slice(0, 10) === text
}
