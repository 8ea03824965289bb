import type { Profile } from './demand.ts'
import type { Span } from './sales-day.ts'

/**
 * The part of a day's demand that has come by a minute: 0 before the profile begins, 1 after it ends.
 * @example partBy([[360, 0], [480, 0.4], [900, 1]], 420) // 0.2
 */
export function partBy(profile: Profile, minute: number): number {
  let [fromMinute, from] = [0, 0]
  // By index: it is asked for each item on each sale, and an iterator costs several times the sum.
  for (let place = 0; place < profile.length; place += 1) {
    const to = profile[place]
    if (to === undefined) break
    if (minute < to[0]) {
      return place === 0 ? 0 : from + ((to[1] - from) * (minute - fromMinute)) / (to[0] - fromMinute)
    }
    fromMinute = to[0]
    from = to[1]
  }
  return from
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
  const over = partBy(profile, nowMinute)
  const close = profile[profile.length - 1]?.[0] ?? nowMinute
  if (over >= 1 || nowMinute >= close) {
    return [
      [nowMinute, 0],
      [Math.max(nowMinute, close), 1],
    ]
  }
  const first = Math.max(nowMinute, profile[0]?.[0] ?? nowMinute)
  const points: Profile[number][] = [[first, 0]]
  for (let place = 0; place < profile.length; place += 1) {
    const point = profile[place]
    if (point !== undefined && point[0] > first) points.push([point[0], (point[1] - over) / (1 - over)])
  }
  return points
}
