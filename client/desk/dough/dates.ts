/** Dates of the shop as text, YYYY-MM-DD: a calendar, not instants. */

const DAY_MS = 86_400_000

/** @example dateAfter('2026-11-30', 2) // '2026-12-02' */
export function dateAfter(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10)
}

/** @example isDate('2026-02-30') // false */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false
  const atMs = Date.parse(`${text}T00:00:00Z`)
  return Number.isFinite(atMs) && new Date(atMs).toISOString().slice(0, 10) === text
}
