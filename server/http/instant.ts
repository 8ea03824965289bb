import { DateTime } from 'luxon'
import { AT_MS_MAX, AT_MS_MIN } from '../../shared-core/day/command-fields.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { localInstant } from '../live/shop-clock.ts'
import type { Typed } from './typed-load.ts'

const CLOCK = /^([01]?\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/
const NOT_AHEAD = 'A time that is past. Do the date, the offset and the clock of the sender fit those of the shop?'
export const INSTANT_RIGHT =
  'A time as "2026-11-24T08:05:00-06:00", or in the shop\u2019s own time as "2026-11-24T08:05" or, for today, "8:05".'

/** A till's clock may be ahead by so much; what is told for later has not happened. Common practice, no source. */
const AHEAD_MS_MAX = 10 * 60_000

export interface Today {
  readonly nowMs: EpochMs
  readonly zone: string
  /** The shop's date, YYYY-MM-DD. */
  readonly date: string
}

/**
 * When something happened, as a till writes it: ISO 8601 with an offset or in the shop's time, or a clock time of today.
 * What is no time, or still to come, is told in `problems`.
 */
export function instantOf(typed: Typed<string>, today: Today, problems: Problem[]): EpochMs | null {
  const text = typed.value.trim()
  const clock = CLOCK.exec(text)
  const atMs = clock === null ? DateTime.fromISO(text, { zone: today.zone }).toMillis() : clockMs(clock, today)
  const refused = (wrong: string, right: string) => {
    problems.push({ path: typed.path, wrong: `${typed.where}"${typed.value}" ${wrong}`, right })
    return null
  }
  if (!Number.isFinite(atMs) || atMs < AT_MS_MIN || atMs > AT_MS_MAX) return refused('is no time.', INSTANT_RIGHT)
  if (atMs > today.nowMs + AHEAD_MS_MAX) return refused('is still to come.', NOT_AHEAD)
  return epochMs(atMs)
}

function clockMs([, hours, minutes, seconds = '0']: RegExpExecArray, { zone, date }: Today): number {
  return localInstant(zone, date, Number(hours) * 60 + Number(minutes)) + Number(seconds) * 1_000
}
