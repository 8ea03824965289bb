import { oneOf, record, whole } from '../shop/set-up-fields.ts'
import * as limits from '../shop/set-up-limits.ts'
import type { DurationMs } from '../units.ts'
import { durationMs } from '../units.ts'

/** Fields that changes of a set-up are made of, in the running shop's units. */

export const span = (fromMs: number, toMs: number) => whole(fromMs, toMs).transform((ms): DurationMs => durationMs(ms))

/** After local midnight. */
export const minute = () => whole(0, limits.MINUTE_MAX)

export const window = () =>
  record({
    earliestMs: span(0, limits.WINDOW_MS_MAX),
    targetMs: span(0, limits.WINDOW_MS_MAX),
    latestMs: span(0, limits.WINDOW_MS_MAX),
    unit: oneOf(['s', 'min', 'h']),
  })

export const weight = () =>
  record({ thousandths: whole(1, limits.WEIGHT_THOUSANDTHS_MAX), unit: oneOf(['g', 'kg', 'oz', 'lb']) })
