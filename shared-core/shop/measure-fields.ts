import { decimal, oneOf, record } from './set-up-fields.ts'
import * as limits from './set-up-limits.ts'

/** Weights and temperatures as people write them: a number with decimals, and its unit. */

/** Nobody has weighed or measured to less than a thousandth of the unit. */
const LEAST_AMOUNT = 0.001

export const weight = () =>
  record({
    amount: decimal(LEAST_AMOUNT, limits.WEIGHT_THOUSANDTHS_MAX / 1_000),
    unit: oneOf(['g', 'kg', 'oz', 'lb']),
  })

/** A temperature of the dough room. */
export const degrees = () =>
  record({
    degrees: decimal(limits.ROOM_DEGREES_MIN, limits.ROOM_DEGREES_MAX),
    unit: oneOf(['C', 'F']),
  })

/** A difference between two temperatures. */
export const difference = () =>
  record({
    degrees: decimal(0, limits.FRICTION_DEGREES_MAX),
    unit: oneOf(['C', 'F']),
  })

/** Percent of a base, to the thousandth. */
export const percent = (from: number, to: number) => decimal(from, to)
