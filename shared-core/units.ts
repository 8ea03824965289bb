import { fail } from './support.ts'

/**
 * Units that are easily mixed up carry a brand; the rest are plain numbers with the unit in their name.
 * Brands vanish in JSON: every wire and SQL field is a plain number.
 */
declare const unit: unique symbol
type Unit<Name extends string> = number & { readonly [unit]: Name }

/** An instant: milliseconds since 1970-01-01T00:00:00Z. */
export type EpochMs = Unit<'epoch-ms'>
/** A span of time in milliseconds, not negative. */
export type DurationMs = Unit<'duration-ms'>

/** The only cast to EpochMs. Rounds to the millisecond. @throws AssertionError unless finite and >= 0. */
export function epochMs(value: number): EpochMs {
  if (!(Number.isFinite(value) && value >= 0)) fail(`epochMs: ${value}`)
  return Math.round(value) as EpochMs
}

/** The only cast to DurationMs. Rounds to the millisecond. @throws AssertionError unless finite and >= 0. */
export function durationMs(value: number): DurationMs {
  if (!(Number.isFinite(value) && value >= 0)) fail(`durationMs: ${value}`)
  return Math.round(value) as DurationMs
}

/** The instant a span after another. */
export function later(atMs: EpochMs, byMs: DurationMs): EpochMs {
  return epochMs(atMs + byMs)
}

/** `valueMs` kept between two instants; where they cross, the upper one wins. */
export function clampMs(valueMs: EpochMs, fromMs: EpochMs, toMs: EpochMs): EpochMs {
  return epochMs(Math.min(Math.max(valueMs, fromMs), toMs))
}

const MS_PER = { s: 1_000, min: 60_000, h: 3_600_000 } as const
export type TimeUnit = keyof typeof MS_PER

/** A span as people enter it, in milliseconds. @example spanMs(3.5, 'min') // 210000 */
export function spanMs(value: number, timeUnit: TimeUnit): DurationMs {
  return durationMs(value * MS_PER[timeUnit])
}
