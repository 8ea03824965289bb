import type { HeatReading } from './heat.ts'

/** Readings under one setting: all rising, or all falling, but for noise. */
export interface Phase {
  readonly isHeating: boolean
  readonly readings: readonly HeatReading[]
}

/** Further apart than this, readings are of another heat-up. */
const GAP_MIN = 90

/**
 * Cuts readings where the oven turns: a door opened, a load put in, a burner turned up or off. The reading at which it
 * turns begins the next phase.
 * @param readings in order of time
 * @param noise standard deviation of one, °C: a turn is more than two of it
 */
export function phasesOf(readings: readonly HeatReading[], noise: number): readonly Phase[] {
  const phases: Phase[] = []
  let some: HeatReading[] = []
  let heading: 'up' | 'down' | null = null
  const close = () => {
    if (some.length > 0) phases.push({ isHeating: heading !== 'down', readings: some })
  }
  for (const reading of readings) {
    const last = some[some.length - 1]
    const rise = last === undefined ? 0 : reading.celsius - last.celsius
    const way = Math.abs(rise) <= 2 * noise ? null : rise > 0 ? 'up' : 'down'
    if (last !== undefined && reading.minute - last.minute > GAP_MIN) {
      close()
      some = []
      heading = null
    } else if (way !== null && heading !== null && way !== heading) {
      close()
      some = last === undefined ? [] : [last]
      heading = way
    } else heading = heading ?? way
    some.push(reading)
  }
  close()
  return phases
}
