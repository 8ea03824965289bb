import type { Friction } from './mix.ts'

/** So many mixes back a mixer is the same mixer in the same room. */
export const FRICTIONS_MAX = 8
/** What the formula says counts as so many readings. */
const PRIOR_READINGS = 2
/** Readings of careful work lie within so much of each other; beyond it they pull no harder (common practice, no source). */
const CAREFUL_MILLI_CELSIUS = 2_000

/**
 * The friction factor after some readings, in thousandths of a °C: Huber's estimate of where they lie, the formula's own
 * factor among them as two. Readings near it count as a mean would have them; one that is far off (a thermometer in the
 * draught, a digit too many) moves it by 1 °C at most, 0.3 °C of the dough.
 *
 * Source: Huber, Ann. Math. Statist. 35 (1964) 73.
 * @param prior the formula's own factor
 * @example frictionFrom(13_000, []) // 13_000
 */
export function frictionFrom(prior: number, readings: readonly number[]): number {
  const pull = (at: number) =>
    PRIOR_READINGS * bounded(prior - at) + readings.reduce((all, reading) => all + bounded(reading - at), 0)
  // The pull falls as `at` rises: between the least and the most of them lies where it is nothing.
  let low = Math.min(prior, ...readings)
  let high = Math.max(prior, ...readings)
  while (high - low > 0.25) {
    const middle = (low + high) / 2
    if (pull(middle) > 0) low = middle
    else high = middle
  }
  return Math.round((low + high) / 2)
}

function bounded(distance: number): number {
  return Math.min(Math.max(distance, -CAREFUL_MILLI_CELSIUS), CAREFUL_MILLI_CELSIUS)
}

/** With one reading more; a second one of the same mix puts the first right. @param of whose it is, for the first reading */
export function withFriction(
  before: Friction | undefined,
  of: Pick<Friction, 'id' | 'formulaId' | 'mixer' | 'factors'> & { readonly prior: number },
  reading: Friction['readings'][number],
): Friction {
  const { prior, ...whose } = of
  const others = (before?.readings ?? []).filter(({ mixId }) => mixId !== reading.mixId)
  const readings = [...others, reading].slice(-FRICTIONS_MAX)
  const milliCelsius = frictionFrom(
    prior,
    readings.map((each) => each.milliCelsius),
  )
  return { ...whose, readings, milliCelsius }
}
