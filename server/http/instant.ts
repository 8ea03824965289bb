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
  const atMs = readInstant(typed, today, problems)
  if (atMs === null || atMs <= today.nowMs + AHEAD_MS_MAX) return atMs
  return refused(typed, 'is still to come.', NOT_AHEAD, problems)
}

/**
 * When something is due, written in the same ways. A clock time of today that is past by more than an hour may be
 * tomorrow's as well, and needs its date.
 */
export function dueInstantOf(typed: Typed<string>, today: Today, problems: Problem[]): EpochMs | null {
  const atMs = readInstant(typed, today, problems)
  const isClock = CLOCK.test(typed.value.trim())
  if (atMs === null || !isClock || atMs >= today.nowMs - LATE_MS_MAX) return atMs
  return refused(typed, 'is past today.', 'With its date, as "2026-11-25T08:05".', problems)
}

/** What came late over a slow line is still of today. Common practice, no source. */
const LATE_MS_MAX = 3_600_000

function readInstant(typed: Typed<string>, today: Today, problems: Problem[]): EpochMs | null {
  const text = typed.value.trim()
  const clock = CLOCK.exec(text)
  const atMs = clock === null ? DateTime.fromISO(text, { zone: today.zone }).toMillis() : clockMs(clock, today)
  if (!Number.isFinite(atMs) || atMs < AT_MS_MIN || atMs > AT_MS_MAX)
    return refused(typed, 'is no time.', INSTANT_RIGHT, problems)
  return epochMs(atMs)
}

function refused({ path, where, value }: Typed<string>, wrong: string, right: string, problems: Problem[]): null {
  problems.push({ path, wrong: `${where}"${value}" ${wrong}`, right })
  return null
}

function clockMs([, hours, minutes, seconds = '0']: RegExpExecArray, { zone, date }: Today): number {
  return localInstant(zone, date, Number(hours) * 60 + Number(minutes)) + Number(seconds) * 1_000
}
