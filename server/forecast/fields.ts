import { isDate } from '../../shared-core/day/label.ts'

/** What a field may hold; each gives null for what is not in its form. */

const STAMP = /^(\d{4}-\d\d-\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.\d+)?)?$/
const TIME = /^(\d\d):(\d\d)$/

/** A local time of a till: `2026-11-26T08:15:30`, seconds optional. The minute is after midnight and has a fraction. */
export function stampOf(text: string): { date: string; minute: number } | null {
  const [, date = '', hours = '', minutes = '', seconds = '0'] = STAMP.exec(text) ?? []
  if (date === '' || !isDate(date) || Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 59) return null
  return { date, minute: Number(hours) * 60 + Number(minutes) + Number(seconds) / 60 }
}

export function dateOf(text: string): string | null {
  return isDate(text) ? text : null
}

/** Minutes after midnight of `HH:MM`, 00:00 to 23:59. */
export function minuteOf(text: string): number | null {
  const [, hours = '', minutes = ''] = TIME.exec(text) ?? []
  return hours === '' || Number(hours) > 23 || Number(minutes) > 59 ? null : Number(hours) * 60 + Number(minutes)
}

/** A whole number of pieces, `3` or `3.0`; below 0 it is a return. */
export function piecesOf(text: string): number | null {
  const value = /^-?\d+(\.0*)?$/.test(text) ? Number(text) : Number.NaN
  return Number.isSafeInteger(value) ? value : null
}

/** `HH:MM` of a minute of the day, rounded down. */
export function timeText(minute: number): string {
  const whole = Math.min(1439, Math.max(0, Math.floor(minute)))
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`
}
