import { textWidthPx } from './text-width.ts'

export interface HourMark {
  readonly atMs: number
  readonly text: string
}

const HOUR_MS = 3_600_000
const QUARTER_MS = 900_000
/** A day that is longer than this is a mistake in the set-up, and would be drawn as a comb. */
const SPAN_MS_MAX = 48 * HOUR_MS
/** Hours between the numbers, tried in turn until they fit. */
const HOUR_STEPS = [1, 2, 3, 4, 6, 12] as const

/**
 * The hours to number: every hour, or every second, third … so that the numbers keep well apart and none
 * is cut off at an end. Clock changes are
 * followed: an hour that is missing has no number, one that comes twice has two.
 * @param offsetAtMs the shop's offset from UTC in ms at an instant
 * @param hourText the number to write at an instant that is a full local hour
 * @throws RangeError unless the span ends after it begins and within 48 hours
 */
export function hourMarks(
  span: { readonly fromMs: number; readonly toMs: number; readonly widthPx: number; readonly fontPx: number },
  offsetAtMs: (ms: number) => number,
  hourText: (ms: number) => string,
): readonly HourMark[] {
  if (!(span.toMs > span.fromMs && span.toMs - span.fromMs <= SPAN_MS_MAX)) {
    throw new RangeError('A day’s ruler must end after it begins, and within 48 hours.')
  }
  const hours: { atMs: number; hour: number }[] = []
  // Every offset in use is a whole number of quarters, so that full hours fall on UTC quarters.
  for (let atMs = Math.ceil(span.fromMs / QUARTER_MS) * QUARTER_MS; atMs <= span.toMs; atMs += QUARTER_MS) {
    const localMs = atMs + offsetAtMs(atMs)
    if (localMs % HOUR_MS === 0) hours.push({ atMs, hour: Math.floor(localMs / HOUR_MS) % 24 })
  }
  const pxPerHour = (span.widthPx * HOUR_MS) / (span.toMs - span.fromMs)
  const widest = Math.max(0, ...hours.map(({ atMs }) => textWidthPx(hourText(atMs), span.fontPx)))
  const step = HOUR_STEPS.find((hoursApart) => pxPerHour * hoursApart >= widest + span.fontPx) ?? 24
  const marginMs = (widest / 2 / pxPerHour) * HOUR_MS
  return hours
    .filter(({ atMs, hour }) => hour % step === 0 && atMs - marginMs >= span.fromMs && atMs + marginMs <= span.toMs)
    .map(({ atMs }) => ({ atMs, text: hourText(atMs) }))
}
