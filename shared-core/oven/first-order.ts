/**
 * A body that is heated or cooled at first order: T(t) = limit − (limit − start)·e^(−t/τ).
 * Source: any heat-transfer text, e.g. Incropera & DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5 (from memory).
 * Temperatures are in one unit, whichever; times and τ in one unit.
 */
export interface FirstOrder {
  /** What it tends to as it is heated now. */
  readonly limit: number
  /** At time 0. */
  readonly start: number
  /** Time constant, above 0. */
  readonly tau: number
}

export function temperatureAfter({ limit, start, tau }: FirstOrder, time: number): number {
  return limit - (limit - start) * Math.exp(-time / tau)
}

/**
 * Time from 0 until a temperature is reached.
 * @returns 0 where it starts there; null where it never comes: the limit lies on this side of it, or on it
 * @example timeTo({ limit: 650, start: 70, tau: 12 }, 500) // 16.2287…
 */
export function timeTo({ limit, start, tau }: FirstOrder, temperature: number): number | null {
  if (temperature === start) return 0
  const part = (limit - start) / (limit - temperature)
  return part > 1 && Number.isFinite(part) ? tau * Math.log(part) : null
}

/**
 * What it comes to after it has stood at one temperature for long, as three readings at equal distances show.
 * @returns null where they lie on a straight line or bend away from a limit
 * @example limitOfThree(200, 330, 408) // 525
 */
export function limitOfThree(first: number, second: number, third: number): number | null {
  const bend = 2 * second - first - third
  const [one, other] = [second - first, third - second]
  if (bend === 0 || other === 0 || other / one >= 1 || other / one <= 0) return null
  return (second * second - first * third) / bend
}
