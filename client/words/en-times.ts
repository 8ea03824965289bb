import type { Span } from './rounding.ts'
import { spanLeft, spanPassed } from './rounding.ts'
import type { Speech, TimeWords } from './words.ts'

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat']
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

export function enTimes({ localTime }: Speech): TimeWords {
  const left = (ms: number) => spanText(spanLeft(ms))
  const span = (ms: number) => spanText(spanPassed(ms))
  const late = (ms: number) => `${span(ms)} late`
  const within = (ms: number) => `in ${left(ms)}`
  return {
    left,
    span,
    within,
    late,
    when: ({ atMs, status }, nowMs) => {
      // In its first second it is late by nothing that could be told.
      if (status === 'late' && nowMs - atMs >= 1_000) return late(nowMs - atMs)
      return status !== 'coming' ? 'now' : within(atMs - nowMs)
    },
    at: (atMs) => `at ${localTime(atMs)}`,
    since: (atMs) => `since ${localTime(atMs)}`,
    by: (atMs) => `by ${localTime(atMs)}`,
    upTo: (atMs) => `to ${localTime(atMs)}`,
    clock: localTime,
    date: (label) => {
      const date = new Date(`${label}T00:00:00Z`)
      return `${DAYS[date.getUTCDay()]}, ${MONTHS[date.getUTCMonth()]} ${date.getUTCDate()}`
    },
    units: { s: 's', min: 'min', h: 'h' },
  }
}

function spanText(span: Span): string {
  if (span.unit === 's') return `${span.seconds} s`
  if (span.unit === 'min') return `${span.minutes} min`
  if (span.unit === 'd') return `${span.days} days`
  return span.minutes === 0 ? `${span.hours} h` : `${span.hours} h ${span.minutes} min`
}
