import type { AskCode } from '../../shared-core/day/answers.ts'
import type { Act } from '../../shared-core/day/commands.ts'
import type { State } from '../../shared-core/day/state.ts'
import type { Shop } from '../../shared-core/shop/shop.ts'
import type { EpochMs } from '../../shared-core/units.ts'
import { epochMs } from '../../shared-core/units.ts'
import { localDate, localInstant } from '../live/shop-clock.ts'
import type { Who } from './demo-shop.ts'

/** What somebody of the demo looks at before deciding what to do next. */
export interface Scene {
  readonly state: State
  readonly shop: Shop
  readonly nowMs: EpochMs
  readonly seed: number
  /** The shop's date, YYYY-MM-DD, and its midnight: the demo's own zones never change their clocks. */
  readonly date: string
  readonly dayStartMs: number
}

/** Something that somebody of the demo will do. */
export interface Move {
  /** The same as long as it is the same intention, whatever changes around it. */
  readonly key: string
  readonly who: Who
  /** When they come to it; past when it waits for nothing else. */
  readonly atMs: number
  readonly act: Act
  readonly confirmed?: readonly AskCode[]
  /** It belongs to its minute: whatever comes of it, it is not tried again. */
  readonly once?: true
}

/** How far ahead people look for what they do next; after each move they look again. */
export const LOOK_AHEAD_MS = 60_000

export type LocalDay = Pick<Scene, 'date' | 'dayStartMs'> & { readonly zone: string }
const DAY_MS = 24 * 3_600_000

/** The local day of an instant; the one before is handed back while it lasts, as zone tables are slow to ask. */
export function localDay(zone: string, nowMs: EpochMs, before: LocalDay | null): LocalDay {
  if (before !== null && before.zone === zone && nowMs >= before.dayStartMs && nowMs < before.dayStartMs + DAY_MS) {
    return before
  }
  const date = localDate(zone, nowMs)
  return { zone, date, dayStartMs: localInstant(zone, date, 0) }
}

export function minuteOfDay({ dayStartMs }: Pick<Scene, 'dayStartMs'>, atMs: number): number {
  return (atMs - dayStartMs) / 60_000
}

export function atMinute({ dayStartMs }: Pick<Scene, 'dayStartMs'>, minute: number): EpochMs {
  return epochMs(dayStartMs + minute * 60_000)
}

/** Whether something on the clock comes up now; what is past was done or missed, and is never made up for. */
export function comesUp({ nowMs }: Scene, atMs: number): boolean {
  return atMs >= nowMs && atMs <= nowMs + LOOK_AHEAD_MS
}
