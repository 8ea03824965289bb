import type { Friction, Teaching } from '../../../shared-core/dough/mix.ts'

/** How far what is learnt about a mixer can be trusted. */
export interface FrictionTrust {
  readonly lowestMilliCelsius: number
  readonly highestMilliCelsius: number
  readonly trust: 'few' | 'spread' | 'good'
}

/** Under three nobody can tell the odd one out. */
const READINGS_MIN = 3
/** Half of the readings within so much of the middle one: a probe and a hurried hand are within 2 °C (common practice, no source). */
const SPREAD_MILLI_CELSIUS_MAX = 2_000

/** The middle half of the readings decides, so that one odd reading neither spoils trust nor makes it. */
export function frictionTrust({ readings }: Friction): FrictionTrust {
  const values = readings.map(({ milliCelsius }) => milliCelsius).sort((one, other) => one - other)
  const [lowest = 0, highest = 0] = [values[0], values[values.length - 1]]
  const middle = values[Math.floor(values.length / 2)] ?? 0
  const distances = values.map((value) => Math.abs(value - middle)).sort((one, other) => one - other)
  const typical = distances[Math.floor(distances.length / 2)] ?? 0
  const trust = values.length < READINGS_MIN ? 'few' : typical > SPREAD_MILLI_CELSIUS_MAX ? 'spread' : 'good'
  return { lowestMilliCelsius: lowest, highestMilliCelsius: highest, trust }
}

/** Percent of the set-up's window that this dough needs. @example pace 900 // 90 */
export function pacePercent({ pace }: Pick<Teaching, 'pace'>): number {
  return Math.round(pace / 10)
}
