import type { DurationMs, TimeUnit } from '../units.ts'
import { durationMs, spanMs } from '../units.ts'
import type { DwellWindow } from './shop.ts'

/** Minutes after midnight as a clock time. @example clockText(270) // '04:30' */
export function clockText(minute: number): string {
  return `${twoDigits(Math.floor(minute / 60))}:${twoDigits(minute % 60)}`
}

/** A clock time of the form 04:30 as minutes after midnight; the form is the caller's to check. */
export function clockMinute(text: string): number {
  return Number(text.slice(0, 2)) * 60 + Number(text.slice(3, 5))
}

/** How many of a unit a span is; whole milliseconds come back from `spanMs` exactly. */
function inUnit(ms: DurationMs, unit: TimeUnit): number {
  return ms / spanMs(1, unit)
}

/** @example spanText(durationMs(210_000), 'min') // '3.5 min' */
export function spanText(ms: DurationMs, unit: TimeUnit): string {
  return `${inUnit(ms, unit)} ${unit}`
}

/** A span as the set-up file writes it: in minutes where they come out whole, else in seconds. */
export function spanObject(ms: DurationMs): { minutes: number } | { seconds: number } {
  return Number.isInteger(inUnit(ms, 'min')) ? { minutes: inUnit(ms, 'min') } : { seconds: inUnit(ms, 's') }
}

export function spanFromObject(span: SpanObject): DurationMs {
  return durationMs(spanMs(span.minutes ?? 0, 'min') + spanMs(span.seconds ?? 0, 's'))
}

interface SpanObject {
  readonly minutes?: number | undefined
  readonly seconds?: number | undefined
}

function twoDigits(value: number): string {
  return String(value).padStart(2, '0')
}

/** A dwell window as the set-up file writes it, in the unit that it was entered in. */
export interface DwellObject {
  unit: TimeUnit
  earliest: number
  target: number
  latest: number
}

export function dwellObject({ unit, earliestMs, targetMs, latestMs }: DwellWindow): DwellObject {
  const [earliest, target, latest] = [inUnit(earliestMs, unit), inUnit(targetMs, unit), inUnit(latestMs, unit)]
  return { unit, earliest, target, latest }
}
