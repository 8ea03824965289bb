import { spanMs } from '../units.ts'
import { spanFromObject } from './human-time.ts'
import { decimal, oneOf, record } from './set-up-fields.ts'
import { WINDOW_MS_MAX } from './set-up-limits.ts'

/** A span of time, in minutes or in seconds, between two bounds in seconds. */
export function span(what: string, fromSeconds: number, toSeconds: number) {
  const right = `{ "seconds": … } or { "minutes": … }, from ${fromSeconds} s to ${toSeconds} s.`
  return record({ minutes: decimal(0, toSeconds / 60).optional(), seconds: decimal(0, toSeconds).optional() })
    .superRefine(({ minutes, seconds }, ctx) => {
      const wrong = wrongSpan(minutes, seconds, { fromSeconds, toSeconds })
      if (wrong !== null) ctx.addIssue({ code: 'custom', message: right, params: { wrong } })
    })
    .meta({ description: `${what}; in minutes or in seconds.`, minProperties: 1, maxProperties: 1 })
}

function wrongSpan(minutes: number | undefined, seconds: number | undefined, bounds: Bounds): string | null {
  if (minutes === undefined && seconds === undefined) return 'Neither seconds nor minutes are given.'
  if (minutes !== undefined && seconds !== undefined) return 'Both seconds and minutes are given.'
  const total = spanFromObject({ minutes, seconds }) / 1_000
  return total < bounds.fromSeconds || total > bounds.toSeconds ? `It is ${total} s.` : null
}
interface Bounds {
  readonly fromSeconds: number
  readonly toSeconds: number
}

/** A dwell window in the unit that people think in. Its order is one of the rules that commands are held to as well. */
export function dwellField(what: string) {
  const mostSeconds = WINDOW_MS_MAX / 1_000
  return record({
    unit: oneOf(['s', 'min', 'h']).meta({ description: 'Seconds, minutes or hours, for all three.' }),
    earliest: decimal(0, mostSeconds).meta({ description: 'Sooner is too early.' }),
    target: decimal(0, mostSeconds).meta({ description: 'What the board counts down to.' }),
    latest: decimal(0, mostSeconds).meta({ description: 'Later is too late.' }),
  })
    .superRefine(({ unit, latest }, ctx) => {
      if (spanMs(latest, unit) <= WINDOW_MS_MAX) return
      const [message, wrong] = [`At most ${WINDOW_MS_MAX / 3_600_000} h.`, `It is ${latest} ${unit}.`]
      ctx.addIssue({ code: 'custom', path: ['latest'], message, params: { wrong } })
    })
    .meta({ description: what })
}
