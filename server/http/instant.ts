import { DateTime } from 'luxon'
import { AT_MS_MAX, AT_MS_MIN } from '../../shared-core/day/command-fields.ts'
import type { Problem } from '../../shared-core/shop/problem.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { localInstant } from '../live/shop-clock.ts'
import type { Typed } from './typed-load.ts'

const CLOCK = /^([01]?\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/
export const INSTANT_RIGHT =
  'A time as "2026-11-24T08:05:00-06:00", or in the shop\u2019s own time as "2026-11-24T08:05" or, for today, "8:05".'

export interface Today {
  readonly zone: string
  /** The shop's date, YYYY-MM-DD. */
  readonly date: string
}

/** When something happened, as a till writes it: ISO 8601 with an offset or in the shop's time, or a clock time of today. */
export function instantOf(typed: Typed<string>, today: Today, problems: Problem[]): EpochMs | null {
  const text = typed.value.trim()
  const clock = CLOCK.exec(text)
  const atMs = clock === null ? DateTime.fromISO(text, { zone: today.zone }).toMillis() : clockMs(clock, today)
  if (Number.isFinite(atMs) && atMs >= AT_MS_MIN && atMs <= AT_MS_MAX) return epochMs(atMs)
  problems.push({ path: typed.path, wrong: `${typed.where}"${typed.value}" is no time.`, right: INSTANT_RIGHT })
  return null
}

function clockMs([, hours, minutes, seconds = '0']: RegExpExecArray, { zone, date }: Today): number {
  return localInstant(zone, date, Number(hours) * 60 + Number(minutes)) + Number(seconds) * 1_000
}
