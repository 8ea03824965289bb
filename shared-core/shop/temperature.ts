import type { Temperature } from './shop.ts'

/**
 * A temperature in thousandths of a °C, rounded to the nearest.
 *
 *   °C = (°F − 32) · 5 / 9
 *
 * Source: NIST Special Publication 811 (2008), appendix B.9.
 * @example milliCelsius({ degrees: 495, unit: 'F' }) // 257_222
 */
export function milliCelsius({ degrees, unit }: Temperature): number {
  return unit === 'C' ? degrees * 1_000 : Math.round(((degrees - 32) * 5_000) / 9)
}

/** In a shop's unit, to the nearest degree. @example degreesIn('F', 257_222) // 495 */
export function degreesIn(unit: Temperature['unit'], milli: number): number {
  return Math.round(unit === 'C' ? milli / 1_000 : (milli * 9) / 5_000 + 32)
}
