/**
 * Spans of time as a few whole numbers, the same in every language: seconds while they are what counts, then minutes,
 * hours, days. Under 100 s in seconds, so that a countdown has two digits when it matters.
 */
export type Span =
  | { readonly unit: 's'; readonly seconds: number }
  | { readonly unit: 'min'; readonly minutes: number }
  | { readonly unit: 'h'; readonly hours: number; readonly minutes: number }
  | { readonly unit: 'd'; readonly days: number }

const SECONDS_BELOW = 100
const MINUTES_BELOW = 100
/** Beside so many hours minutes are noise. */
const BARE_HOURS_FROM = 10
const DAYS_FROM_HOURS = 72

/** What is still to come: seconds rounded up, so that 0 means due; minutes to the nearest. Under 0 counts as 0. */
export function spanLeft(ms: number): Span {
  const seconds = Math.max(0, Math.ceil(ms / 1_000))
  return seconds < SECONDS_BELOW ? { unit: 's', seconds } : inMinutes(Math.round(seconds / 60))
}

/** What has passed, rounded down. Under 0 counts as 0. */
export function spanPassed(ms: number): Span {
  const seconds = Math.max(0, Math.floor(ms / 1_000))
  return seconds < SECONDS_BELOW ? { unit: 's', seconds } : inMinutes(Math.floor(seconds / 60))
}

function inMinutes(minutes: number): Span {
  if (minutes < MINUTES_BELOW) return { unit: 'min', minutes }
  const hours = Math.floor(minutes / 60)
  if (hours >= DAYS_FROM_HOURS) return { unit: 'd', days: Math.floor(hours / 24) }
  return { unit: 'h', hours, minutes: hours >= BARE_HOURS_FROM ? 0 : minutes % 60 }
}
