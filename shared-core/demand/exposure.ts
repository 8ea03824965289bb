import type { Profile } from './demand.ts'
import type { Span } from './sales-day.ts'

/**
 * The part of a day's demand that has come by a minute: 0 before the profile begins, 1 after it ends.
 * @example partBy([[360, 0], [480, 0.4], [900, 1]], 420) // 0.2
 */
export function partBy(profile: Profile, minute: number): number {
  let from: Profile[number] | undefined
  for (const to of profile) {
    if (minute < to[0]) return from === undefined ? 0 : between(from, to, minute)
    from = to
  }
  return from === undefined ? 0 : from[1]
}

/**
 * The part of a day's demand that could be served until a minute (close, when left out): what has come less what came
 * while there was none. One bar of exposure for a rate: pieces sold over it say how much is asked for in a day.
 * @param gone in order, without overlap
 * @example exposureOf([[360, 0], [900, 1]], [{ fromMinute: 630, toMinute: 900 }]) // 0.5
 */
export function exposureOf(profile: Profile, gone: readonly Span[], untilMinute = Number.POSITIVE_INFINITY): number {
  let part = partBy(profile, untilMinute)
  for (const { fromMinute, toMinute } of gone) {
    if (fromMinute >= untilMinute) break
    part -= partBy(profile, Math.min(toMinute, untilMinute)) - partBy(profile, fromMinute)
  }
  return Math.max(0, part)
}

/**
 * What is left of a profile after a minute, from 0 to 1 again. With nothing left it is a step at its end.
 * @example profileFrom([[360, 0], [480, 0.5], [900, 1]], 480) // [[480, 0], [900, 1]]
 */
export function profileFrom(profile: Profile, nowMinute: number): Profile {
  const gone = partBy(profile, nowMinute)
  const left = 1 - gone
  if (left <= 0)
    return [
      [nowMinute, 0],
      [Math.max(nowMinute, profile.at(-1)?.[0] ?? nowMinute), 1],
    ]
  const later = profile.filter(([minute]) => minute > nowMinute)
  const first: Profile[number] = [Math.max(nowMinute, profile[0]?.[0] ?? nowMinute), 0]
  return [
    first,
    ...later.filter(([minute]) => minute > first[0]).map(([minute, part]) => [minute, (part - gone) / left] as const),
  ]
}

function between([fromMinute, from]: Profile[number], [toMinute, to]: Profile[number], minute: number): number {
  return from + ((to - from) * (minute - fromMinute)) / (toMinute - fromMinute)
}
