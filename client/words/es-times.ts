import type { Span } from './rounding.ts'
import { spanLeft, spanPassed } from './rounding.ts'
import type { Speech, TimeWords } from './words.ts'

const DAYS = ['dom', 'lun', 'mar', 'mié', 'jue', 'vie', 'sáb']
const MONTHS = ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sep', 'oct', 'nov', 'dic']

export function esTimes({ localTime }: Speech): TimeWords {
  const left = (ms: number) => spanText(spanLeft(ms))
  const span = (ms: number) => spanText(spanPassed(ms))
  const late = (ms: number) => `${span(ms)} tarde`
  const within = (ms: number) => `en ${left(ms)}`
  const hour = (atMs: Parameters<typeof localTime>[0]) => withArticle(localTime(atMs))
  return {
    left,
    span,
    within,
    late,
    when: ({ atMs, status }, nowMs) => {
      // In its first second it is late by nothing that could be told.
      if (status === 'late' && nowMs - atMs >= 1_000) return late(nowMs - atMs)
      return status !== 'coming' ? 'ya' : within(atMs - nowMs)
    },
    at: (atMs) => `a ${hour(atMs)}`,
    since: (atMs) => `desde ${hour(atMs)}`,
    by: (atMs) => `antes de ${hour(atMs)}`,
    upTo: (atMs) => `hasta ${hour(atMs)}`,
    clock: localTime,
    date: (label) => {
      const date = new Date(`${label}T00:00:00Z`)
      return `${DAYS[date.getUTCDay()]} ${date.getUTCDate()} de ${MONTHS[date.getUTCMonth()]}`
    },
    units: { s: 's', min: 'min', h: 'h' },
  }
}

/** One o'clock is singular: "la 1:05", "las 8:20". */
function withArticle(clock: string): string {
  return clock.startsWith('1:') ? `la ${clock}` : `las ${clock}`
}

function spanText(span: Span): string {
  if (span.unit === 's') return `${span.seconds} s`
  if (span.unit === 'min') return `${span.minutes} min`
  if (span.unit === 'd') return `${span.days} días`
  return span.minutes === 0 ? `${span.hours} h` : `${span.hours} h ${span.minutes} min`
}
